import { BOTH_SECTIONS, type Kind } from "../kind";
import { possible } from "./clear-row";
import { largestAccepted } from "./largest-accepted";

export const heightLimit: Kind = {
  name: "height-limit",
  source: "criteria",
  sections: BOTH_SECTIONS,
  draft: (material, random) => {
    const high = possible(material.truth).filter(
      ({ type }) => type === "excess-weld-metal" || type === "excessive-convexity",
    );
    return largestAccepted(material, high, random);
  },
};
