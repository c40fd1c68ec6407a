import type { ImperfectionType } from "../../imperfections";
import type { SurfaceFace } from "../../weld";
import type { Evidence } from "../criteria";
import type { Formula } from "../formula";
import type { Limit } from "../limit";
import type { Range } from "../range";
import { angleFrom, atMost, dependsOn, NOT_PERMITTED, PERMITTED, shortAtMost } from "./limits";
import { CRACKS_BUT_CRATER, LACK_OF_FUSION } from "./types";

/** Quality levels of ISO 5817; B is the strictest. */
export const QUALITY_LEVELS = ["B", "C", "D"] as const;
export type QualityLevel = (typeof QUALITY_LEVELS)[number];

/** One row of table 1 of ISO 5817:2014 for one range of thickness, with its limit at each level. */
export interface LevelRow {
  readonly id: string;
  /** Row of table 1. */
  readonly clause: string;
  /** Numbers of ISO 6520-1 that the row names. A number that others stand below (100, 401, 602) speaks of them too. */
  readonly numbers: readonly string[];
  readonly name: string;
  readonly types: readonly ImperfectionType[];
  readonly faces: readonly SurfaceFace[];
  readonly range: Range;
  readonly levels: Readonly<Record<QualityLevel, Limit>>;
  readonly evidence: Evidence;
  readonly notes: string;
  readonly alsoNeeds?: string;
}

const ANY: Range = { symbol: "t", from: 0.5 };
const THIN: Range = { symbol: "t", from: 0.5, upTo: 3 };
const THICK: Range = { symbol: "t", over: 3 };

const CAP: readonly SurfaceFace[] = ["cap"];
const ROOT: readonly SurfaceFace[] = ["root"];
const BUTT: readonly SurfaceFace[] = ["cap", "root"];
const FILLET: readonly SurfaceFace[] = ["fillet"];
const CAP_AND_FILLET: readonly SurfaceFace[] = ["cap", "fillet"];
const EVERYWHERE: readonly SurfaceFace[] = ["cap", "root", "fillet"];

const levels = (D: Limit, C: Limit, B: Limit) => ({ B, C, D });
const NONE_AT_ALL = levels(NOT_PERMITTED, NOT_PERMITTED, NOT_PERMITTED);
const same = (limit: Limit) => levels(limit, limit, limit);

const t = (coefficient: number, atMost?: number): Formula =>
  atMost === undefined ? { coefficient, symbol: "t" } : { coefficient, symbol: "t", atMost };
const ofA = (constant: number, coefficient: number, atMost?: number): Formula => ({
  ...(constant > 0 ? { constant } : {}),
  coefficient,
  symbol: "a",
  ...(atMost === undefined ? {} : { atMost }),
});
const ofCap = (coefficient: number, atMost: number): Formula => ({ constant: 1, coefficient, symbol: "b", atMost });
const ofRoot = (coefficient: number, atMost?: number): Formula => ({
  constant: 1,
  coefficient,
  symbol: "bRoot",
  ...(atMost === undefined ? {} : { atMost }),
});

const SMOOTH = "A smooth transition is required.";
const PORE_GROUP_NEEDS =
  "the limits of rows 2.4 and 2.5 on groups of pores, which go by their area and are not carried here";

