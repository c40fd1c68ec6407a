import type { Criteria, Criterion } from "../criteria";
import type { SumRule } from "../sum-rule";
import { atMost, NOT_PERMITTED } from "./limits";
import { CRACKS_BUT_CRATER, LACK_OF_FUSION, PORE_GROUPS, UNDERCUTS } from "./types";

const BUTT: Criterion["faces"] = ["cap", "root"];
const EVERYWHERE: Criterion["faces"] = ["cap", "root", "fillet"];

const length = (value: number): SumRule => ({
  sum: "length",
  window: 300,
  most: { kind: "fixed", value, shorterWeld: { under: 300, share: 0.08 } },
});

/** Undercut of medium depth counts: deeper than the smaller of 0.4 mm and 6 % of the wall. */
const MEDIUM_UNDERCUT = {
  edge: "over",
  quantity: "depth",
  formula: { coefficient: 0.06, symbol: "t", atMost: 0.4 },
} as const;
const UNDERCUT_SUMS: SumRule[] = [
  { sum: "length", counted: MEDIUM_UNDERCUT, window: 300, most: { kind: "fixed", value: 50 } },
  { sum: "length", counted: MEDIUM_UNDERCUT, most: { kind: "share", share: 1 / 6 } },
];

const pore = {
  clause: "9.3, porosity",
  faces: EVERYWHERE,
  ranges: [],
  limit: atMost("diameter", { coefficient: 0.25, symbol: "t", atMost: 3 }),
  sums: [],
  evidence: "memory" as const,
};

/** API 1104 clause 9, what of it an eye can judge, in mm. t is the thinner wall. */
export function api1104(): Criteria {
  return {
    version: 1,
    id: "api-1104",
    name: "API 1104, clause 9, visual",
    edition: "API 1104, clause 9 (which edition the numbers are of is not known)",
    notes: "Much of clause 9 is written for radiographs. That it holds for fillets as well is from memory.",
    rows: [
      {
        id: "crack",
        clause: "9.3, cracks",
        name: "Crack",
        types: [...CRACKS_BUT_CRATER],
        faces: EVERYWHERE,
        ranges: [],
        limit: NOT_PERMITTED,
        sums: [],
        evidence: "quoted",
        notes: "",
      },
      {
        id: "crater-crack",
        clause: "9.3, cracks",
        name: "Shallow crater crack or star crack",
        types: ["crater-crack"],
        faces: EVERYWHERE,
        ranges: [],
        limit: atMost("length", { constant: 4 }),
        sums: [],
        evidence: "quoted",
        notes: "",
        alsoNeeds: "whether the crack is shallow, which an eye cannot see",
      },
      {
        id: "undercut",
        clause: "9.7, undercutting",
        name: "Undercut, cap and root together",
        types: [...UNDERCUTS],
        faces: EVERYWHERE,
        ranges: [],
        limit: atMost("depth", { coefficient: 0.125, symbol: "t", atMost: 0.8 }),
        sums: UNDERCUT_SUMS,
        evidence: "memory",
        notes:
          "Up to 0.4 mm and 6 % of the wall it may have any length. Only the step of 6 % is from memory; the others were seen in public sources.",
      },
      {
        id: "penetration",
        clause: "9.3, inadequate penetration",
        name: "Incomplete penetration without misalignment",
        types: ["root-penetration"],
        faces: ["root"],
        ranges: [],
        limit: atMost("length", { constant: 25 }),
        sums: [length(25)],
        evidence: "quoted",
        notes: "",
      },
      {
        id: "fusion",
        clause: "9.3, incomplete fusion",
        name: "Incomplete fusion",
        types: [...LACK_OF_FUSION],
        faces: EVERYWHERE,
        ranges: [],
        limit: atMost("length", { constant: 25 }),
        sums: [length(25)],
        evidence: "quoted",
        notes: "Fusion lacking between runs inside the weld has a limit of its own, which is not carried here.",
      },
      {
        id: "burn-through",
        clause: "9.3, burn-through",
        name: "Burn-through, pipe of 60.3 mm and larger",
        types: ["burn-through"],
        faces: BUTT,
        ranges: [],
        limit: atMost("length", { constant: 6 }),
        sums: [{ sum: "length", window: 300, most: { kind: "fixed", value: 13 } }],
        evidence: "memory",
        notes: "Its largest measure counts. 6 mm was seen in a secondary source; 13 mm in 300 mm is from memory.",
        alsoNeeds: "how dense its image is on a radiograph against the parent metal",
      },
      {
        id: "cap-height",
        clause: "7.8.2",
        name: "Height of the cap",
        types: ["excess-weld-metal"],
        faces: ["cap"],
        ranges: [],
        limit: atMost("height", { constant: 1.6 }),
        sums: [],
        evidence: "single-source",
        notes: "Advice of the document rather than a criterion for rejection.",
      },
      {
        id: "cap-low",
        clause: "7.8.2",
        name: "Cap below the parent surface",
        types: ["incompletely-filled-groove", "sagging"],
        faces: ["cap"],
        ranges: [],
        limit: NOT_PERMITTED,
        sums: [],
        evidence: "single-source",
        notes: "At no place may the cap fall below the parent surface.",
      },
      { ...pore, id: "pore", name: "Single pore", types: ["surface-pore"], notes: "" },
      {
        ...pore,
        id: "pore-group",
        name: "Group of pores, by its largest pore",
        types: [...PORE_GROUPS],
        notes: "",
        alsoNeeds: "the limits on groups of pores, which are not carried here",
      },
      {
        id: "concavity",
        clause: "9.3, internal concavity",
        name: "Root concavity",
        types: ["root-concavity"],
        faces: ["root"],
        ranges: [],
        limit: {
          kind: "not-by-eye",
          needs: "a radiograph: any length while its image is no denser than the parent metal, else as burn-through",
        },
        sums: [],
        evidence: "quoted",
        notes: "",
      },
    ],
    sections: [],
  };
}
