import { clamp, ease, hypot, mix } from "../../math";
import type { RandomStream } from "../../random";
import { fractal1, fractal2, gradient1, gradient2 } from "../../surface";
import type { FeatureRequest } from "../work";

/** Where plate came away with the weld, about the scar's middle: mm, radians, and depth against the deepest. */
interface Pit {
  readonly x: number;
  readonly y: number;
  readonly halfLong: number;
  readonly halfWide: number;
  readonly turn: number;
  readonly deep: number;
  readonly seed: number;
}

/** Where one of the two small fillet welds ran along the attachment; mm, and shares. */
interface Strip {
  /** Its middle across, and on which side of the attachment it lay. */
  readonly y: number;
  readonly out: 1 | -1;
  readonly half: number;
  readonly from: number;
  readonly to: number;
  /** How much of it stayed on the plate, -0.5 little .. 0.5 most, and how high it stood. */
  readonly stayed: number;
  readonly high: number;
  /** How high it broke, against that. */
  readonly broken: number;
  /** Whether more of it stayed at its toe (above 0) or beside the attachment. */
  readonly tilt: number;
  readonly seed: number;
}

/** How an attachment came off: lengths in mm, angles in radians, the rest shares of the scar. */
export interface Tear {
  readonly length: number;
  readonly width: number;
  readonly depth: number;
  readonly turn: number;
  /** Towards which side it was knocked over: the weld of the other side tore out first, this one bent and broke. */
  readonly edge: 1 | -1;
  /** How far the fibres lean along the scar for every mm across. */
  readonly slant: number;
  readonly pits: readonly Pit[];
  readonly strips: readonly Strip[];
  /** Pulled up lip, against the depth. */
  readonly lip: number;
  /** Which part was dressed with a disc: from where along the scar, towards which end; null if none. */
  readonly dressed: { readonly from: number; readonly towards: 1 | -1; readonly turn: number } | null;
  readonly tint: number;
  readonly seed: number;
}

type Outline = Omit<Tear, "pits" | "strips">;

const WIDTH = { least: 3.4, most: 10 };
/** Shorter scars are of a single tack, mm. */
const ONE_TACK = 15;
/** The shallowest pit, mm. */
const LEAST_TORN = 0.17;
/** Plate that stays sound between two pits of the same weld, mm: beyond 5 mm they would be two scars. */
const SOUND_BETWEEN = 2.6;
/** Half the width of a strip of weld, mm. */
const STRIP = [0.85, 1.45] as const;

function drawStrips(random: RandomStream, { length, width, depth, edge }: Outline, isTack: boolean): Strip[] {
  const sides: readonly (1 | -1)[] = edge > 0 ? [-1, 1] : [1, -1];
  return sides.map((out): Strip => {
    const half = Math.min(random.uniform(...STRIP), 0.23 * width);
    const held = out === edge;
    const ends = [random.uniform(-1, isTack ? -0.5 : -0.86), random.uniform(isTack ? 0.5 : 0.86, 1)];
    return {
      y: out * (width / 2 - half),
      out,
      half,
      from: (ends[0] * length) / 2,
      to: (ends[1] * length) / 2,
      stayed: held ? random.uniform(0.05, 0.4) : random.uniform(-0.35, 0.05),
      high: clamp(half * random.uniform(0.55, 0.9), 0.3, 0.5 + 0.5 * depth),
      broken: held ? random.uniform(0.5, 0.95) : random.uniform(0.25, 0.6),
      tilt: random.uniform(-1, 1),
      seed: random.seed(),
    };
  });
}

