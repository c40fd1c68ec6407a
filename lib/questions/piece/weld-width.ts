import { plateDimension } from "./plate-dimension";

export const weldWidth = plateDimension({
  name: "weld-width",
  dimension: "weld-width",
  face: "cap",
  stem: "How wide is the cap from toe to toe where it is widest?",
  mistaken: [{ dimension: "plate-thickness", why: "that is how thick the plates are" }],
  tooLow: "that is measured between bevel edges or where the cap is not widest",
  tooHigh: "that takes oxide, undercut or spatter beside the toes for a part of the weld",
});
