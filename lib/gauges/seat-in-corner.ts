import type { Mm } from "../math";
import { SHOULDERS } from "./body";
import { lowestOf } from "./lowest";
import { type Pose, toGauge, toSection } from "./pose";
import type { Seating } from "./seat";
import type { SectionPair } from "./strip";
import { clipped } from "./tip";

/** Turns smaller than this end the search, radians; so do shifts, mm. */
const SETTLED = 1e-5;
/** The furthest that one step of the search turns the gauge, radians. */
const MOST_TURN = 0.3;

/**
 * Presses a gauge with two 45-degree shoulders into the corner of two plates: it slides aside and leans until its middle
 * is as low as it goes. Null where a shoulder finds no metal.
 */
export function seatInCorner(section: readonly SectionPair[]): Seating | null {
  let pose: Pose = { along: 0, height: 0, tilt: 0 };
  let contacts: readonly Mm[] = [];
  for (let step = 0; step < 8; step++) {
    const points = toGauge(pose, section);
    const right = underShoulder(points, 1);
    const left = underShoulder(points, -1);
    if (right.length === 0 || left.length === 0) return null;
    const turn = lowestOf((by) => most(right, -by).over + most(left, by).over, -MOST_TURN, MOST_TURN, SETTLED / 2);
    const [r, l] = [most(right, -turn), most(left, turn)];
    const [aside, up] = [(l.over - r.over) / Math.SQRT2, (l.over + r.over) / Math.SQRT2];
    const [along, height] = toSection(pose, aside, up);
    pose = { along, height, tilt: pose.tilt + (turn * 180) / Math.PI };
    contacts = [-l.at / Math.SQRT2, r.at / Math.SQRT2];
    if (Math.abs(turn) < SETTLED && Math.abs(aside) < SETTLED && Math.abs(up) < SETTLED) break;
  }
  return { pose, lean: pose.tilt, contacts: contacts.map((u) => ({ u, part: "shoulder" })) };
}

interface Load {
  /** Along the shoulder from the corner. */
  readonly at: Mm;
  /** How far the metal stands over the shoulder's face, square to it. */
  readonly over: Mm;
}

/** The metal under a shoulder, in the shoulder's own directions. Only what its turning can bring to touch. */
function underShoulder(points: readonly SectionPair[], side: 1 | -1): readonly Load[] {
  const turned = points.map(([u, w]): SectionPair => [(side * u + w) / Math.SQRT2, (w - side * u) / Math.SQRT2]);
  const loads: Load[] = [];
  for (let n = 1; n < turned.length; n++) {
    const part = clipped(turned[n - 1], turned[n], SHOULDERS.from, SHOULDERS.to);
    if (part) for (const [at, over] of part) loads.push({ at, over });
  }
  return upperHull(loads.sort((a, b) => a.at - b.at || a.over - b.over));
}

function upperHull(sorted: readonly Load[]): readonly Load[] {
  const hull: Load[] = [];
  const turns = (a: Load, b: Load, c: Load) => (b.over - a.over) * (c.at - a.at) > (c.over - a.over) * (b.at - a.at);
  for (const load of sorted) {
    while (hull.length > 0 && hull[hull.length - 1].at === load.at) hull.pop();
    while (hull.length >= 2 && !turns(hull[hull.length - 2], hull[hull.length - 1], load)) hull.pop();
    hull.push(load);
  }
  return hull;
}

/** How far the shoulder must go out, at most, once it has turned towards the metal by `turn`, and where it then touches. */
function most(loads: readonly Load[], turn: number): Load {
  let best = { at: 0, over: Number.NEGATIVE_INFINITY };
  for (const { at, over } of loads) if (over + turn * at > best.over) best = { at, over: over + turn * at };
  return best;
}
