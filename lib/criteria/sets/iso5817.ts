import type { Criteria, Criterion, SectionRule } from "../criteria";
import { type PenetrationReading, rowsOf2023 } from "./iso5817-2023";
import type { LevelRow, QualityLevel } from "./iso5817-rows/level-row";
import { ISO_5817_SEVERAL } from "./iso5817-rows/several";
import { ISO_5817_ROWS } from "./iso5817-table";

export const ISO_5817_EDITIONS = [2014, 2023] as const;
export type Iso5817Edition = (typeof ISO_5817_EDITIONS)[number];

export interface Iso5817Options {
  readonly level: QualityLevel;
  readonly edition: Iso5817Edition;
  /** How the change of row 1.11 is taken that sources contradict each other about; only in the 2023 edition. */
  readonly penetration?: PenetrationReading;
  /** Whether row 4.1, several imperfections in one cross section, is applied. From memory, so left out unless asked for. */
  readonly several?: boolean;
}

/** The rows of table 1 in an edition, for all three levels: what a comparison of levels shows. */
export function iso5817Rows(edition: Iso5817Edition, penetration: PenetrationReading = "as-2014"): readonly LevelRow[] {
  return edition === 2014 ? ISO_5817_ROWS : ISO_5817_ROWS.flatMap((row) => rowsOf2023(row, penetration));
}

/** One level of a row as a criterion. */
export function atLevel(row: LevelRow, level: QualityLevel): Criterion {
  const { id, clause, name, types, faces, range, levels, evidence, notes, alsoNeeds } = row;
  return {
    id,
    clause,
    name,
    types: [...types],
    faces: [...faces],
    ranges: [range],
    limit: levels[level],
    sums: [],
    evidence,
    notes,
    ...(alsoNeeds === undefined ? {} : { alsoNeeds }),
  };
}

/** Row 4.1 at a level: butt welds by t, fillets by a. The numbers of 2023 are not known. */
export function severalInOneSection(level: QualityLevel, edition: Iso5817Edition): SectionRule[] {
  const { clause, name, types, thin, thick, butt, fillet } = ISO_5817_SEVERAL;
  const common = {
    clause,
    name,
    types: [...types],
    evidence: "memory" as const,
    notes: "From memory; that it is about imperfections which take metal away is our reading.",
  };
  const most = (formula: typeof butt.B): SectionRule["most"] =>
    edition === 2023 ? { kind: "not-known" } : { kind: "at-most", formula };
  const none: SectionRule["most"] = edition === 2023 ? { kind: "not-known" } : { kind: "not-permitted" };
  return [
    { ...common, id: "4.1-thin", faces: ["cap", "root", "fillet"], ranges: [thin], most: none },
    { ...common, id: "4.1-butt", faces: ["cap", "root"], ranges: [thick], most: most(butt[level]) },
    { ...common, id: "4.1-fillet", faces: ["fillet"], ranges: [thick], most: most(fillet[level]) },
  ];
}

/** What tells a set apart in which something from memory or unresolved is applied. */
const READING_WORDS = { lowered: "row 1.11 lowered", several: "row 4.1 applied" } as const;

/** ISO 5817 at a quality level: steel, fusion welds, thickness of 0.5 mm and more. */
export function iso5817({ level, edition, penetration = "as-2014", several = false }: Iso5817Options): Criteria {
  const readings = [
    ...(edition === 2023 && penetration === "lowered" ? (["lowered"] as const) : []),
    ...(several ? (["several"] as const) : []),
  ];
  return {
    version: 1,
    id: ["iso-5817", String(edition), level.toLowerCase(), ...readings].join("-"),
    name: [`ISO 5817, quality level ${level}`, ...readings.map((reading) => READING_WORDS[reading])].join(", "),
    edition: `ISO 5817:${edition}`,
    notes: `${
      edition === 2023 ? "The edition of 2014 with those changes that are known; its other numbers may differ. " : ""
    }Imperfections that repeat regularly along the weld, each of them inside its limit, are accepted at level D only; that is for the inspector to see.`,
    rows: iso5817Rows(edition, penetration).map((row) => atLevel(row, level)),
    sections: several ? severalInOneSection(level, edition) : [],
  };
}
