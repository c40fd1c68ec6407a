import type { Criteria, Criterion } from "../criteria";
import type { SumRule } from "../sum-rule";
import { atMost, dependsOn, NOT_PERMITTED, PERMITTED } from "./limits";
import { CRACKS, LACK_OF_FUSION, POROSITY, UNDERCUTS } from "./types";

export const LOADINGS = ["static", "cyclic"] as const;
export type Loading = (typeof LOADINGS)[number];

/** How the weld lies: across a tensile stress (in a primary member where loading is cyclic), or in any other way. */
export const STRESSES = ["across-tension", "other"] as const;
export type Stress = (typeof STRESSES)[number];

export interface AwsOptions {
  readonly loading: Loading;
  readonly stress: Stress;
}

const BUTT: Criterion["faces"] = ["cap", "root"];
const FILLET: Criterion["faces"] = ["fillet"];
const EVERYWHERE: Criterion["faces"] = ["cap", "root", "fillet"];

/** Of undercuts deeper than 1 mm, 50 mm may be summed up in any 300 mm. */
const DEEP_UNDERCUT: SumRule = {
  sum: "length",
  counted: { edge: "over", quantity: "depth", formula: { constant: 1 } },
  window: 300,
  most: { kind: "fixed", value: 50 },
};

const COUNTED_PORES = { edge: "from", quantity: "diameter", formula: { constant: 1 } } as const;
const PORE_SUMS: SumRule[] = [
  { sum: "diameter", counted: COUNTED_PORES, window: 25, most: { kind: "fixed", value: 10 } },
  { sum: "diameter", counted: COUNTED_PORES, window: 300, most: { kind: "fixed", value: 20 } },
];
const ONE_PORE: SumRule = { sum: "count", window: 100, most: { kind: "fixed", value: 1 } };

const porosity = {
  clause: "porosity",
  types: [...POROSITY, "crater-pipe"] as Criterion["types"],
  ranges: [],
  evidence: "quoted",
} as const;
const UNDERCUT_READING = "A groove beside the root is taken as undercut, which is our reading.";
const NONE_VISIBLE: Pick<Criterion, "limit" | "sums" | "notes"> = {
  limit: NOT_PERMITTED,
  sums: [],
  notes: "No piping porosity that is to be seen, in a groove weld of complete penetration across a tensile stress.",
};
const BY_SUMS: Pick<Criterion, "limit" | "sums" | "notes"> = {
  limit: PERMITTED,
  sums: PORE_SUMS,
  notes: "Piping porosity of 1 mm diameter and more is summed up; there is no limit on a single pore but the sum.",
};
const ONE_IN_100: Pick<Criterion, "limit" | "sums" | "notes"> = {
  limit: atMost("diameter", { constant: 2.5 }),
  sums: [ONE_PORE],
  notes: "Fillets of stiffeners on a web go by the sums for static loading instead.",
};

function porosityRows({ loading, stress }: AwsOptions): Criterion[] {
  const butt = stress === "across-tension" ? NONE_VISIBLE : loading === "static" ? BY_SUMS : ONE_IN_100;
  const fillet = loading === "static" ? BY_SUMS : ONE_IN_100;
  return [
    { ...porosity, ranges: [], id: "porosity-butt", name: "Piping porosity in a groove weld", faces: BUTT, ...butt },
    { ...porosity, ranges: [], id: "porosity-fillet", name: "Piping porosity in a fillet", faces: FILLET, ...fillet },
  ];
}

function undercutRows({ loading, stress }: AwsOptions): Criterion[] {
  const common = {
    clause: "undercut",
    name: "Undercut",
    types: [...UNDERCUTS],
    faces: EVERYWHERE,
    evidence: "quoted" as const,
    notes: UNDERCUT_READING,
  };
  if (loading === "cyclic") {
    const most = stress === "across-tension" ? 0.25 : 1;
    return [{ ...common, id: "undercut", ranges: [], limit: atMost("depth", { constant: most }), sums: [] }];
  }
  const upTo2 = atMost("depth", { constant: 2 });
  return [
    { ...common, id: "undercut-thin", ranges: [{ symbol: "t", under: 25 }], limit: upTo2, sums: [DEEP_UNDERCUT] },
    { ...common, id: "undercut-thick", ranges: [{ symbol: "t", from: 25 }], limit: upTo2, sums: [] },
  ];
}

/** Shortfall of the leg by its nominal size, over 10 % of the weld at most; a size between two steps goes by the smaller one. */
function undersizeRows(): Criterion[] {
  const common = {
    clause: "undersize",
    name: "Undersize fillet",
    types: ["insufficient-throat"] as Criterion["types"],
    faces: FILLET,
    sums: [{ sum: "length", most: { kind: "share", share: 0.1 } }] satisfies SumRule[],
    evidence: "quoted" as const,
    notes:
      "The table gives legs of up to 5, of 6, and of 8 mm and more; between them we take the smaller step. None is allowed at the ends of a girder's web-to-flange welds over twice the flange's width.",
  };
  const most = (leg: number) => atMost("leg-shortfall", { constant: leg });
  return [
    { ...common, id: "undersize-5", ranges: [{ symbol: "z", under: 6 }], limit: most(2) },
    { ...common, id: "undersize-6", ranges: [{ symbol: "z", from: 6, under: 8 }], limit: most(2.5) },
    { ...common, id: "undersize-8", ranges: [{ symbol: "z", from: 8 }], limit: most(3) },
  ];
}

