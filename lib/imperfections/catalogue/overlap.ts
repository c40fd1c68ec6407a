import type { RowsOf } from "./imperfection";

export const OVERLAP = {
  overlap: {
    number: "506",
    name: "Overlap",
    includes: [
      { number: "5061", name: "Toe overlap" },
      { number: "5062", name: "Root overlap" },
    ],
    family: "overlap",
    alike: [],
    faces: ["cap", "root", "fillet"],
    extent: "line",
    size: null,
    recordedFrom: 0,
    recordedLength: 3,
    weight: 1.3,
    looks: "Weld metal rolled out over the plate with a tight dark crease under its edge.",
  },
} as const satisfies RowsOf<"overlap">;
