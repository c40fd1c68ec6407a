import type { ImperfectionType } from "../../imperfections";
import { bandOutline, longestStretch, type Range } from "../measure";
import type { TruthItem } from "../truth";
import type { FaceWork } from "../work";
import { truthItem } from "./found";

/** What one column of pixels shows of something that is told by its colour or its skin; y in mm. */
export interface SeenColumn {
  readonly x: number;
  /** By how much it is there: evened out along the weld before it counts. */
  readonly value: number;
  /** Lowest and highest pixel that shows it; infinite where none does. */
  readonly low: number;
  readonly high: number;
  readonly strongest: { readonly value: number; readonly y: number };
}

/** How the columns are judged; mm along the weld. */
export interface ColumnSearch {
  readonly range: Range;
  /** Evened out over so much to both sides, more than this counts. */
  readonly evened: number;
  readonly threshold: number;
  /** Stretches of less up to this length do not end it. */
  readonly bridge: number;
}

/** Mean value of the columns so near to each, the column itself included. */
function evenedValues(columns: readonly SeenColumn[], reach: number): number[] {
  return columns.map((_, i) => {
    const near = columns.slice(Math.max(0, i - reach), i + reach + 1);
    return near.reduce((sum, { value }) => sum + value, 0) / near.length;
  });
}

/**
 * The longest stretch of columns within the range whose value, evened out, exceeds the threshold. Across and width = extent
 * of the pixels that show it there; worst = the strongest place; no size. Null where no column or no pixel counts.
 */
export function measuredColumns(
  work: FaceWork,
  id: string,
  type: ImperfectionType,
  columns: readonly SeenColumn[],
  { range, evened, threshold, bridge }: ColumnSearch,
): TruthItem | null {
  const { perMm } = work.strip.grid;
  const values = evenedValues(columns, Math.round(evened * perMm));
  const stretch = longestStretch(
    columns.map(({ x }, i) => x > range.from && x < range.to && values[i] > threshold),
    Math.round(bridge * perMm),
  );
  if (!stretch) return null;
  const within = columns.slice(stretch.first, stretch.last + 1).filter(({ high }) => Number.isFinite(high));
  if (within.length === 0) return null;
  const half = 0.5 / perMm;
  const low = within.reduce((least, column) => Math.min(least, column.low), Number.POSITIVE_INFINITY) - half;
  const high = within.reduce((most, column) => Math.max(most, column.high), Number.NEGATIVE_INFINITY) + half;
  const worst = within.reduce((a, b) => (b.strongest.value > a.strongest.value ? b : a));
  return truthItem(work, id, type, {
    start: columns[stretch.first].x - half,
    end: columns[stretch.last].x + half,
    across: (low + high) / 2,
    size: null,
    width: high - low,
    worst: [worst.x, worst.strongest.y],
    outline: bandOutline(within, half),
  });
}
