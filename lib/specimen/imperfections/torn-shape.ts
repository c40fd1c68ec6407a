import { clamp, ease, hypot } from "../../math";
import type { RandomStream } from "../../random";
import { fractal1, fractal2, gradient2 } from "../../surface";
import type { FeatureRequest } from "../work";

/** A patch within the scar, about its middle: mm, and radians. */
interface Patch {
  readonly x: number;
  readonly y: number;
  readonly halfLong: number;
  readonly halfWide: number;
  readonly turn: number;
  readonly seed: number;
}

/** Where plate came away with the weld: depth against the deepest. */
interface Pit extends Patch {
  readonly deep: number;
}

/** A remnant of weld that stayed on the plate: height, mm, and how high and how tilted it broke, against that. */
interface Lump extends Patch {
  readonly high: number;
  readonly broken: number;
  readonly tilt: number;
}

/** How an attachment came off: lengths in mm, angles in radians, the rest shares of the scar. */
export interface Tear {
  readonly length: number;
  readonly width: number;
  readonly depth: number;
  readonly turn: number;
  /** Towards which side it was knocked over: there the torn edge was pulled up. */
  readonly edge: 1 | -1;
  /** How much its width changes along it, and over what length, mm. */
  readonly ragged: number;
  readonly wave: number;
  readonly pits: readonly Pit[];
  readonly lumps: readonly Lump[];
  /** Pulled up lip, against the depth. */
  readonly lip: number;
  /** Which part was dressed with a disc: from where along the scar, towards which end; null if none. */
  readonly dressed: { readonly from: number; readonly towards: 1 | -1; readonly turn: number } | null;
  readonly tint: number;
  readonly seed: number;
}

const WIDTH = { least: 3.4, most: 10 };
/** Shorter scars are of a single tack, mm. */
const ONE_TACK = 15;

/** Half the scar's width, mm, at `x` along it: uneven as what tore, and drawn to nothing at its ends. */
function halfWidth({ length, width, ragged, wave, seed }: Omit<Tear, "pits" | "lumps">, x: number): number {
  const end = Math.abs((2 * x) / length) + 0.1 * fractal1(x / 2.3, seed + 1, 2);
  const uneven = 1 - ragged * (0.5 + 0.55 * fractal1(x / wave, seed + 2, 3));
  return (width / 2) * clamp(uneven, 0.22, 1.1) * Math.max(0, 1 - clamp(end, 0, 1) ** 3) ** 0.7;
}

/** Middle of the scar across at `x`. */
const middleAt = ({ width, wave, seed }: Omit<Tear, "pits" | "lumps">, x: number): number =>
  0.22 * width * fractal1(x / (1.6 * wave), seed + 3, 2);

type Outline = Omit<Tear, "pits" | "lumps">;

function drawPits(random: RandomStream, scar: Outline, isTack: boolean): Pit[] {
  const { length, width, depth, edge } = scar;
  const count = isTack ? 1 + random.integer(2) : 2 + Math.round(length / random.uniform(9, 16));
  const first = random.integer(count);
  return Array.from({ length: count }, (_, n) => {
    const deep = n === first ? 1 : random.uniform(0.08, 0.75);
    const x = (-0.34 + (0.68 * (n + random.uniform(0.1, 0.9))) / count) * length;
    // what tears deep tears wide
    const least = 1.5 * deep * depth;
    const halfWide = Math.max(least, width * random.uniform(0.2, 0.42));
    const halfLong = halfWide * random.uniform(0.9, 1.5) + (length / count) * random.uniform(0.05, 0.4);
    const y = middleAt(scar, x) - edge * width * random.uniform(-0.1, 0.16);
    return { x, y, halfLong, halfWide, turn: random.normal(0, 0.4), deep, seed: random.seed() };
  });
}

