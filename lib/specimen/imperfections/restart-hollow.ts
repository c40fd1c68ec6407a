import { clamp, ease, hypot, mix } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2, nearestRow, sampleAt } from "../../surface";
import { type Field, mixMaterial } from "../field";
import type { FaceWork } from "../work";
import { between, scaled, TONES } from "./tones";

/** What is left open between two electrode lengths that do not meet: a trough of thin metal; mm. */
export interface Hollow {
  /** Number of its run in the field. */
  readonly run: number;
  readonly x: number;
  readonly y: number;
  /** Half length over which it may be open: the ends of the two lengths cover the rest. */
  readonly reach: number;
  /** Half width, at least that of the open joint. */
  readonly half: number;
  /** Half width of the run that it runs out into. */
  readonly runHalf: number;
  /** Levels at the run's toes, towards plate B and plate A. */
  readonly toes: readonly [number, number];
  /** Depth of its lowest line under the toes, and height of the run's own crown over them. */
  readonly depth: number;
  readonly crown: number;
  /** Where across the lowest line runs, as a share of the half width, and its slant per mm. */
  readonly off: number;
  readonly slant: number;
  /** 2 a round trough, more a flat one with steep sides. */
  readonly power: number;
  /** Direction of welding along x, distance of the ripples in it, how high they are and how far they curve back; mm. */
  readonly direction: 1 | -1;
  readonly ripple: { readonly pitch: number; readonly height: number; readonly tail: number };
  /** How much of it is coated with thick oxide, 0..1. */
  readonly scaled: number;
  readonly seed: number;
}

/** Narrower than this a trough would be read at its borders, mm of half width. */
const NARROWEST = 1.95;
const READ_AT = 1.5;
const DEEPEST = 2.2;

/** Draws a trough that lies `lower` mm below the run's toes within 1.5 mm of the middle of the run; less than 0: above them. */
export function drawHollow(
  random: RandomStream,
  place: Pick<Hollow, "run" | "x" | "y" | "runHalf" | "reach" | "toes" | "crown" | "direction"> & {
    opening: number;
    lower: number;
    pitch: number;
    tail: number;
  },
): Hollow {
  const { opening, lower, pitch, tail, ...own } = place;
  const half = Math.max(NARROWEST, opening + random.uniform(0.15, 0.55));
  const power = random.uniform(2, 3.6);
  return {
    ...own,
    half,
    depth: lower < 0 ? lower : Math.min(DEEPEST, 0.15 + lower / (1 - (READ_AT / half) ** power)),
    off: random.uniform(-0.3, 0.3),
    slant: random.normal(0, 0.12),
    power,
    scaled: random.uniform(0.1, 0.65),
    seed: random.seed(),
    ripple: {
      pitch: pitch * random.uniform(0.75, 1.15),
      height: random.uniform(0.06, 0.11),
      tail: tail * random.uniform(0.9, 1.3),
    },
  };
}

/** Half length of the mean that rounds what the beads' ends and the corners of the plates leave ragged, mm. */
const ROUNDED = 0.4;
/** Where it lies all of it is covered by its own look but for this share. */
const PAINTED = 0.75;
/** So often: once leaves their corners. */
const ROUNDS = 2;
/** Where it is narrowest the metal still reaches over this share of the run's width: it wetted the plates' edges. */
const NARROWED = 0.84;

/** Rounds the heights in the trough: surface tension leaves no teeth. The beads beside it keep their ripples. */
function evenOut({ grid, z }: Field, { x, y, reach, half, runHalf }: Hollow): void {
  const rounded: [k: number, height: number][] = [];
  const long = 1.1 * reach;
  const wide = Math.max(1.2 * half, 1.02 * runHalf);
  const box = { x0: x - long, x1: x + long, y0: y - wide, y1: y + wide };
  forEachPixel(grid, box, (k, px, py) => {
    const away = hypot((px - x) / long, (py - y) / wide);
    let sum = 0;
    for (let n = 0; n < 8; n++) {
      const far = n % 2 ? ROUNDED : 0.55 * ROUNDED;
      sum += sampleAt(grid, z, px + far * Math.cos((n * Math.PI) / 4), py + far * Math.sin((n * Math.PI) / 4)) / 8;
    }
    rounded.push([k, mix(z[k], sum, 0.85 * ease(1, 0.75, away))]);
  });
  for (const [k, height] of rounded) z[k] = height;
}

/** At the toes it is open further than in the middle, by this share, and with its wander nowhere beyond so many times its reach. */
const OPENER = 0.3;
const FARTHEST = 1.7;
/** Out to here, in its own measures, nothing else is left by chance. */
const BESIDE = 1.35;

interface Touched {
  readonly k: number;
  readonly share: number;
  readonly low: number;
  /** Roughness of its skin, mm. */
  readonly rough: number;
}
export type HollowTrace = readonly Touched[];

/** Height of the last pool's ripples at a place, `s` of the half width across: round crests and sharp creases, each as long as it likes. */
function rippleAt({ direction, ripple, seed }: Hollow, x: number, s: number): number {
  const travel = direction * x + ripple.tail * (1 - s * s);
  const beat = travel / ripple.pitch + 0.9 * gradient1(travel / 2.7, seed + 12);
  const t = 2 * (beat - Math.floor(beat)) - 1;
  return (0.45 - t * t) * (1 + gradient1(travel / 1.9, seed + 14));
}

