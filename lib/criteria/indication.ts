import { type ImperfectionType, imperfection } from "../imperfections";
import type { Mm } from "../math";
import type { SurfaceFace } from "../weld";
import { PORE_GROUPS } from "./sets/types";
import type { Quantity, SymbolValues } from "./symbols";

/** What was measured on an indication: mm, degrees for a toe angle. The length follows from start and end. */
export type Measured = Readonly<Partial<Record<Exclude<Quantity, "length">, number>>>;

/** One indication to be sentenced. */
export interface Indication {
  readonly id: string;
  readonly type: ImperfectionType;
  readonly face: SurfaceFace;
  /** mm from the datum, 0 to the length of the weld; a point has both alike, or the two ends of what was seen. */
  readonly start: Mm;
  readonly end: Mm;
  readonly measured: Measured;
}

/** What a piece brings along: the length of its weld in mm, and the values of symbols, measured or nominal. */
export interface Piece {
  readonly length: Mm;
  readonly values: SymbolValues;
}

/** A size as a report has it, under the name that the catalogue gives to the size of that type; empty where it has none. */
export function measuredSize(type: ImperfectionType, size: Mm | null): Measured {
  const kind = imperfection(type).size;
  return kind === null || size === null ? {} : { [kind]: size };
}

/** A measure of an indication, or null where it is not known: a point without two ends has no length. */
export function quantityOf({ type, start, end, measured }: Indication, quantity: Quantity): number | null {
  if (quantity !== "length") return measured[quantity] ?? null;
  return end > start || imperfection(type).extent === "line" ? end - start : null;
}

/** True where one indication stands for several pores. */
export const isPoreGroup = (type: ImperfectionType): boolean => (PORE_GROUPS as readonly string[]).includes(type);
