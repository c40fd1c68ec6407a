import { viewing } from "./viewing";

export const lensPower = viewing({
  name: "lens-power",
  stem: "How many times may the strongest lens enlarge that ISO 17637 names among the equipment of a visual test?",
  unit: "times",
  right: 5,
  why: "lenses of 2 to 5 times are named",
  wrong: [
    [2, "that is the weakest of them"],
    [3, "that is in the middle of what is named"],
    [4, "that is less than the strongest"],
    [8, "that shows too small a field to follow a weld"],
    [10, "that is a lens for polished sections"],
    [20, "that is a microscope"],
  ],
});
