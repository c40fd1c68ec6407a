import type { Mm } from "../math";
import { SHOULDERS } from "./body";
import { type Pose, toGauge } from "./pose";
import type { Seating } from "./seat";
import type { SectionPair } from "./strip";

/** A shoulder further than this from the metal does not rest on it, mm. */
const RESTING: Mm = 0.1;
const MOST_LEAN = 14;
const MOST_ASIDE: Mm = 4;

/**
 * Presses a gauge with two 45-degree shoulders into the corner of two plates: it slides aside and leans until its middle
 * is as low as it goes. Null where only one shoulder, or none, comes to rest.
 */
export function seatInCorner(section: readonly SectionPair[]): Seating | null {
  const near = section.filter(([s]) => Math.abs(s) > 10);
  const lowestAt = (tilt: number) => {
    const along = lowest((aside) => pressIn(near, aside, tilt).height, -MOST_ASIDE, MOST_ASIDE);
    return pressIn(near, along, tilt);
  };
  const tilt = lowest((lean) => lowestAt(lean).height, -MOST_LEAN, MOST_LEAN);
  const pose = lowestAt(tilt);
  if (!Number.isFinite(pose.height)) return null;
  const excess = excesses(toGauge(pose, near));
  if (excess.left.most < -RESTING || excess.right.most < -RESTING) return null;
  const contacts = [excess.left, excess.right].map(({ u }) => ({ u, part: "shoulder" }) as const);
  return { pose, lean: tilt, contacts };
}

/** The pose at which the first shoulder meets the metal, coming down at one place and lean. */
function pressIn(section: readonly SectionPair[], along: Mm, tilt: number): Pose {
  const angle = (tilt * Math.PI) / 180;
  let height = 0;
  // which points lie under a shoulder depends a little on how low it is
  for (let turn = 0; turn < 3; turn++) {
    const { left, right } = excesses(toGauge({ along, height, tilt }, section));
    const up = Math.max(
      left.most / (Math.cos(angle) + Math.sin(angle)),
      right.most / (Math.cos(angle) - Math.sin(angle)),
    );
    height += up;
    if (Math.abs(up) < 1e-7) break;
  }
  return { along, height, tilt };
}

interface Excess {
  readonly most: Mm;
  readonly u: Mm;
}

/** How far the metal stands over either shoulder, at most, and where. */
function excesses(points: readonly SectionPair[]): { readonly left: Excess; readonly right: Excess } {
  const from = SHOULDERS.from / Math.SQRT2;
  const to = SHOULDERS.to / Math.SQRT2;
  let left: Excess = { most: Number.NEGATIVE_INFINITY, u: 0 };
  let right: Excess = left;
  for (const [u, w] of points) {
    const out = Math.abs(u);
    if (out < from || out > to) continue;
    const most = w - out;
    if (u < 0 && most > left.most) left = { most, u };
    if (u > 0 && most > right.most) right = { most, u };
  }
  return { left, right };
}

/** Where a function with one hollow is lowest: golden section (Kiefer 1953). */
function lowest(value: (at: number) => number, low: number, high: number): number {
  const share = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [low, high];
  let [c, d] = [b - share * (b - a), a + share * (b - a)];
  let [fc, fd] = [value(c), value(d)];
  while (b - a > 1e-4) {
    if (fc <= fd) {
      [b, d, fd] = [d, c, fc];
      c = b - share * (b - a);
      fc = value(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + share * (b - a);
      fd = value(d);
    }
  }
  return (a + b) / 2;
}