/** Profiles of fillets by the width of the face, of butt welds by thickness. */
function profileRows(): Criterion[] {
  const convexity = {
    clause: "profiles, convexity",
    name: "Convexity of a fillet",
    types: ["excessive-convexity"] as Criterion["types"],
    faces: FILLET,
    sums: [],
    notes: "By the width of the face.",
  };
  const reinforcement = {
    clause: "profiles, reinforcement",
    name: "Reinforcement of a butt weld",
    types: ["excess-weld-metal"] as Criterion["types"],
    faces: ["cap"] as Criterion["faces"],
    sums: [],
    notes: "By thickness. Whether it also holds for the root is not carried here.",
  };
  const most = (height: number) => atMost("height", { constant: height });
  return [
    { ...convexity, id: "convexity-8", ranges: [{ symbol: "b", upTo: 8 }], limit: most(2), evidence: "quoted" },
    {
      ...convexity,
      id: "convexity-25",
      ranges: [{ symbol: "b", over: 8, under: 25 }],
      limit: most(3),
      evidence: "quoted",
    },
    { ...convexity, id: "convexity-wide", ranges: [{ symbol: "b", from: 25 }], limit: most(5), evidence: "memory" },
    {
      ...reinforcement,
      id: "reinforcement-25",
      ranges: [{ symbol: "t", upTo: 25 }],
      limit: most(3),
      evidence: "single-source",
    },
    {
      ...reinforcement,
      id: "reinforcement-50",
      ranges: [{ symbol: "t", over: 25, under: 50 }],
      limit: most(5),
      evidence: "memory",
    },
    {
      ...reinforcement,
      id: "reinforcement-thick",
      ranges: [{ symbol: "t", from: 50 }],
      limit: most(6),
      evidence: "memory",
    },
  ];
}

/**
 * AWS D1.1, the table of criteria for visual inspection (6.1, since 2020 8.1) in mm, with the profiles of its clause on
 * workmanship. Public sources that quote the editions of 2000, 2004 and 2020 agree on the numbers.
 */
export function awsD11(options: AwsOptions): Criteria {
  const { loading, stress } = options;
  const across = stress === "across-tension";
  return {
    version: 1,
    id: `aws-d1.1-${loading}-${across ? "across" : "other"}`,
    name: `AWS D1.1, ${loading} loading, ${across ? "weld across a tensile stress" : "other welds"}`,
    edition: "AWS D1.1:2020, table 8.1 (6.1 in editions before)",
    notes:
      "Inspected when the weld is cold; welds in quenched and tempered steel (A514, A517, A709 HPS 100W) not before 48 hours.",
    rows: [
      {
        id: "crack",
        clause: "cracks",
        name: "Crack",
        types: [...CRACKS],
        faces: EVERYWHERE,
        ranges: [],
        limit: NOT_PERMITTED,
        sums: [],
        evidence: "quoted",
        notes: "Of whatever size and wherever it lies.",
      },
      {
        id: "fusion",
        clause: "fusion",
        name: "Lack of fusion",
        types: [...LACK_OF_FUSION],
        faces: EVERYWHERE,
        ranges: [],
        limit: NOT_PERMITTED,
        sums: [],
        evidence: "quoted",
        notes: "Fusion must be complete between runs and to the parent metal.",
      },
      {
        id: "root-faces",
        clause: "fusion",
        name: "Root faces that are not fused",
        types: ["root-penetration"],
        faces: ["root"],
        ranges: [],
        limit: NOT_PERMITTED,
        sums: [],
        evidence: "memory",
        notes:
          "In a weld of complete penetration a root face that is not fused is taken as lack of fusion: our reading.",
      },
      {
        id: "crater",
        clause: "craters",
        name: "Crater",
        types: ["crater-pipe"],
        faces: ["cap", "fillet"],
        ranges: [],
        limit: dependsOn("condition", "the crater must be filled to the size of the weld"),
        sums: [],
        evidence: "quoted",
        notes: "Not at the ends of intermittent fillets outside their effective length.",
      },
      {
        id: "overlap",
        clause: "profiles, overlap",
        name: "Overlap",
        types: ["overlap"],
        faces: EVERYWHERE,
        ranges: [],
        limit: NOT_PERMITTED,
        sums: [],
        evidence: "quoted",
        notes: "",
      },
      {
        id: "flush-ground",
        clause: "profiles, flush",
        name: "Thickness lost where a butt weld was ground flush",
        types: ["underflushing"],
        faces: BUTT,
        ranges: [],
        limit: atMost("depth", { coefficient: 0.05, symbol: "t", atMost: 1 }),
        sums: [],
        evidence: "memory",
        notes: "",
      },
      ...undersizeRows(),
      ...undercutRows(options),
      ...porosityRows(options),
      ...profileRows(),
    ],
    sections: [],
  };
}
