import { type Interval, twoSidedZ } from "../../math";

/** Agreement beyond chance. */
export interface Kappa {
  readonly observed: number;
  readonly expected: number;
  readonly kappa: number;
  /** 95 %, by the standard error of Cohen 1960. */
  readonly interval: Interval;
}

/**
 * Cohen's kappa of a square table of counts, rows and columns in the same order (J. Cohen, Educ. Psychol. Meas. 20, 1960). Null
 * where nothing was counted, or everything is of one name, so that chance alone agrees.
 */
export function cohenKappa(counts: readonly (readonly number[])[]): Kappa | null {
  const total = counts.flat().reduce((sum, count) => sum + count, 0);
  if (total === 0) return null;
  const rows = counts.map((row) => row.reduce((sum, count) => sum + count, 0));
  const columns = counts.map((_, j) => counts.reduce((sum, row) => sum + row[j], 0));
  const observed = counts.reduce((sum, row, i) => sum + row[i], 0) / total;
  const expected = rows.reduce((sum, row, i) => sum + row * columns[i], 0) / total ** 2;
  if (expected === 1) return null;
  const kappa = (observed - expected) / (1 - expected);
  const half = (twoSidedZ(0.95) * Math.sqrt((observed * (1 - observed)) / total)) / (1 - expected);
  return { observed, expected, kappa, interval: { low: Math.max(-1, kappa - half), high: Math.min(1, kappa + half) } };
}

/** A table of rows and columns by name as a square one over all their names. */
export function squareTable<Name>(
  rows: readonly Name[],
  columns: readonly Name[],
  counts: readonly (readonly number[])[],
): number[][] {
  const names = [...new Set([...rows, ...columns])];
  return names.map((row) =>
    names.map((column) => {
      const [i, j] = [rows.indexOf(row), columns.indexOf(column)];
      return i < 0 || j < 0 ? 0 : counts[i][j];
    }),
  );
}