function drawLumps(random: RandomStream, scar: Outline, isTack: boolean): Lump[] {
  const { length, width, edge, depth } = scar;
  const count = isTack ? 1 + random.integer(3) : 4 + Math.round(length / random.uniform(5, 9));
  // most of what held lies along the side from which it was struck
  const start = random.uniform(-1, 0.2);
  const span = random.uniform(0.6, 1.4);
  return Array.from({ length: count }, () => {
    const strays = random.chance(0.28);
    const u = clamp(strays ? random.uniform(-0.95, 0.95) : start + span * random.uniform(0, 1), -0.96, 0.96);
    const x = (u * length) / 2;
    const side = strays ? random.pick([1, -1]) : edge;
    const size = clamp(Math.exp(random.normal(-0.25, 0.55)), 0.3, 2.2) * (isTack ? 0.75 : 1);
    return {
      x,
      y: middleAt(scar, x) + side * halfWidth(scar, x) * random.uniform(0.35, 1.05),
      halfLong: size * random.uniform(1, 2.6),
      halfWide: Math.min(0.35 * width, size * random.uniform(0.7, 1.25)),
      turn: random.normal(0, 0.35),
      high: clamp(0.42 * size * random.uniform(0.5, 1.3), 0.08, 0.25 + 0.5 * depth),
      broken: random.uniform(0.35, 1.2),
      tilt: random.normal(0, 0.75),
      seed: random.seed(),
    };
  });
}

/** Draws how it came off, at most `room` mm wide: a short scar is of one tack, a long one of a fillet. */
export function drawTear(random: RandomStream, request: FeatureRequest, room: number): Tear {
  const length = Math.max(8, request.length);
  const isTack = length < ONE_TACK;
  const wanted = isTack ? length * random.uniform(0.36, 0.6) : 2.5 + length * random.uniform(0.1, 0.2);
  const scar: Outline = {
    length,
    width: Math.max(WIDTH.least, Math.min(clamp(wanted, WIDTH.least, WIDTH.most), room)),
    depth: request.severity,
    turn: random.normal(0, isTack ? 0.25 : 0.06),
    edge: random.pick([1, -1] as const),
    ragged: random.uniform(0.55, 1.1),
    wave: random.uniform(5, 9),
    lip: random.uniform(0.14, 0.34),
    dressed: random.chance(0.35)
      ? { from: random.uniform(0, 0.6), towards: random.pick([1, -1]), turn: random.normal(0, 0.3) }
      : null,
    tint: random.uniform(0.45, 1),
    seed: random.seed(),
  };
  return { ...scar, pits: drawPits(random, scar, isTack), lumps: drawLumps(random, scar, isTack) };
}

/** What a place of the scar is made of; mm, and shares 0..1. */
export interface TornPlace {
  /** Torn out of the plate, against the deepest before it is scaled. */
  readonly low: number;
  /** What stands above the plate: weld metal, mm, and the lip pulled up beside a pit, against the deepest. */
  readonly high: number;
  readonly lip: number;
  /** Within the scar. */
  readonly scar: number;
  /** Weld metal that stayed, with its own skin, and what broke or tore open. */
  readonly lump: number;
  readonly fracture: number;
  readonly fibre: number;
  /** Into the scar from its outline, mm; negative outside. */
  readonly inside: number;
}

/** Fibres drawn out the way the piece was bent, long across the scar and fine along it, about -1..1. */
function fibreAt(x: number, y: number, seed: number): number {
  const bent = x + 1.1 * gradient2(x / 3.2, y / 2.4, seed + 20);
  return (
    0.45 * gradient2(bent / 0.42, y / 1.3, seed + 21) +
    0.45 * gradient2(bent / 1.1, y / 2.1, seed + 22) +
    0.4 * gradient2(x / 0.34, y / 0.4, seed + 23)
  );
}

/** Whether (px, py) lies so far from a patch that no noise bends it to within `r` of its middle: spares the noise. */
function isBeyond({ x, y, halfLong, halfWide }: Patch, px: number, py: number, r: number): boolean {
  const reach = r * Math.max(halfLong, halfWide) + BENT * halfWide;
  return hypot(px - x, py - y) > reach;
}

/** A place may be bent so far, in half widths: 0.75 both ways of noise that is nowhere above 1.07. */
const BENT = 0.75 * 1.07 * Math.SQRT2;

/** Place within a patch, along and across it, 1 at its border; bent by noise so that no border is an ellipse. */
function within({ x, y, halfLong, halfWide, turn, seed }: Patch, px: number, py: number): readonly [number, number] {
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const scale = 1.1 + 0.7 * halfWide;
  const wx = px - x + 0.75 * halfWide * fractal2(px / scale, py / scale, seed, 3);
  const wy = py - y + 0.75 * halfWide * fractal2(px / scale, py / scale, seed + 9, 3);
  return [(wx * c + wy * s) / halfLong, (wy * c - wx * s) / halfWide];
}

