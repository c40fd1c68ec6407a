import type { RowsOf } from "./imperfection";

export const EXCESS_METAL = {
  "excess-weld-metal": {
    number: "502",
    name: "Excess weld metal",
    family: "excess-metal",
    alike: [],
    faces: ["cap"],
    extent: "line",
    size: "height",
    recordedFrom: 3,
    recordedLength: 5,
    weight: 1,
    looks: "The cap stands clearly higher than its neighbourhood. Use the gauge: from above it hardly shows.",
  },
  "excess-penetration": {
    number: "504",
    name: "Excess penetration",
    includes: [
      { number: "5041", name: "Local excess penetration" },
      { number: "5042", name: "Continuous excess penetration" },
      { number: "5043", name: "Excessive melt-through" },
    ],
    family: "excess-metal",
    alike: ["poor-restart"],
    faces: ["root"],
    extent: "line",
    size: "height",
    recordedFrom: 2.6,
    recordedLength: 2,
    weight: 1,
    looks: "The root bead stands out high and smooth, rising and falling gradually.",
  },
} as const satisfies RowsOf<"excess-metal">;
