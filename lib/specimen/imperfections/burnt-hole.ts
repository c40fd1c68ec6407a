import { clamp, ease, hypot, mix } from "../../math";
import type { RandomStream } from "../../random";
import { gradient1, gradient2 } from "../../surface";

/** The outline is this much longer than what lies 0.6 mm below the plates: a share of it, and two walls, mm. */
const EDGE = { share: 1.06, walls: 0.75 };
/** A skin of metal over a part of the hole hangs this far below the plates, mm. */
const SKIN_BELOW = 0.85;

/** How the melt left: all of it, all but a skin that froze over a part of the hole, or hardly at all; a keyhole ran out to a slot. */
type Manner = "open" | "half-closed" | "sagged" | "keyhole";

/** A drop of melt that froze on the rim: where, from the middle, and its radius; mm. */
interface Bead {
  readonly dx: number;
  readonly dy: number;
  readonly radius: number;
}

/** A hole burnt through the root, before it is cut; mm. */
export interface BurntHole {
  readonly manner: Manner;
  readonly radiusX: number;
  readonly radiusY: number;
  /** Turn of the oval, radians. */
  readonly turn: number;
  /** Which way the slot of a keyhole runs along the weld. */
  readonly slot: 1 | -1;
  /** Floor below the plates, mm. */
  readonly deep: number;
  /** Height of the rim that ran together, mm, and where most of it went, radians. */
  readonly lip: number;
  readonly heavyAt: number;
  /** The skin over a half-closed hole: from which side, radians, and how far in towards the middle (share of the radius). */
  readonly skinAt: number;
  readonly skinReach: number;
  readonly seed: number;
}

const MANNERS: readonly Manner[] = ["open", "half-closed", "half-closed", "sagged", "keyhole", "keyhole"];
/** A slot reaches so many radii out from the middle and is so wide where it begins, radii. */
export const SLOT = { reach: 1.75, wide: 0.5 };

/** Drops on the outline, found by going out from the middle until it is reached. */
export function drawBeads(random: RandomStream, shape: BurntHole): Bead[] {
  const farthest = Math.max(shape.radiusX, shape.radiusY);
  const size = clamp(farthest / 2.6, 0.5, 1);
  const first = random.uniform(0, 2 * Math.PI);
  return Array.from({ length: 1 + random.integer(5) }, (_, n) => {
    const angle = first + n * random.uniform(0.25, 1.5);
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    let away = 0.2 * farthest;
    while (away < 3 * farthest && seenFrom(shape, away * c, away * s).d < 1) away += 0.06;
    away += random.uniform(-0.05, 0.22);
    return { dx: away * c, dy: away * s, radius: size * random.uniform(0.22, n === 0 ? 0.62 : 0.42) };
  });
}

/** Draws a hole whose part 0.6 mm or more below the plates is about `severity` mm across (6 for 0). */
export function drawBurntHole(random: RandomStream, severity: number): BurntHole {
  const across = EDGE.share * (severity > 0 ? severity : 6) + EDGE.walls;
  const manner = random.pick(MANNERS);
  const isKeyhole = manner === "keyhole";
  const long = across / (isKeyhole ? 1 + SLOT.reach : 2);
  const short = long * (isKeyhole ? random.uniform(0.8, 1.05) : random.uniform(0.52, 0.95));
  const isAlong = isKeyhole || long > 2.6 || random.chance(0.6);
  const radiusX = isAlong ? long : short;
  const radiusY = isAlong ? short : long;
  return {
    manner,
    radiusX,
    radiusY,
    turn: random.normal(0, isKeyhole ? 0.08 : 0.25),
    slot: random.pick([1, -1]),
    deep: manner === "sagged" ? random.uniform(0.95, 1.5) : Math.min(2.3, random.uniform(0.85, 1.2) + 0.13 * across),
    lip: random.uniform(0.3, 0.95) * clamp(long / 2.5, 0.5, 1),
    heavyAt: random.uniform(0, 2 * Math.PI),
    skinAt: random.uniform(0, 2 * Math.PI),
    skinReach: random.uniform(0.45, 1.05),
    seed: random.seed(),
  };
}

