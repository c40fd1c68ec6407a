import type { Formula } from "../formula";
import type { LevelRow } from "./iso5817-rows/level-row";
import { atMost } from "./limits";

/** One difference of the 2023 edition against that of 2014. */
export interface EditionChange {
  /** Row of table 1, or null where it is about the whole document. */
  readonly clause: string | null;
  readonly what: string;
  /** Known: carried out here. Number not known: said beside the row. Unresolved: sources contradict each other. */
  readonly status: "known" | "single-source" | "number-not-known" | "unresolved";
}

/** What public sources say changed in ISO 5817:2023; some drawings in the table changed as well. */
export const CHANGES_2023: readonly EditionChange[] = [
  { clause: "1.3", what: "Fillets go by the actual throat aA instead of the nominal one.", status: "known" },
  { clause: "1.4", what: "Fillets go by the actual throat aA instead of t.", status: "single-source" },
  { clause: "1.16", what: "The actual throat aA takes the place of a.", status: "known" },
  { clause: "3.2", what: "The actual throat aA takes the place of a.", status: "known" },
  {
    clause: "1.11",
    what: "One source gives level C over 3 mm as 1 mm + 0.45 b, at most 4 mm; another names no new number.",
    status: "unresolved",
  },
  {
    clause: "4.1",
    what: "Some imperfections no longer count and the criteria differ; the new numbers were not found.",
    status: "number-not-known",
  },
  {
    clause: null,
    what: "Drawings in rows 1.4, 1.5, 1.6, 1.11, 1.14, 1.16 and 1.19 changed or were added.",
    status: "known",
  },
  { clause: null, what: "What used to be called a smooth weld transition is a smooth transition.", status: "known" },
];

/** Level C of row 1.11 over 3 mm, as the one source gives it. */
const LOWERED_PENETRATION: Formula = { constant: 1, coefficient: 0.45, symbol: "bRoot", atMost: 4 };

/** How the unresolved change of row 1.11 is taken. */
export const PENETRATION_READINGS = ["as-2014", "lowered"] as const;
export type PenetrationReading = (typeof PENETRATION_READINGS)[number];

const byActualThroat = (formula: Formula): Formula =>
  formula.symbol === "a" || formula.symbol === "t" ? { ...formula, symbol: "aA" } : formula;

function withActualThroat(row: LevelRow): LevelRow {
  const swap = (limit: LevelRow["levels"]["B"]) =>
    limit.kind === "at-most" ? { ...limit, formula: byActualThroat(limit.formula) } : limit;
  const { B, C, D } = row.levels;
  return {
    ...row,
    levels: { B: swap(B), C: swap(C), D: swap(D) },
    notes: `${row.notes} Since 2023 by the actual throat.`.trim(),
  };
}

/** The rows of 2023 from one of 2014: a row that speaks of butt welds and fillets alike may become two. */
export function rowsOf2023(row: LevelRow, penetration: PenetrationReading): LevelRow[] {
  if (row.clause === "1.16" || row.clause === "3.2" || (row.clause === "1.3" && row.faces.includes("fillet"))) {
    return [withActualThroat(row)];
  }
  if (row.clause === "1.4") {
    const fillet = withActualThroat({ ...row, id: `${row.id}-fillet`, faces: ["fillet"], evidence: "single-source" });
    return [{ ...row, faces: row.faces.filter((face) => face !== "fillet") }, fillet];
  }
  if (row.id === "1.11-thick") {
    const C = penetration === "lowered" ? atMost("height", LOWERED_PENETRATION) : row.levels.C;
    const notes = `${row.notes} Unresolved for 2023: level C may be 1 mm + 0.45 b; taken here ${
      penetration === "lowered" ? "as lowered" : "as in 2014"
    }.`;
    return [{ ...row, levels: { ...row.levels, C }, notes }];
  }
  return [row];
}
