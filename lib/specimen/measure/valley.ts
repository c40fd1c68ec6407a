import { columnX, sampleAt } from "../../surface";
import type { Heights, Measured, Range, Side } from "./finished";
import { columnsIn, gather, type Sounding, soundColumn } from "./sounding";

/** Heights this far to both sides of a place make the line from which its depth is taken, mm. */
const BASE = 1.1;
/** Looked for from this far outside the later run's edge, over the earlier run, to this far inside it, mm. */
const WINDOW = { outside: 1, inside: 0.6 };
/** Beyond each end of the range, the valley is taken as sound between these distances, mm. */
const SOUND: Range = { from: 3, to: 13 };

/** How a crease or groove between two runs is looked for, mm. */
export interface ValleySearch {
  /** Edge of the later run on the earlier one, y at x; NaN where there is none. */
  readonly edge: (x: number) => number;
  /** Which edge of the later run that is: the earlier run lies on this side of it. */
  readonly side: Side;
  readonly range: Range;
  /** Deeper than this below the sound valley counts. */
  readonly threshold: number;
  readonly bridge: number;
}

/**
 * A crease or groove in the valley between two runs. A place's depth is how far it lies below the middle of the two
 * heights 1.1 mm to either side of it across; the valley's depth in a column is the largest one between 1 mm outside and
 * 0.6 mm inside the later run's edge. Every sound valley has some: the median 3 to 13 mm beyond the ends of the range is
 * taken off. Size = largest depth; start and end = longest stretch deeper than the threshold; width = span deeper than it.
 */
export function measureValley(strip: Heights, search: ValleySearch): Measured | null {
  return gather(valleySoundings(strip, search), strip.grid.perMm, search.threshold, search.bridge);
}

/** Depth of the valley below its sound depth in every column of the range that has one, as `measureValley` takes it. */
export function valleySoundings(strip: Heights, search: ValleySearch): Sounding[] {
  const sound = soundDepth(strip, search);
  return columnsIn(strip, search.range)
    .map((i) => soundValley(strip, search, i, search.threshold, sound))
    .filter((sounding) => sounding !== null);
}

function soundValley(
  strip: Heights,
  { edge, side }: ValleySearch,
  i: number,
  threshold: number,
  sound: number,
): Sounding | null {
  const { grid, z } = strip;
  const x = columnX(grid, i);
  const at = edge(x);
  if (Number.isNaN(at)) return null;
  const outer = at + side * WINDOW.outside;
  const inner = at - side * WINDOW.inside;
  const depth = (height: number, y: number) =>
    0.5 * (sampleAt(grid, z, x, y - BASE) + sampleAt(grid, z, x, y + BASE)) - height - sound;
  return soundColumn(strip, i, Math.min(outer, inner), Math.max(outer, inner), threshold, depth);
}

function soundDepth(strip: Heights, search: ValleySearch): number {
  const { from, to } = search.range;
  const beside = [
    ...columnsIn(strip, { from: from - SOUND.to, to: from - SOUND.from }),
    ...columnsIn(strip, { from: to + SOUND.from, to: to + SOUND.to }),
  ];
  const depths = beside
    .map((i) => soundValley(strip, search, i, Number.POSITIVE_INFINITY, 0)?.value ?? Number.NaN)
    .filter((depth) => !Number.isNaN(depth))
    .sort((a, b) => a - b);
  return depths.length > 0 ? depths[depths.length >> 1] : 0;
}
