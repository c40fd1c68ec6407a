import { atMost, NOT_PERMITTED, PERMITTED, shortAtMost } from "../limits";
import { CRACKS_BUT_CRATER, LACK_OF_FUSION } from "../types";
import {
  ANY,
  BUTT,
  CAP_AND_FILLET,
  EVERYWHERE,
  FILLET,
  type LevelRow,
  levels,
  NONE_AT_ALL,
  ROOT,
  THICK,
  THIN,
  t,
} from "./level-row";

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

/** Rows 1.1 to 1.6: cracks, pores, craters, fusion and penetration. */
export const CRACKS_AND_PORES: readonly LevelRow[] = [
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
];
