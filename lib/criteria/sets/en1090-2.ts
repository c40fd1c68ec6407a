import type { Criteria } from "../criteria";
import { atLevel, iso5817Rows } from "./iso5817";
import type { QualityLevel } from "./iso5817-rows/level-row";
import { PERMITTED } from "./limits";

/** Execution classes of EN 1090-2. */
export const EXECUTION_CLASSES = [1, 2, 3, 4] as const;
export type ExecutionClass = (typeof EXECUTION_CLASSES)[number];

/** Quality level of ISO 5817:2014 that a class asks for, and what is judged by another one. */
const LEVEL_OF: Readonly<Record<ExecutionClass, QualityLevel>> = { 1: "D", 2: "C", 3: "B", 4: "B" };
/** In class 2 overlap, stray arc and end crater pipe go by level D. */
const CLASS_2_BY_D: readonly string[] = ["1.13", "1.22", "1.4"];
/** In no class is the weld toe considered, nor micro lack of fusion. */
const NOT_CONSIDERED: readonly string[] = ["1.12-butt", "1.12-fillet", "1.5-micro"];

/** EN 1090-2, steel structures, by way of ISO 5817:2014. Class 4 asks for more than level B; what, is not carried here. */
export function en1090(execution: ExecutionClass): Criteria {
  const level = LEVEL_OF[execution];
  const more = execution === 4 ? " Class 4 asks for more than level B, which is not carried here." : "";
  const asks = execution === 4 ? { alsoNeeds: "what class 4 asks for beyond level B, which is not carried here" } : {};
  return {
    version: 1,
    id: `en-1090-2-exc${execution}`,
    name: `EN 1090-2, execution class ${execution}`,
    edition: "EN 1090-2 with ISO 5817:2014",
    notes: `Quality level ${level}${execution === 2 ? ", level D for overlap, stray arc and end crater pipe" : ""}.${more}`,
    rows: iso5817Rows(2014).map((row) => {
      if (NOT_CONSIDERED.includes(row.id)) {
        const { id, clause, name, types, faces, range } = row;
        const notes = "EN 1090-2 does not consider it.";
        const says = { limit: PERMITTED, sums: [], evidence: "quoted" as const, notes };
        return { id, clause, name, types: [...types], faces: [...faces], ranges: [range], ...says };
      }
      const own = execution === 2 && CLASS_2_BY_D.includes(row.clause) ? "D" : level;
      return { ...atLevel(row, own), ...asks };
    }),
    sections: [],
  };
}