/** Pits along the weld that tore first, from one end of the scar to the other; a few shallow ones along the other weld. */
function drawPits(random: RandomStream, scar: Outline, strips: readonly Strip[], isTack: boolean): Pit[] {
  const { length, width, depth } = scar;
  const count = isTack ? 1 + random.integer(2) : 2 + Math.round(length / random.uniform(8, 13));
  const others = isTack ? 0 : random.integer(3);
  const first = random.integer(count);
  const least = Math.min(0.85, LEAST_TORN / depth);
  const spacing = length / count;
  return Array.from({ length: count + others }, (_, n) => {
    const isOther = n >= count;
    const strip = strips[isOther ? 1 : 0];
    const deep = n === first ? 1 : isOther ? random.uniform(0.1, 0.4) : Math.max(least, random.uniform(0.15, 0.75));
    // what tears deep tears wide
    const halfWide = Math.max(1.5 * deep * depth, strip.half * random.uniform(0.75, 1.35));
    const drawn = halfWide * random.uniform(0.9, 1.4) + spacing * random.uniform(0.12, 0.42);
    const halfLong = clamp(drawn, 0.55 * spacing - SOUND_BETWEEN / 2, 0.47 * length);
    const end = 0.5 * length - 0.95 * halfLong;
    const place = isOther ? random.uniform(-0.8, 0.8) : (2 * (n + random.uniform(0.4, 0.6))) / count - 1;
    const x = n === 0 ? -end : n === count - 1 ? end : end * place;
    const off = Math.abs(strip.y) + strip.half * random.uniform(-0.55, 0.35);
    const y = strip.out * Math.max(0, Math.min(width / 2 - 0.8 * halfWide, off));
    return { x, y, halfLong, halfWide, turn: random.normal(0, 0.16), deep, seed: random.seed() };
  });
}

/** Draws how it came off, at most `room` mm wide: a short scar is of one tack, a long one of a plate held by two fillets. */
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
    slant: random.normal(0, 0.3),
    lip: random.uniform(0.14, 0.34),
    dressed: random.chance(0.35)
      ? { from: random.uniform(0, 0.6), towards: random.pick([1, -1]), turn: random.normal(0, 0.3) }
      : null,
    tint: random.uniform(0.6, 1),
    seed: random.seed(),
  };
  const strips = drawStrips(random, scar, isTack);
  return { ...scar, strips, pits: drawPits(random, scar, strips, isTack) };
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
}

/** Fibres drawn out the way the piece was bent, long across the scar and fine along it, about -1..1. */
function fibreAt({ slant, seed }: Tear, x: number, y: number): number {
  const bent = x - slant * y + 0.5 * gradient2(x / 3.2, y / 3.6, seed + 20);
  return (
    0.5 * gradient2(bent / 0.4, y / 2.2, seed + 21) +
    0.5 * gradient2(bent / 0.95, y / 3.6, seed + 22) +
    0.2 * gradient2(x / 0.36, y / 0.5, seed + 23)
  );
}

/** The border of a pit is bent so far, in half widths; noise is nowhere above 1.07. */
const BENT = 0.58;
const FARTHEST_BENT = BENT * 1.07 * Math.SQRT2;

/** Whether (px, py) lies so far from a pit that no noise bends it to within `r` of its middle: spares the noise. */
function isBeyond({ x, y, halfLong, halfWide }: Pit, px: number, py: number, r: number): boolean {
  return hypot(px - x, py - y) > r * Math.max(halfLong, halfWide) + FARTHEST_BENT * halfWide;
}

/** Place within a pit, along and across it, 1 at its border; bent by noise so that no border is an ellipse. */
function within({ x, y, halfLong, halfWide, turn, seed }: Pit, px: number, py: number): readonly [number, number] {
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const scale = 1.1 + 0.7 * halfWide;
  const wx = px - x + BENT * halfWide * fractal2(px / scale, py / scale, seed, 2);
  const wy = py - y + BENT * halfWide * fractal2(px / scale, py / scale, seed + 9, 2);
  return [(wx * c + wy * s) / halfLong, (wy * c - wx * s) / halfWide];
}

/** Plate that came away: steep where the crack began, drawn out in fibres and running out where the piece was bent to. */
function tornOut(tear: Tear, x: number, y: number, fibre: number): { low: number; lip: number } {
  let low = 0;
  let lip = 0;
  for (const pit of tear.pits) {
    if (Math.abs(x - pit.x) > 2 * pit.halfLong + 3 || isBeyond(pit, x, y, 1.6)) continue;
    const [p, q] = within(pit, x, y);
    const r = hypot(p, q);
    if (r > 1.6) continue;
    const to = q * tear.edge;
    const toothed = r + 0.1 * fibre * ease(0.4, 0.9, r);
    const bowl = Math.max(0, 1 - toothed * toothed) ** mix(0.75, 1.5, ease(-0.2, 0.6, to));
    low = Math.max(low, pit.deep * clamp(bowl * (1 + 0.22 * fibre), 0, 1.2));
    const crest = (r - 1.05 + 0.06 * fibre) / 0.18;
    const torn = clamp(0.3 + 1.3 * gradient2(x / 1.9, y / 1.9, pit.seed + 4), 0, 1.2);
    lip = Math.max(lip, pit.deep * tear.lip * torn * ease(0.1, 0.7, -to) * Math.exp(-crest * crest));
  }
  return { low, lip: lip * ease(0.05, 0, low) };
}