/** Surface pores: with s on a butt weld, with a on a fillet; the largest mouth of a group counts, which is our reading. */
function pores(where: "butt" | "fillet"): LevelRow[] {
  const symbol = where === "butt" ? "s" : "a";
  const faces = where === "butt" ? BUTT : FILLET;
  const d = (coefficient: number, most?: number) =>
    atMost("diameter", { coefficient, symbol, ...(most === undefined ? {} : { atMost: most }) });
  const thin = levels(d(0.3), NOT_PERMITTED, NOT_PERMITTED);
  const thick = levels(d(0.3, 3), d(0.2, 2), NOT_PERMITTED);
  const single = {
    clause: "1.3",
    numbers: ["2017"],
    name: "Surface pore",
    types: ["surface-pore"],
    faces,
    evidence: "text",
    notes: where === "butt" ? "Butt welds go by s." : "Fillets go by the nominal throat.",
  } as const;
  const group = {
    ...single,
    types: ["clustered-porosity", "linear-porosity", "surface-porosity"],
    name: "Group of surface pores, by its largest pore",
    evidence: "memory",
    notes: "Each pore that is open to the surface is taken as a surface pore, which is our reading.",
    alsoNeeds: PORE_GROUP_NEEDS,
  } as const;
  return [
    { ...single, id: `1.3-${where}-thin`, range: THIN, levels: thin },
    { ...single, id: `1.3-${where}-thick`, range: THICK, levels: thick },
    { ...group, id: `1.3-${where}-group-thin`, range: THIN, levels: thin },
    { ...group, id: `1.3-${where}-group-thick`, range: THICK, levels: thick },
  ];
}

/**
 * Table 1 of ISO 5817:2014, the rows an eye can meet and a few beside them for completeness. Rows of `types: []` speak of what
 * the catalogue does not have.
 */