/** A place as seen from a hole: distance in units of its torn outline, how many mm a unit is there, and the direction. */
export interface Seen {
  readonly d: number;
  readonly unit: number;
  readonly c: number;
  readonly s: number;
}

/** How a place (dx, dy) mm from its middle is seen from the hole. */
export function seenFrom(shape: BurntHole, dx: number, dy: number): Seen {
  const { seed } = shape;
  const slow = Math.min(shape.radiusX, shape.radiusY);
  const torn = (at: number) =>
    0.3 * slow * gradient2(dx / (0.95 * slow), dy / (0.95 * slow), seed + at) +
    0.13 * gradient2(dx / 0.75, dy / 0.75, seed + at + 1) +
    0.05 * gradient2(dx / 0.3, dy / 0.3, seed + at + 2);
  const wx = dx + torn(20);
  const wy = dy + torn(25);
  const turnC = Math.cos(shape.turn);
  const turnS = Math.sin(shape.turn);
  const u = (wx * turnC + wy * turnS) / shape.radiusX;
  const v = (-wx * turnS + wy * turnC) / shape.radiusY;
  const r = hypot(u, v) || 1e-6;
  const direction = { c: u / r, s: v / r };
  return shape.manner === "keyhole"
    ? { ...withSlot(shape, r, u, v), ...direction }
    : { d: r, unit: slow, ...direction };
}

/** The oval and the slot that tapers away from it, run into one outline. */
function withSlot(shape: BurntHole, r: number, u: number, v: number): Pick<Seen, "d" | "unit"> {
  const p = u * shape.slot;
  const wide = SLOT.wide * (0.25 + 0.75 * ease(SLOT.reach, 0.5, p));
  const slot = Math.max(Math.abs(v) / wide, p / SLOT.reach, -p / 0.6);
  const soft = 7;
  const oval = Math.exp(-soft * r);
  const both = oval + Math.exp(-soft * slot);
  const d = both > 0 ? Math.max(0, -Math.log(both) / soft) : Math.min(r, slot);
  // the walls of the slot stand nearer to each other than those of the oval
  const oblong = Math.min(shape.radiusX, shape.radiusY);
  return { d, unit: d < 1 ? mix(wide * shape.radiusY, oblong, oval / both) : oblong };
}

/** How far a skin of metal froze over the hole at a place, 0..1, and the distance from its rounded, uneven edge, radii. */
function skinOver(
  shape: BurntHole,
  d: number,
  c: number,
  s: number,
  dx: number,
  dy: number,
): { over: number; in: number } {
  if (shape.manner !== "half-closed") return { over: 0, in: 0 };
  const towards = c * Math.cos(shape.skinAt) + s * Math.sin(shape.skinAt);
  const edge =
    1 -
    shape.skinReach +
    0.24 * gradient2(dx / 1.4, dy / 1.4, shape.seed + 7) +
    0.07 * gradient2(dx / 0.45, dy / 0.45, shape.seed + 14);
  const inside = towards * d + 0.12 * (1 - d) - edge;
  return { over: ease(-0.05, 0.07, inside), in: inside };
}

/**
 * Height inside the hole between the rim's level and the floor: a rolled edge, a wall now steep, now a slope with runnels, a
 * floor of lumps and the crescents of the pass above, perhaps a skin over a part.
 */