interface Standing {
  readonly high: number;
  readonly lump: number;
  readonly broken: number;
  /** Where a weld was torn off the plate without taking any of it along. */
  readonly bared: number;
}

/** What the two welds left: here a strip with its flank and its broken throat, there only the place where it was. */
function standing(tear: Tear, x: number, y: number, fibre: number): Standing {
  let high = 0;
  let lump = 0;
  let broken = 0;
  let bared = 0;
  for (const one of tear.strips) {
    const ends = ease(one.from - 0.4, one.from + 1.3, x) * ease(one.to + 0.4, one.to - 1.3, x);
    if (ends <= 0) continue;
    const off = (y - one.y - 0.45 * one.half * gradient1(x / 4.6, one.seed + 1)) * one.out;
    if (Math.abs(off) > 2.2 * one.half) continue;
    // it broke off aslant: more of it stayed at its toe than at its throat, or the other way round
    const ragged = 0.3 * gradient2(x / 1.5, y / 1.2, one.seed + 6) + 0.16 * (off / one.half) * one.tilt;
    const left = one.stayed + 0.75 * fractal1(x / 3.9, one.seed + 2, 2) + ragged + 0.12 * fibre;
    const stays = ease(-0.1, 0.3, left) * ends;
    const wide = one.half * (0.95 + 0.5 * gradient1(x / 2.7, one.seed)) * mix(0.6, 1, stays);
    // 0 at the attachment, 1 at the weld's own toe on the plate
    const t = 0.5 + (0.5 * off) / wide;
    if (t < -0.3 || t > 1.3) continue;
    const inner = ease(-0.12, 0.2, t + 0.12 * fibre);
    const ripple = 0.3 * gradient2((x + 0.5 * off) / 0.7, off / 2.5, one.seed + 3);
    const flank = one.high * 1.25 * Math.max(0, 1 - t) ** 0.85 * (1 + 0.3 * ripple);
    const slope = one.broken * (0.6 + 0.8 * t + 0.8 * gradient1(x / 2.1, one.seed + 4) + 0.5 * ragged);
    const throat = one.high * clamp(slope, 0.12, 1.2) + 0.09 * fibre;
    const here = Math.max(0, Math.min(flank, throat)) * inner * stays;
    const covers = ease(0, 0.35, stays) * inner * ease(1.02, 0.8, t);
    lump = Math.max(lump, covers);
    const fade = clamp(0.55 + 0.9 * gradient2(x / 2.6, y / 2.6, one.seed + 5), 0, 1);
    const foot = ease(1.25 - 0.3 * fade, 0.7, t + 0.08 * fibre) * ease(-0.25, 0.15, t + 0.08 * fibre);
    bared = Math.max(bared, ends * foot * fade * (1 - covers));
    if (here < high) continue;
    high = here;
    broken = ease(-0.02, 0.05, flank - throat) * covers;
  }
  return { high, lump, broken, bared };
}

/** The scar at (x, y) mm about its middle. */
export function tornPlace(tear: Tear, x: number, y: number): TornPlace {
  const fibre = fibreAt(tear, x, y);
  const { low, lip } = tornOut(tear, x, y, fibre);
  const { high, lump, broken, bared } = standing(tear, x, y, fibre);
  const stays = ease(0.2, 0.05, low);
  const torn = Math.max(ease(0.03, 0.14, low), 0.75 * bared);
  return {
    low,
    lip,
    high: stays * high,
    scar: Math.max(bared, ease(0.01, 0.06, low), ease(0.02, 0.08, lip)),
    lump: stays * lump,
    fracture: mix(torn, broken, stays * lump),
    fibre,
  };
}
