import { viewing } from "./viewing";

export const feelerStep = viewing({
  name: "feeler-step",
  stem: "By how much may the leaves of a feeler set differ from each other, at the most, for a visual test by ISO 17637?",
  unit: "mm",
  right: 0.1,
  why: "leaves of 0.1 to 3 mm in steps of at most 0.1 mm",
  wrong: [
    [0.01, "that is the step of sets for machine parts"],
    [0.02, "that is finer than has to be"],
    [0.05, "that is finer than has to be"],
    [0.2, "that is twice as coarse as allowed"],
    [0.5, "that is the step of fillet blades"],
    [1, "that is the division of a rule"],
  ],
});