export const ISO_5817_ROWS: readonly LevelRow[] = [
  {
    id: "1.1",
    clause: "1.1",
    numbers: ["100"],
    name: "Crack",
    types: CRACKS_BUT_CRATER,
    faces: EVERYWHERE,
    range: ANY,
    levels: NONE_AT_ALL,
    evidence: "text",
    notes: "",
  },
  {
    id: "1.2",
    clause: "1.2",
    numbers: ["104"],
    name: "Crater crack",
    types: ["crater-crack"],
    faces: EVERYWHERE,
    range: ANY,
    levels: NONE_AT_ALL,
    evidence: "text",
    notes: "",
  },
  ...pores("butt"),
  ...pores("fillet"),
  {
    id: "1.4-thin",
    clause: "1.4",
    numbers: ["2025"],
    name: "End crater pipe",
    types: ["crater-pipe"],
    faces: CAP_AND_FILLET,
    range: THIN,
    levels: levels(atMost("depth", t(0.2)), NOT_PERMITTED, NOT_PERMITTED),
    evidence: "text",
    notes: "Its depth counts, not the width of its mouth.",
  },
  {
    id: "1.4-thick",
    clause: "1.4",
    numbers: ["2025"],
    name: "End crater pipe",
    types: ["crater-pipe"],
    faces: CAP_AND_FILLET,
    range: THICK,
    levels: levels(atMost("depth", t(0.2, 2)), atMost("depth", t(0.1, 1)), NOT_PERMITTED),
    evidence: "text",
    notes: "Its depth counts, not the width of its mouth.",
  },
  {
    id: "1.5",
    clause: "1.5",
    numbers: ["401"],
    name: "Lack of fusion",
    types: LACK_OF_FUSION,
    faces: EVERYWHERE,
    range: ANY,
    levels: NONE_AT_ALL,
    evidence: "text",
    notes: "",
  },
  {
    id: "1.5-micro",
    clause: "1.5",
    numbers: ["401"],
    name: "Micro lack of fusion",
    types: [],
    faces: EVERYWHERE,
    range: ANY,
    levels: levels(PERMITTED, PERMITTED, NOT_PERMITTED),
    evidence: "text",
    notes: "Found by microscopic examination only, never by eye.",
  },
  {
    id: "1.6",
    clause: "1.6",
    numbers: ["4021"],
    name: "Incomplete root penetration",
    types: ["root-penetration"],
    faces: ROOT,
    range: ANY,
    levels: levels(shortAtMost("depth", t(0.2, 2)), NOT_PERMITTED, NOT_PERMITTED),
    evidence: "text",
    notes: "Only butt welds made from one side.",
  },
  {
    id: "1.7-thin",
    clause: "1.7",
    numbers: ["5011", "5012"],
    name: "Undercut",
    types: ["continuous-undercut", "intermittent-undercut"],
    faces: CAP_AND_FILLET,
    range: THIN,
    levels: levels(shortAtMost("depth", t(0.2)), shortAtMost("depth", t(0.1)), NOT_PERMITTED),
    evidence: "single-source",
    notes: `${SMOOTH} Not regarded as systematic.`,
  },
  {
    id: "1.7-thick",
    clause: "1.7",
    numbers: ["5011", "5012"],
    name: "Undercut",
    types: ["continuous-undercut", "intermittent-undercut"],
    faces: CAP_AND_FILLET,
    range: THICK,
    levels: levels(atMost("depth", t(0.2, 1)), atMost("depth", t(0.1, 0.5)), atMost("depth", t(0.05, 0.5))),
    evidence: "secondary",
    notes: `${SMOOTH} Not regarded as systematic.`,
  },
  {
    id: "1.8-thin",
    clause: "1.8",
    numbers: ["5013"],
    name: "Shrinkage groove",
    types: ["shrinkage-groove"],
    faces: ROOT,
    range: THIN,
    levels: levels(atMost("depth", { constant: 0.2, ...t(0.1) }), shortAtMost("depth", t(0.1)), NOT_PERMITTED),
    evidence: "single-source",
    notes: SMOOTH,
  },
  {
    id: "1.8-thick",
    clause: "1.8",
    numbers: ["5013"],
    name: "Shrinkage groove",
    types: ["shrinkage-groove"],
    faces: ROOT,
    range: THICK,
    levels: levels(
      shortAtMost("depth", t(0.2, 2)),
      shortAtMost("depth", t(0.1, 1)),
      shortAtMost("depth", t(0.05, 0.5)),
    ),
    evidence: "single-source",
    notes: SMOOTH,
  },
  {
    id: "1.9",
    clause: "1.9",
    numbers: ["502"],
    name: "Excess weld metal",
    types: ["excess-weld-metal"],
    faces: CAP,
    range: ANY,
    levels: levels(
      atMost("height", ofCap(0.25, 10)),
      atMost("height", ofCap(0.15, 7)),
      atMost("height", ofCap(0.1, 5)),
    ),
    evidence: "secondary",
    notes: `b is the width of the cap. ${SMOOTH}`,
  },
  {
    id: "1.10",
    clause: "1.10",
    numbers: ["503"],
    name: "Excessive convexity",
    types: ["excessive-convexity"],
    faces: FILLET,
    range: ANY,
    levels: levels(atMost("height", ofCap(0.25, 5)), atMost("height", ofCap(0.15, 4)), atMost("height", ofCap(0.1, 3))),
    evidence: "secondary",
    notes: "b is the width of the fillet's face.",
  },
  {
    id: "1.11-thin",
    clause: "1.11",
    numbers: ["504"],
    name: "Excess penetration",
    types: ["excess-penetration"],
    faces: ROOT,
    range: THIN,
    levels: levels(atMost("height", ofRoot(0.6)), atMost("height", ofRoot(0.3)), atMost("height", ofRoot(0.1))),
    evidence: "single-source",
    notes: "b is the width of the root run.",
  },
  {
    id: "1.11-thick",
    clause: "1.11",
    numbers: ["504"],
    name: "Excess penetration",
    types: ["excess-penetration"],
    faces: ROOT,
    range: THICK,
    levels: levels(atMost("height", ofRoot(1, 5)), atMost("height", ofRoot(0.6, 4)), atMost("height", ofRoot(0.2, 3))),
    evidence: "single-source",
    notes: "b is the width of the root run.",
  },
  {
    id: "1.12-butt",
    clause: "1.12",
    numbers: ["505"],
    name: "Incorrect weld toe",
    types: ["incorrect-weld-toe"],
    faces: CAP,
    range: ANY,
    levels: levels(angleFrom(90), angleFrom(110), angleFrom(150)),
    evidence: "single-source",
    notes: "The angle between the plate and the weld, measured outside the metal. Butt welds.",
  },
  {
    id: "1.12-fillet",
    clause: "1.12",
    numbers: ["505"],
    name: "Incorrect weld toe",
    types: ["incorrect-weld-toe"],
    faces: FILLET,
    range: ANY,
    levels: levels(angleFrom(90), angleFrom(100), angleFrom(110)),
    evidence: "single-source",
    notes: "The angle between the plate and the weld, measured outside the metal. Fillets.",
  },
  {
    id: "1.13",
    clause: "1.13",
    numbers: ["506"],
    name: "Overlap",
    types: ["overlap"],
    faces: CAP_AND_FILLET,
    range: ANY,
    levels: levels(atMost("width", { coefficient: 0.2, symbol: "b" }), NOT_PERMITTED, NOT_PERMITTED),
    evidence: "secondary",
    notes: "",
  },
  {
    id: "1.13-root",
    clause: "1.13",
    numbers: ["506"],
    name: "Overlap at the root",
    types: ["overlap"],
    faces: ROOT,
    range: ANY,
    levels: levels(atMost("width", { coefficient: 0.2, symbol: "bRoot" }), NOT_PERMITTED, NOT_PERMITTED),
    evidence: "secondary",
    notes: "b taken as the width of the root run, which is our reading.",
  },
  {
    id: "1.14-thin",
    clause: "1.14",
    numbers: ["509", "511"],
    name: "Sagging, incompletely filled groove",
    types: ["sagging", "incompletely-filled-groove"],
    faces: CAP,
    range: THIN,
    levels: levels(shortAtMost("depth", t(0.25)), shortAtMost("depth", t(0.1)), NOT_PERMITTED),
    evidence: "single-source",
    notes: SMOOTH,
  },
  {
    id: "1.14-thick",
    clause: "1.14",
    numbers: ["509", "511"],
    name: "Sagging, incompletely filled groove",
    types: ["sagging", "incompletely-filled-groove"],
    faces: CAP,
    range: THICK,
    levels: levels(
      shortAtMost("depth", t(0.25, 2)),
      shortAtMost("depth", t(0.1, 1)),
      shortAtMost("depth", t(0.05, 0.5)),
    ),
    evidence: "secondary",
    notes: SMOOTH,
  },
  {
    id: "1.15",
    clause: "1.15",
    numbers: ["510"],
    name: "Burn-through",
    types: ["burn-through"],
    faces: BUTT,
    range: ANY,
    levels: NONE_AT_ALL,
    evidence: "secondary",
    notes: "",
  },
  {
    id: "1.16",
    clause: "1.16",
    numbers: ["512"],
    name: "Excessive asymmetry of a fillet",
    types: ["excessive-asymmetry"],
    faces: FILLET,
    range: ANY,
    levels: levels(
      atMost("difference", ofA(2, 0.2)),
      atMost("difference", ofA(2, 0.15)),
      atMost("difference", ofA(1.5, 0.15)),
    ),
    evidence: "secondary",
    notes: "Only where the drawing does not ask for unequal legs. h is the difference of the legs.",
  },
  {
    id: "1.17-thin",
    clause: "1.17",
    numbers: ["515"],
    name: "Root concavity",
    types: ["root-concavity"],
    faces: ROOT,
    range: THIN,
    levels: levels(atMost("depth", { constant: 0.2, ...t(0.1) }), shortAtMost("depth", t(0.1)), NOT_PERMITTED),
    evidence: "single-source",
    notes: SMOOTH,
  },
  {
    id: "1.17-thick",
    clause: "1.17",
    numbers: ["515"],
    name: "Root concavity",
    types: ["root-concavity"],
    faces: ROOT,
    range: THICK,
    levels: levels(
      shortAtMost("depth", t(0.2, 2)),
      shortAtMost("depth", t(0.1, 1)),
      shortAtMost("depth", t(0.05, 0.5)),
    ),
    evidence: "single-source",
    notes: SMOOTH,
  },
  {
    id: "1.18",
    clause: "1.18",
    numbers: ["516"],
    name: "Root porosity",
    types: ["root-porosity"],
    faces: ROOT,
    range: ANY,
    levels: levels(dependsOn("condition", "permitted locally"), NOT_PERMITTED, NOT_PERMITTED),
    evidence: "single-source",
    notes: "How far local reaches is not said.",
  },
  {
    id: "1.19",
    clause: "1.19",
    numbers: ["517"],
    name: "Poor restart",
    types: ["poor-restart"],
    faces: EVERYWHERE,
    range: ANY,
    levels: levels(
      dependsOn("condition", "the limit is that of the imperfection which the restart made"),
      NOT_PERMITTED,
      NOT_PERMITTED,
    ),
    evidence: "single-source",
    notes: "",
  },
  {
    id: "1.20-thin",
    clause: "1.20",
    numbers: ["5213"],
    name: "Insufficient throat",
    types: ["insufficient-throat"],
    faces: FILLET,
    range: THIN,
    levels: levels(shortAtMost("depth", ofA(0.2, 0.1)), shortAtMost("depth", { constant: 0.2 }), NOT_PERMITTED),
    evidence: "single-source",
    notes: "h is the shortfall of the throat. Not for processes with proven deeper penetration.",
  },
  {
    id: "1.20-thick",
    clause: "1.20",
    numbers: ["5213"],
    name: "Insufficient throat",
    types: ["insufficient-throat"],
    faces: FILLET,
    range: THICK,
    levels: levels(shortAtMost("depth", ofA(0.3, 0.1, 2)), shortAtMost("depth", ofA(0.3, 0.1, 1)), NOT_PERMITTED),
    evidence: "secondary",
    notes: "h is the shortfall of the throat. Not for processes with proven deeper penetration.",
  },
  {
    id: "1.21",
    clause: "1.21",
    numbers: ["5214"],
    name: "Excessive throat",
    types: ["excessive-throat"],
    faces: FILLET,
    range: ANY,
    levels: levels(PERMITTED, atMost("height", ofA(1, 0.2, 4)), atMost("height", ofA(1, 0.15, 3))),
    evidence: "single-source",
    notes: "h is what the actual throat has more than the nominal one.",
  },
  {
    id: "1.22",
    clause: "1.22",
    numbers: ["601"],
    name: "Stray arc",
    types: ["stray-arc"],
    faces: EVERYWHERE,
    range: ANY,
    levels: levels(
      dependsOn("condition", "permitted where the properties of the parent metal are not affected"),
      NOT_PERMITTED,
      NOT_PERMITTED,
    ),
    evidence: "secondary",
    notes: "",
  },
  {
    id: "1.23",
    clause: "1.23",
    numbers: ["602"],
    name: "Spatter",
    types: ["spatter", "tungsten-spatter"],
    faces: EVERYWHERE,
    range: ANY,
    levels: same(
      dependsOn("application", "acceptance depends on the application, such as material or corrosion protection"),
    ),
    evidence: "secondary",
    notes: "",
  },
  {
    id: "1.24",
    clause: "1.24",
    numbers: ["610"],
    name: "Temper colour",
    types: ["temper-colour"],
    faces: EVERYWHERE,
    range: ANY,
    levels: same(
      dependsOn("application", "acceptance depends on the application, such as material or corrosion protection"),
    ),
    evidence: "single-source",
    notes: "",
  },
  {
    id: "3.1-thin",
    clause: "3.1",
    numbers: ["5071"],
    name: "Linear misalignment of plates",
    types: ["linear-misalignment"],
    faces: BUTT,
    range: THIN,
    levels: levels(
      atMost("height", { constant: 0.2, ...t(0.25) }),
      atMost("height", { constant: 0.2, ...t(0.15) }),
      atMost("height", { constant: 0.2, ...t(0.1) }),
    ),
    evidence: "single-source",
    notes: "From the correct position; t of the thinner part unless something else is stated.",
  },
  {
    id: "3.1-thick",
    clause: "3.1",
    numbers: ["5071"],
    name: "Linear misalignment of plates",
    types: ["linear-misalignment"],
    faces: BUTT,
    range: THICK,
    levels: levels(atMost("height", t(0.25, 5)), atMost("height", t(0.15, 4)), atMost("height", t(0.1, 3))),
    evidence: "single-source",
    notes: "From the correct position; t of the thinner part unless something else is stated.",
  },
  {
    id: "3.1-tubes",
    clause: "3.1",
    numbers: ["5072"],
    name: "Linear misalignment of hollow sections, weld across",
    types: [],
    faces: BUTT,
    range: ANY,
    levels: levels(atMost("height", t(0.5, 4)), atMost("height", t(0.5, 3)), atMost("height", t(0.5, 2))),
    evidence: "single-source",
    notes: "",
  },
  {
    id: "3.2-thin",
    clause: "3.2",
    numbers: ["617"],
    name: "Incorrect root gap of a fillet",
    types: ["incorrect-root-gap"],
    faces: FILLET,
    range: THIN,
    levels: levels(atMost("gap", ofA(0.5, 0.1)), atMost("gap", ofA(0.3, 0.1)), atMost("gap", ofA(0.2, 0.1))),
    evidence: "single-source",
    notes: "A larger gap may be made up for by a larger throat.",
  },
  {
    id: "3.2-thick",
    clause: "3.2",
    numbers: ["617"],
    name: "Incorrect root gap of a fillet",
    types: ["incorrect-root-gap"],
    faces: FILLET,
    range: THICK,
    levels: levels(atMost("gap", ofA(1, 0.3, 4)), atMost("gap", ofA(0.5, 0.2, 3)), atMost("gap", ofA(0.5, 0.1, 2))),
    evidence: "single-source",
    notes: "A larger gap may be made up for by a larger throat.",
  },
  {
    id: "4.2",
    clause: "4.2",
    numbers: [],
    name: "Projected or sectional area of imperfections along the weld",
    types: [],
    faces: EVERYWHERE,
    range: ANY,
    levels: levels(
      { kind: "area-at-most", percent: 16 },
      { kind: "area-at-most", percent: 8 },
      { kind: "area-at-most", percent: 4 },
    ),
    evidence: "memory",
    notes: "Mostly about imperfections inside the metal, which other methods find.",
  },
];

/** Types that take metal away from a cross section. Which ones row 4.1 means is our reading, from memory. */
const TAKES_METAL_AWAY = [
  "continuous-undercut",
  "intermittent-undercut",
  "shrinkage-groove",
  "root-concavity",
  "root-penetration",
  "incompletely-filled-groove",
  "sagging",
  "insufficient-throat",
] as const satisfies readonly ImperfectionType[];

/** Row 4.1 of ISO 5817:2014, several imperfections in one cross section, from memory. */
export const ISO_5817_SEVERAL = {
  clause: "4.1",
  name: "Several imperfections in one cross section",
  types: TAKES_METAL_AWAY,
  thin: THIN,
  thick: THICK,
  /** Sum of depths at most, over 3 mm of thickness; thinner plates may have no two of them in one section. */
  butt: { D: t(0.4), C: t(0.3), B: t(0.2) } satisfies Record<QualityLevel, Formula>,
  fillet: { D: ofA(0, 0.25), C: ofA(0, 0.2), B: ofA(0, 0.15) } satisfies Record<QualityLevel, Formula>,
} as const;
