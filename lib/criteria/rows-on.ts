import type { ImperfectionType } from "../imperfections";
import type { SurfaceFace } from "../weld";
import type { Criteria, Criterion } from "./criteria";
import { withinRanges } from "./range";
import type { SymbolName, SymbolValues } from "./symbols";

/** What a set says of a type on a face of a piece. */
export interface RowsOn {
  /** Rows that hold. */
  readonly holding: readonly Criterion[];
  /** Rows of which nobody can say whether they hold, and what is missing to know. */
  readonly open: readonly { readonly row: Criterion; readonly missing: SymbolName }[];
  /** Rows that speak of it, but for another thickness, width or leg. */
  readonly outside: readonly Criterion[];
}

/** True where a rule speaks of a type on a face. */
export const speaksOf = (
  { types, faces }: Pick<Criterion, "types" | "faces">,
  { type, face }: { readonly type: ImperfectionType; readonly face: SurfaceFace },
): boolean => types.includes(type) && faces.includes(face);

/** The rows of a set that speak of a type on a face, by whether they hold with those values. */
export function rowsOn(criteria: Criteria, type: ImperfectionType, face: SurfaceFace, values: SymbolValues): RowsOn {
  const rows = criteria.rows
    .filter((row) => speaksOf(row, { type, face }))
    .map((row) => ({ row, within: withinRanges(row.ranges, values) }));
  return {
    holding: rows.filter(({ within }) => within === true).map(({ row }) => row),
    open: rows.flatMap(({ row, within }) => (typeof within === "object" ? [{ row, missing: within.missing }] : [])),
    outside: rows.filter(({ within }) => within === false).map(({ row }) => row),
  };
}