/** Lays the trough into the open joint and rounds the ends of the beads into it. Marks it as its run's metal. */
export function layHollow(work: FaceWork, hollow: Hollow): HollowTrace {
  const { strip } = work;
  const { grid, z } = strip;
  const isRoot = work.face === "root";
  const trace: Touched[] = [];
  const wide = 1.3 * Math.max(hollow.half, hollow.runHalf);
  const box = {
    x0: hollow.x - FARTHEST * hollow.reach,
    x1: hollow.x + FARTHEST * hollow.reach,
    y0: hollow.y - wide,
    y1: hollow.y + wide,
  };
  const middle = nearestRow(grid, hollow.y);
  const raised: [k: number, height: number][] = [];
  forEachPixel(grid, box, (k, x, y, i) => {
    // the beads end rounded: towards the toes it is open further
    const sideways = Math.min(1, Math.abs(y - hollow.y) / hollow.runHalf);
    const wander = 0.16 * gradient2(x / (0.9 * hollow.half), y / hollow.half, hollow.seed + 9);
    const along = (Math.abs(x - hollow.x) / hollow.reach) * (1 - OPENER * sideways * sideways) + wander;
    // it rises to the beads' ends, and widens into them, as a saddle does
    const risen = ease(0.12, 0.95, along);
    const wavers =
      0.28 * gradient1(x / 2.3, hollow.seed + (y < hollow.y ? 1 : 2)) +
      0.05 * gradient1(x / 0.7, hollow.seed + (y < hollow.y ? 3 : 4));
    const narrow = Math.max(hollow.half, NARROWED * hollow.runHalf);
    const edge = mix(narrow, Math.max(hollow.half, hollow.runHalf), risen) + wavers;
    const s = (y - hollow.y) / edge;
    // there is no toe and no valley between runs in which soot could lie
    if (Math.abs(s) < BESIDE && along < BESIDE) strip.clean[k] = Math.max(strip.clean[k], 0.3);
    if (Math.abs(s) >= 1) return;
    const off = clamp(hollow.off + hollow.slant * (x - hollow.x), -0.7, 0.7);
    const skewed = s < off ? (off - s) / (1 + off) : (s - off) / (1 - off);
    const uneven = 1 + 0.2 * gradient2(x / 2.6, y / 2.1, hollow.seed + 5) + 0.2 * gradient1(x / 3.1, hollow.seed + 8);
    const bowl =
      hypot(skewed, Math.max(0, along) / 0.8) *
      (1 + 0.24 * gradient2(x / (0.7 * hollow.half), y / (0.8 * hollow.half), hollow.seed + 13));
    const trough = hollow.depth * Math.max(0, 1 - bowl ** hollow.power) * Math.max(0.35, uneven);
    const drop = trough - 0.92 * hollow.crown * (1 - s * s) * risen;
    const rough =
      hollow.ripple.height * rippleAt(hollow, x + 0.6 * wander, (y - hollow.y) / hollow.runHalf) +
      0.02 * gradient2(x / 0.5, y / 0.6, hollow.seed + 6) +
      0.035 * gradient2(x / 1.1, y / 0.8, hollow.seed + 7);
    const floor = mix(...hollow.toes, clamp(0.5 + (0.5 * (y - hollow.y)) / hollow.runHalf, 0, 1)) - drop + rough;
    const isBead = strip.run[k] > 0 && strip.bead[k] > 0.6;
    const within = ease(1, 0.68, along);
    if (within <= 0) return;
    // the beads' ends and in the root the plates' corners are melted down to it, its own metal fills what lies lower
    const isHigher = z[k] > floor;
    if (isHigher && !isRoot && strip.run[k] !== hollow.run) return;
    const inside = isHigher ? ease(1, 0.8, Math.abs(s)) : 1;
    raised.push([k, mix(z[k], floor, within * inside)]);
    const share = within * ease(1, 0.88, Math.abs(s));
    trace.push({ k, share: PAINTED * share, low: clamp(drop / 1.6, 0, 1), rough });
    if (share < 0.3 || isBead) return;
    const from = middle * grid.columns + i;
    strip.bead[k] = Math.max(strip.bead[k], share);
    strip.run[k] = hollow.run;
    strip.travel[k] = strip.travel[from] || x;
    strip.across[k] = s;
  });
  for (const [k, height] of raised) z[k] = height;
  for (let n = 0; n < ROUNDS; n++) evenOut(strip, hollow);
  // its own skin is as rough as it froze
  for (const { k, share, rough } of trace) z[k] += 0.8 * share * rough;
  return trace;
}

/** Metal that hardly melted: grey, in the low places brown and blue with oxide. */
export function paintHollow(field: Field, hollow: Hollow, trace: HollowTrace): void {
  const { columns, perMm } = field.grid;
  for (const { k, share, low } of trace) {
    const px = k % columns;
    const x = px / perMm;
    const y = (k - px) / columns / perMm;
    const cloud = gradient2(x / 1.3, y / 0.9, hollow.seed + 10);
    const fine = gradient2(x / 0.4, y / 0.35, hollow.seed + 11);
    mixMaterial(field, k, scaled(TONES.meltedMetal, 0.8 + 0.12 * fine), 0.5, 0.5, 0.75 * share);
    const oxide = clamp(hollow.scaled * (0.3 + 0.4 * low) + 0.45 * cloud, 0, 0.7);
    mixMaterial(field, k, between(TONES.oxide, TONES.brown, clamp(0.4 + cloud, 0, 1)), 0.62, 0.25, oxide * share);
    mixMaterial(field, k, TONES.blue, 0.5, 0.4, 0.3 * share * clamp(0.1 - cloud, 0, 1));
    field.brush[k] *= 1 - share;
  }
}
