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
} as const satisfies RowsOf<"misalignment">;
