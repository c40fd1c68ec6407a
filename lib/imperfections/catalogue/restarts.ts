import type { RowsOf } from "./imperfection";

export const RESTARTS = {
  "poor-restart": {
    number: "517",
    name: "Poor restart",
    includes: [
      { number: "5171", name: "Poor restart in the capping run" },
      { number: "5172", name: "Poor restart in the root run" },
    ],
    family: "restart",
    alike: ["excess-penetration"],
    faces: ["cap", "root", "fillet"],
    extent: "point",
    size: "height",
    recordedFrom: 0.8,
    recordedLength: 0,
    weight: 1,
    looks: "A hump with a crescent edge and a crease where a new electrode was started on the old crater.",
  },
  "tack-imperfection": {
    number: "607",
    name: "Tack weld imperfection",
    includes: [
      { number: "6071", name: "Broken tack, or tack without penetration" },
      { number: "6072", name: "Faulty tack welded over" },
    ],
    family: "restart",
    alike: ["root-penetration", "excess-penetration"],
    faces: ["root"],
    extent: "line",
    size: null,
    recordedFrom: 0,
    recordedLength: 2,
    weight: 1.1,
    looks: "A lump or notch in the root where a tack was welded over without melting it away.",
  },
} as const satisfies RowsOf<"restart">;