export function heightInside(shape: BurntHole, { d, unit, c, s }: Seen, dx: number, dy: number, at: Levels): number {
  const { seed } = shape;
  const steep = clamp(0.5 + 1.1 * gradient2(1.1 * c + 3, 1.1 * s + 3, seed + 6), 0, 1);
  const runnel =
    0.22 * gradient2(3.1 * c + 11, 3.1 * s + 11, seed + 15) + 0.1 * gradient2(dx / 0.4, dy / 0.4, seed + 16);
  const wall = shape.manner === "sagged" ? mix(1.6, 0.8, steep) : mix(1.7, 0.5, steep);
  const inward = (1 - d) * unit;
  const fall = clamp(inward / Math.min(wall, 0.8 * unit) + runnel * ease(0, 0.3, inward), 0, 1);
  const profile = fall < 0.4 ? (fall * fall) / 0.4 : 1 - (1 - fall) ** 2 / 0.6;
  const lumps =
    0.24 * gradient2(dx / 1.2, dy / 0.9, seed + 8) +
    0.1 * gradient2(dx / 0.45, dy / 0.45, seed + 9) +
    0.16 * gradient1((dx + 0.3 * dy * dy + 0.5 * gradient2(dx / 1.1, dy / 1.1, seed + 17)) / 0.75, seed + 18);
  const floor = at.plates - shape.deep + lumps * (shape.manner === "sagged" ? 0.55 : 1);
  const bare = mix(at.rim, Math.min(floor, at.rim), profile);
  const skin = skinOver(shape, d, c, s, dx, dy);
  if (skin.over <= 0) return bare;
  // it hangs a little below the plates, wrinkled along its edge, which drew itself round
  const wrinkles =
    0.07 * gradient1((skin.in + 0.2 * gradient2(dx / 0.9, dy / 0.9, seed + 10)) / 0.16, seed + 19) +
    0.14 * gradient2(dx / 0.9, dy / 0.9, seed + 11);
  const rolled = 0.16 * Math.exp(-(((skin.in - 0.1) / 0.09) ** 2));
  const hung = at.plates - SKIN_BELOW - 0.25 * (1 - d) + wrinkles + rolled;
  return mix(bare, Math.min(mix(at.rim, hung, profile), Math.max(bare, hung)), skin.over);
}

/** Levels in mm: of the rim, carried over the hole, and of the plates. */
interface Levels {
  readonly rim: number;
  readonly plates: number;
}

/** Metal that ran down and froze round the hole: a rolled lip, heavy on one side, torn away on the other, drooping in lobes. */
export function sag(shape: BurntHole, { d, unit, c, s }: Seen, dx: number, dy: number): number {
  const { seed } = shape;
  const towards = c * Math.cos(shape.heavyAt) + s * Math.sin(shape.heavyAt);
  const heavy = 0.45 + 0.45 * towards + 0.9 * gradient2(1.6 * c + 7, 1.6 * s + 7, seed + 3);
  const lobe = 0.65 * gradient2(dx / 1.3, dy / 1.3, seed + 4) + 0.14 * gradient2(dx / 0.6, dy / 0.6, seed + 5);
  const beyond = (d - 1.1) * unit;
  const width = beyond < 0 ? 0.28 : 0.45 + 0.6 * clamp(towards + 0.5 * lobe, 0, 1);
  return shape.lip * clamp(heavy + lobe, -0.25, 1.4) * Math.exp(-((beyond / width) ** 2));
}

/** Raises the drops that hang on the rim over a height. */
export function withBeads(
  shape: BurntHole,
  beads: readonly Bead[],
  dx: number,
  dy: number,
  rim: number,
  height: number,
): number {
  let z = height;
  beads.forEach((bead, n) => {
    const away =
      hypot(dx - bead.dx, dy - bead.dy) /
      (bead.radius * (1 + 0.3 * gradient2(dx / 0.6, dy / 0.6, shape.seed + 40 + n)));
    if (away >= 1.6) return;
    const drop = rim + bead.radius * (0.15 + 0.95 * Math.sqrt(Math.max(0, 1 - away * away)));
    if (away < 1) z = Math.max(z, drop);
    // a hollow neck where it grew from
    else z = mix(z, Math.min(z, rim - 0.04), 0.5 * ease(1.5, 1.05, away));
  });
  return z;
}
