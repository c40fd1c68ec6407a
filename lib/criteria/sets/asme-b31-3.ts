import type { Criteria, Criterion } from "../criteria";
import type { Limit } from "../limit";
import type { Range } from "../range";
import type { SumRule } from "../sum-rule";
import { atMost, NOT_PERMITTED } from "./limits";
import { CRACKS, LACK_OF_FUSION, POROSITY, UNDERCUTS } from "./types";

/** How a groove weld lies on the pipe. Mitre and branch welds go with girth welds. */
export const GROOVE_WELDS = ["girth", "longitudinal"] as const;
export type GrooveWeld = (typeof GROOVE_WELDS)[number];

const BUTT: Criterion["faces"] = ["cap", "root"];
const FILLET: Criterion["faces"] = ["fillet"];
const EVERYWHERE: Criterion["faces"] = ["cap", "root", "fillet"];

/** The criterion values of the table by their letters. Tw, the wall's nominal thickness, is t here. */
const A: Limit = NOT_PERMITTED;
const B: Limit = atMost("depth", { coefficient: 0.2, symbol: "t", atMost: 1 });
const B_LENGTH: SumRule = { sum: "length", window: 150, most: { kind: "fixed", value: 38 } };
const H: Limit = atMost("depth", { coefficient: 0.25, symbol: "t", atMost: 1 });
const K: Limit = atMost("depth", { coefficient: 1, symbol: "hCap" });
const L: readonly (readonly [name: string, range: Range, height: number])[] = [
  ["6", { symbol: "t", upTo: 6 }, 1.5],
  ["13", { symbol: "t", over: 6, upTo: 13 }, 3],
  ["25", { symbol: "t", over: 13, upTo: 25 }, 4],
  ["thick", { symbol: "t", over: 25 }, 5],
];

const row = (own: Omit<Criterion, "evidence" | "sums" | "ranges"> & Partial<Criterion>): Criterion => ({
  evidence: "quoted",
  sums: [],
  ranges: [],
  ...own,
});

/** ASME B31.3, table 341.3.2, visual examination in normal fluid service, in mm. */
export function asmeB313(groove: GrooveWeld): Criteria {
  const isGirth = groove === "girth";
  return {
    version: 1,
    id: `asme-b31.3-normal-${groove}`,
    name: `ASME B31.3, normal fluid service, ${isGirth ? "girth, mitre and branch" : "longitudinal"} welds and fillets`,
    edition: "ASME B31.3, table 341.3.2 (editions of 2014 and 2016 seen)",
    notes: "Of two values that both hold the lesser one decides. Fillets are the same whichever groove weld is chosen.",
    rows: [
      row({
        id: "crack",
        clause: "crack: A",
        name: "Crack",
        types: [...CRACKS],
        faces: EVERYWHERE,
        limit: A,
        notes: "",
      }),
      row({
        id: "fusion",
        clause: "lack of fusion: A",
        name: "Lack of fusion",
        types: [...LACK_OF_FUSION],
        faces: EVERYWHERE,
        limit: A,
        notes: "",
      }),
      row({
        id: "penetration",
        clause: `incomplete penetration: ${isGirth ? "B" : "A"}`,
        name: "Incomplete penetration",
        types: ["root-penetration"],
        faces: ["root"],
        limit: isGirth ? B : A,
        sums: isGirth ? [B_LENGTH] : [],
        notes: "",
      }),
      row({
        id: "undercut-groove",
        clause: `undercutting: ${isGirth ? "H" : "A"}`,
        name: "Undercut of a groove weld",
        types: [...UNDERCUTS],
        faces: BUTT,
        limit: isGirth ? H : A,
        notes: "A groove beside the root is taken as undercut, which is our reading.",
      }),
      row({
        id: "undercut-fillet",
        clause: "undercutting: H",
        name: "Undercut of a fillet",
        types: ["continuous-undercut", "intermittent-undercut"],
        faces: FILLET,
        limit: H,
        notes: "",
      }),
      row({
        id: "porosity-slag",
        clause: "surface porosity or exposed slag: A",
        name: "Surface porosity or exposed slag",
        types: [...POROSITY, "crater-pipe", "slag-residue"],
        faces: EVERYWHERE,
        ranges: [{ symbol: "t", upTo: 5 }],
        limit: A,
        notes: "Judged only on welds of 5 mm and thinner. That a crater pipe counts is our reading.",
      }),
      row({
        id: "concave-root",
        clause: "concave root: K",
        name: "Concave root",
        types: ["root-concavity"],
        faces: ["root"],
        limit: K,
        notes:
          "The joint with its reinforcement must be as thick as the wall: the root may be as hollow as the cap is high over the same place.",
      }),
      ...L.flatMap(([name, range, height]) => [
        row({
          id: `reinforcement-${name}`,
          clause: "reinforcement or protrusion: L",
          name: "Reinforcement or protrusion",
          types: ["excess-weld-metal", "excess-penetration"],
          faces: BUTT,
          ranges: [range],
          limit: atMost("height", { constant: height }),
          notes: "",
        }),
        row({
          id: `reinforcement-fillet-${name}`,
          clause: "reinforcement: L",
          name: "Reinforcement of a fillet",
          types: ["excessive-convexity"],
          faces: FILLET,
          ranges: [range],
          limit: atMost("height", { constant: height }),
          notes: "Measured from the theoretical throat.",
        }),
      ]),
    ],
    sections: [],
  };
}
