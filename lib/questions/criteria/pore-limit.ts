import { BOTH_SECTIONS, type Kind } from "../kind";
import { possible } from "./clear-row";
import { largestAccepted } from "./largest-accepted";

export const poreLimit: Kind = {
  name: "pore-limit",
  source: "criteria",
  sections: BOTH_SECTIONS,
  draft: (material, random) => {
    const pores = possible(material.truth).filter(({ type }) => type === "surface-pore" || type === "crater-pipe");
    return largestAccepted(material, pores, random);
  },
};
