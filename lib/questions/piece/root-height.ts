import { plateDimension } from "./plate-dimension";

export const rootHeight = plateDimension({
  name: "root-height",
  dimension: "root-height",
  face: "root",
  stem: "How far does the root stand out, where it stands out most, over the line from plate to plate beside its toes?",
  mistaken: [
    { dimension: "cap-height", why: "that is the largest height of the cap" },
    { dimension: "linear-misalignment", why: "that is the step between the plates" },
  ],
  tooLow: "that reads low: the gauge stood where the root is not highest, or a foot stood on the weld",
  tooHigh: "that reads high: a foot stood on spatter, or hung over a plate that falls away",
});
