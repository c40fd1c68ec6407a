import type { RunPlan, Segment } from "../plan";

/** Two electrode lengths that meet: `earlier` was laid first, `later` goes on from it. */
export interface Stop {
  readonly earlier: Segment;
  readonly later: Segment;
}

const REACH_OF_A_STOP = 30;
const SHORTEST_LENGTH = 12;

/** Where the electrode ended, mm along the weld. */
export const frontOf = (segment: Segment, direction: 1 | -1): number => (direction > 0 ? segment.b : segment.a);

/** Moves the end of an electrode length to x mm. */
function setFront(segment: Segment, direction: 1 | -1, x: number): void {
  if (direction > 0) segment.b = x;
  else segment.a = x;
}

/** Moves the start of an electrode length to x mm. */
export function setStart(segment: Segment, direction: 1 | -1, x: number): void {
  if (direction > 0) segment.a = x;
  else segment.b = x;
}

function nearestStop(run: RunPlan, x: number): Stop | null {
  let found: Stop | null = null;
  let distance = REACH_OF_A_STOP;
  for (let n = 1; n < run.segments.length; n++) {
    const earlier = run.segments[n - 1];
    const later = run.segments[n];
    const away = Math.abs(frontOf(earlier, run.direction) - x);
    const inside =
      Math.min(earlier.a, later.a) + SHORTEST_LENGTH < x && x < Math.max(earlier.b, later.b) - SHORTEST_LENGTH;
    if (away < distance && inside) {
      distance = away;
      found = { earlier, later };
    }
  }
  return found;
}

/**
 * Makes the run stop at x mm: moves a stop that is nearer than 30 mm, or parts the electrode length there in two. The
 * caller shapes both ends. Null where no weld of at least 12 mm to either side exists.
 */
export function placeStop(run: RunPlan, x: number): Stop | null {
  const near = nearestStop(run, x);
  if (near) {
    setFront(near.earlier, run.direction, x);
    setStart(near.later, run.direction, x);
    return near;
  }
  const index = run.segments.findIndex((s) => s.a + SHORTEST_LENGTH < x && x < s.b - SHORTEST_LENGTH);
  if (index < 0) return null;
  const whole = run.segments[index];
  const earlier: Segment = { ...whole };
  const later: Segment = { ...whole };
  setFront(earlier, run.direction, x);
  setStart(later, run.direction, x);
  run.segments.splice(index, 1, earlier, later);
  return { earlier, later };
}
