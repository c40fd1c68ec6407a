import { plateDimension } from "./plate-dimension";

export const capHeight = plateDimension({
  name: "cap-height",
  dimension: "cap-height",
  face: "cap",
  stem: "How high is the cap where it stands highest over the line from plate to plate beside its toes?",
  mistaken: [
    { dimension: "root-height", why: "that is the largest height of the root" },
    { dimension: "linear-misalignment", why: "that is the step between the plates" },
  ],
  tooLow: "that reads low: the gauge stood where the cap is not highest, or a foot stood on the weld",
  tooHigh: "that reads high: the feet stood far out on plates that are bent, or one on spatter",
});
