import { columnX, nearestColumn, rowOf } from "../../surface";
import type { Field } from "../field";
import type { Point, TruthItem } from "../truth";
import type { FaceWork } from "../work";
import { truthItem } from "./found";

/** The profile is the highest point within this distance of the run's middle line, mm. */
const HALF_BAND = 1.5;
/** The run's own level is its mean over these distances from the restart, mm. */
const OWN_LEVEL = { from: 12, to: 24 };
/** The hump is looked for this far from the restart, mm. */
const NEAR = 9;
const LEAST = 0.1;

interface Crest {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

function crestOf(field: Field, i: number, y: number): Crest {
  const { grid, z } = field;
  const first = Math.ceil(rowOf(grid, y - HALF_BAND));
  const last = Math.floor(rowOf(grid, y + HALF_BAND));
  let best = first;
  for (let j = first; j <= last; j++) if (z[j * grid.columns + i] > z[best * grid.columns + i]) best = j;
  return { x: columnX(grid, i), y: grid.y0 + (best + 0.5) / grid.perMm, z: z[best * grid.columns + i] };
}

/** Crests of the columns from x0 to x1, as far as the weld reaches. */
function crests(work: FaceWork, x0: number, x1: number, y: number): Crest[] {
  const { grid } = work.strip;
  const low = Math.max(x0, 6);
  const high = Math.min(x1, grid.columns / grid.perMm - 6);
  const found: Crest[] = [];
  for (let i = nearestColumn(grid, low); i <= nearestColumn(grid, high) && low < high; i++)
    found.push(crestOf(work.strip, i, y));
  return found;
}

const mean = (values: readonly Crest[]): number => values.reduce((sum, c) => sum + c.z, 0) / values.length;

/** First and last index round `top` whose value stays above half of the top's. */
function aboveHalf(values: readonly number[], top: number): [first: number, last: number] {
  let first = top;
  let last = top;
  while (first > 0 && values[first - 1] > values[top] / 2) first--;
  while (last < values.length - 1 && values[last + 1] > values[top] / 2) last++;
  return [first, last];
}

export interface RestartPlace {
  readonly x: number;
  /** y of the run's middle line there. */
  readonly y: number;
  readonly halfWidth: number;
  /** What is looked for: metal heaped up, or a hollow left open. */
  readonly shape: "hump" | "gap";
}

/** The run's own level about a restart, mm; null where no weld is that far from it. */
export function ownLevel(work: FaceWork, { x, y }: Pick<RestartPlace, "x" | "y">): number | null {
  const sides = [
    ...crests(work, x - OWN_LEVEL.to, x - OWN_LEVEL.from, y),
    ...crests(work, x + OWN_LEVEL.from, x + OWN_LEVEL.to, y),
  ];
  return sides.length === 0 ? null : mean(sides);
}

/**
 * A restart near x on a run whose middle line passes through y. Its profile is the highest metal within 1.5 mm of y,
 * column by column; its own level the profile's mean 12 to 24 mm to either side. Size = the largest height of the profile
 * above that level within 9 mm (of a gap: the largest depth below it); place = middle of what exceeds half of that, round
 * it. Null below 0.1 mm.
 */
export function measuredRestart(work: FaceWork, id: string, place: RestartPlace, harmless: boolean): TruthItem | null {
  const { x, y, halfWidth } = place;
  const level = ownLevel(work, place);
  const near = crests(work, x - NEAR, x + NEAR, y);
  if (level === null || near.length === 0) return null;
  const sign = place.shape === "gap" ? -1 : 1;
  const departures = near.map((crest) => sign * (crest.z - level));
  const top = departures.indexOf(Math.max(...departures));
  if (departures[top] < LEAST) return null;
  const [first, last] = aboveHalf(departures, top);
  const start = near[first].x;
  const end = near[last].x;
  const outline: Point[] = [
    [start - 2, y - halfWidth],
    [end + 2, y - halfWidth],
    [end + 2, y + halfWidth],
    [start - 2, y + halfWidth],
  ];
  return truthItem(work, id, "poor-restart", {
    start,
    end,
    across: y,
    size: departures[top],
    width: null,
    worst: [near[top].x, near[top].y],
    outline,
    harmless,
  });
}