/** Plate that came away: steep where the crack began, drawn out and its border pulled up where the piece was bent to. */
function tornOut(tear: Tear, x: number, y: number, fibre: number): { low: number; lip: number } {
  let low = 0;
  let lip = 0;
  for (const pit of tear.pits) {
    if (Math.abs(x - pit.x) > 2 * pit.halfLong + 3 || isBeyond(pit, x, y, 1.6)) continue;
    const [p, q] = within(pit, x, y);
    const r = hypot(p, q);
    if (r > 1.6) continue;
    const to = q * tear.edge;
    const shelves = 0.07 * Math.round(3.2 * (1 - r) + 0.8 * fibre);
    const bowl = Math.max(0, 1 - r * r) ** (to > 0 ? 1.1 : 0.75);
    low = Math.max(low, pit.deep * clamp(bowl * (1 + 0.18 * fibre) + shelves * bowl, 0, 1.2));
    const crest = (r - 1.07 + 0.06 * fibre) / 0.16;
    const torn = clamp(0.5 + 1.1 * gradient2(x / 1.5, y / 1.5, pit.seed + 4), 0, 1.3);
    lip = Math.max(lip, pit.deep * tear.lip * torn * ease(0.1, 0.7, to) * Math.exp(-crest * crest));
  }
  return { low, lip: lip * ease(0.05, 0, low) };
}

/** Remains of weld: melted flanks, tops broken off at their own slant. */
function standing(tear: Tear, x: number, y: number, fibre: number): { high: number; lump: number; broken: number } {
  let high = 0;
  let lump = 0;
  let broken = 0;
  for (const one of tear.lumps) {
    if (Math.abs(x - one.x) > 2 * one.halfLong + 2 || isBeyond(one, x, y, 1.05)) continue;
    const [p, q] = within(one, x, y);
    const d = hypot(p, q);
    if (d > 1.05) continue;
    const dome = one.high * Math.max(0, 1 - d * d) ** 0.62;
    const plane = one.high * one.broken * (1 + one.tilt * p + 0.5 * one.tilt * q) + 0.07 * fibre;
    const here = Math.max(0, Math.min(dome, plane));
    lump = Math.max(lump, ease(1.04, 0.9, d));
    if (here < high) continue;
    high = here;
    broken = ease(-0.02, 0.04, dome - plane);
  }
  return { high, lump, broken };
}

/** The scar at (x, y) mm about its middle. */
export function tornPlace(tear: Tear, x: number, y: number): TornPlace {
  const { seed, width } = tear;
  const fibre = fibreAt(x, y, seed);
  const wx = x + 0.14 * width * fractal2(x / 4.4, y / 4.4, seed + 5, 2, 0.4);
  const wy = y + 0.15 * width * fractal2(x / 4.1, y / 4.1, seed + 6, 2, 0.4);
  const inside = halfWidth(tear, wx) - Math.abs(wy - middleAt(tear, wx)) + 0.16 * fibre;
  // in places it ends at a step, in others it runs out as a scrape
  const fades = clamp(0.35 + 1.1 * gradient2(x / 3.3, y / 3.3, seed + 8), 0, 1);
  const scar = ease(-0.08 - 0.2 * fades, 0.25 + 1.3 * fades, inside);
  const { low, lip } = tornOut(tear, x, y, fibre);
  const { high, lump, broken } = standing(tear, x, y, fibre);
  // a thin film of the weld stayed over parts of the scar
  const film = scar > 0 ? scar * clamp(0.35 + 1.3 * fractal2(x / 2.8, y / 2.2, seed + 7, 2), 0, 1) : 0;
  const stays = ease(0.2, 0.05, low);
  const torn = Math.max(ease(0.03, 0.12, low), scar * (0.8 - 0.75 * film));
  return {
    low,
    lip,
    high: stays * Math.max(high, 0.1 * film),
    scar: Math.max(scar, ease(0.01, 0.06, low), ease(0.02, 0.08, lip)),
    lump: stays * Math.max(lump, 0.6 * film),
    fracture: lump > 0 ? torn * (1 - stays * lump) + broken * stays * lump : torn,
    fibre,
    inside,
  };
}
