import { BOTH_SECTIONS, type Kind } from "../kind";
import { possible } from "./clear-row";
import { largestAccepted } from "./largest-accepted";

export const undercutLimit: Kind = {
  name: "undercut-limit",
  source: "criteria",
  sections: BOTH_SECTIONS,
  draft: (material, random) => {
    const undercuts = possible(material.truth).filter(
      ({ type }) => type === "continuous-undercut" || type === "intermittent-undercut",
    );
    return largestAccepted(material, undercuts, random);
  },
};
