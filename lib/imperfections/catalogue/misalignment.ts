import type { RowsOf } from "./imperfection";

export const MISALIGNMENT = {
  "linear-misalignment": {
    number: "5071",
    name: "Linear misalignment",
    family: "misalignment",
    alike: [],
    faces: ["cap"],
    extent: "line",
    size: "height",
    recordedFrom: 1,
    recordedLength: 20,
    weight: 1,
    looks:
      "One plate stands higher than the other along the joint; one toe lies in shadow. Measured once, on the cap face.",
  },
  "angular-misalignment": {
    number: "508",
    name: "Angular misalignment",
    includes: [{ number: "520", name: "Excessive distortion" }],
    family: "misalignment",
    alike: [],
    faces: ["cap"],
    extent: "line",
    size: null,
    recordedFrom: 0,
    recordedLength: 20,
    weight: 1,
    looks: "The plates do not lie in one plane: they meet at an angle. Lay a straight edge across.",
  },
  "incorrect-root-gap": {
    number: "617",
    name: "Incorrect root gap for fillet welds",
    family: "misalignment",
    alike: [],
    faces: ["fillet"],
    extent: "point",
    size: "gap",
    recordedFrom: 1,
    recordedLength: 0,
    weight: 1,
    looks:
      "The foot of the standing plate does not touch the base plate. Seen at the end of the joint; measured with a feeler.",
  },
} as const satisfies RowsOf<"misalignment">;
