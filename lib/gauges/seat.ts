import type { Degrees, Mm } from "../math";
import type { Piece } from "./body";
import { type Pose, toGauge, toSection } from "./pose";
import type { SectionPair } from "./strip";
import { changedOver, clipped, highestBetween } from "./tip";

/** What a gauge rests on: where along it, and whether with a foot, its nose, or a part that should hang free. */
export interface Contact {
  readonly u: Mm;
  readonly part: "foot" | "body" | "nose" | "shoulder" | "nib" | "jaw";
}

/** How a gauge stands. `lean` is its tilt against the plate or the corner that it belongs on. */
export interface Seating {
  readonly pose: Pose;
  readonly lean: Degrees;
  readonly contacts: readonly Contact[];
}

export interface Sole {
  readonly pieces: readonly Piece[];
  /** Where along u the hand presses. */
  readonly press: Mm;
  /** Tilt of the plate that it belongs on, degrees. */
  readonly attitude: Degrees;
  /** It is pushed along its sole until this part of its end (w from .. to) meets the other plate; null where it stays. */
  readonly nose: { readonly from: Mm; readonly to: Mm } | null;
}

/** Turns smaller than this end the search, as the slope of the sole. */
const SETTLED = 1e-7;
/** What is nearer to the sole than this carries it, mm. */
const RESTING: Mm = 0.02;
/** Contacts closer together than this are one lump, on which a gauge rocks, mm. Common practice, no source. */
const STEADY_BASE: Mm = 2;

/**
 * Seats a rigid gauge under a hand that presses between its feet: it comes to rest on the two highest points on either
 * side of the hand, those where the upper hull of all that lies under it crosses the hand. Null where it has none.
 */
export function seatSole(section: readonly SectionPair[], sole: Sole): Seating | null {
  let pose: Pose = { along: 0, height: 0, tilt: sole.attitude };
  for (let turn = 0; turn < 14; turn++) {
    const points = toGauge(pose, section);
    const edge = edgeUnder(loads(points, sole.pieces), sole.press);
    if (!edge) return null;
    const slope = (edge.b.rise - edge.a.rise) / (edge.b.u - edge.a.u);
    pose = laidOn(pose, edge.a.rise - slope * edge.a.u, slope, sole.nose === null);
    if (Math.abs(pose.tilt - sole.attitude) > 60) return null;
    const push = sole.nose ? pushHome(toGauge(pose, section), sole.nose) : 0;
    if (push === null) return null;
    const [along, height] = toSection(pose, push, 0);
    pose = { ...pose, along, height };
    if (Math.abs(slope) < SETTLED && Math.abs(push) < SETTLED) break;
  }
  const standing = raised(pose, section, sole.pieces);
  const touching = loads(toGauge(standing, section), sole.pieces).filter(({ rise }) => rise > -RESTING);
  const contacts: Contact[] = [touching[0], touching[touching.length - 1]].map(({ u, part }) => ({ u, part }));
  if (sole.nose) contacts.push({ u: 0, part: "nose" });
  return { pose: standing, lean: standing.tilt - sole.attitude, contacts };
}

/** Whether it rests on places far enough apart not to rock on one lump under the hand. */
export function isSteady({ contacts }: Seating): boolean {
  const places = contacts.flatMap(({ u, part }) => (part === "nose" ? [] : [u]));
  return Math.max(...places) - Math.min(...places) >= STEADY_BASE;
}

interface Load {
  readonly u: Mm;
  /** How far the metal stands over the piece above it when the line of the feet lies at w = 0. */
  readonly rise: Mm;
  readonly part: "foot" | "body";
}

interface Edge {
  readonly a: Load;
  readonly b: Load;
}

function loads(points: readonly SectionPair[], pieces: readonly Piece[]): Load[] {
  const found: Load[] = [];
  for (const { from, to, level, part } of pieces) {
    for (let n = 1; n < points.length; n++) {
      const inside = clipped(points[n - 1], points[n], from, to);
      if (inside) for (const [u, w] of inside) found.push({ u, rise: w - level, part });
    }
  }
  return found.sort((a, b) => a.u - b.u || a.rise - b.rise);
}

/** The edge of the upper hull that spans u, or null where u lies beyond the ends. */
function edgeUnder(points: readonly Load[], u: Mm): Edge | null {
  const hull: Load[] = [];
  for (const point of points) {
    while (hull.length > 0 && hull[hull.length - 1].u === point.u) hull.pop();
    while (hull.length >= 2 && !isBent(hull[hull.length - 2], hull[hull.length - 1], point)) hull.pop();
    hull.push(point);
  }
  for (let n = 1; n < hull.length; n++) {
    if (hull[n - 1].u <= u && u <= hull[n].u) return { a: hull[n - 1], b: hull[n] };
  }
  return null;
}

const isBent = (a: Load, b: Load, c: Load): boolean =>
  (b.rise - a.rise) * (c.u - a.u) > (c.rise - a.rise) * (b.u - a.u);

/** The pose whose line of feet is w = offset + slope u of the present one, over the same place on plan or not. */
function laidOn(pose: Pose, offset: Mm, slope: number, keepsPlace: boolean): Pose {
  const [along, height] = toSection(pose, 0, offset);
  const tilt = pose.tilt + (Math.atan(slope) * 180) / Math.PI;
  if (!keepsPlace) return { along, height, tilt };
  return { along: 0, height: height - along * Math.tan((tilt * Math.PI) / 180), tilt };
}

/** How far it moves along its sole until the nose, at u = 0, touches. Null where there is nothing to touch. */
const pushHome = (points: readonly SectionPair[], nose: { readonly from: Mm; readonly to: Mm }): Mm | null =>
  highestBetween(changedOver(points.filter(([u]) => u < nose.from / 2)), nose.from, nose.to);

/** Lifts what the last turn has left inside the metal, and lowers what it has left over it. */
function raised(pose: Pose, section: readonly SectionPair[], pieces: readonly Piece[]): Pose {
  const most = loads(toGauge(pose, section), pieces).reduce(
    (best, { rise }) => Math.max(best, rise),
    Number.NEGATIVE_INFINITY,
  );
  const [along, height] = toSection(pose, 0, most);
  return { ...pose, along, height };
}
