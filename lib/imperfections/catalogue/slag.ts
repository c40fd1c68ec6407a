import type { RowsOf } from "./imperfection";

export const SLAG = {
  "slag-residue": {
    number: "615",
    name: "Slag residue",
    includes: [
      { number: "3011", name: "Linear slag inclusion, open to the surface" },
      { number: "3012", name: "Isolated slag inclusion, open to the surface" },
    ],
    family: "slag",
    alike: [],
    faces: ["cap", "root", "fillet"],
    extent: "line",
    size: null,
    recordedFrom: 0,
    recordedLength: 2,
    weight: 1,
    looks: "A dark, glassy strip at a toe or between runs that does not shine like metal.",
  },
} as const satisfies RowsOf<"slag">;
