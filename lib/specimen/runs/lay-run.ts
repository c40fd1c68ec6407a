import { clamp, ease, mix } from "../../math";
import { randomStream } from "../../random";
import { columnX, type Grid, gradient1, noiseField, rowY } from "../../surface";
import type { Field } from "../field";
import type { RunPlan, Segment } from "../plan";
import type { Crater } from "../work";
import { formPool, type Pool, rowsOf } from "./pool";
import { drawRippleTrain, placeInTrain, type RippleTrain, valueAt } from "./ripple-train";

/** Noise over the strip in which the ripples of all runs are bent, forked and strengthened. */
export interface RippleNoise {
  readonly bend: Float32Array;
  readonly bendFine: Float32Array;
  readonly fork: Float32Array;
  readonly strength: Float32Array;
}

/** Draws the noise for runs that lie between the rows given in mm. */
export function drawRippleNoise(grid: Grid, seed: number, rows: readonly [number, number]): RippleNoise {
  return {
    bend: noiseField(grid, 4.2, 3.2, seed + 21, 1, 0.5, rows),
    bendFine: noiseField(grid, 1.25, 1.1, seed + 22, 1, 0.5, rows),
    fork: noiseField(grid, 5, 2.2, seed + 23, 1, 0.5, rows),
    strength: noiseField(grid, 4.6, 2.4, seed + 24, 1, 0.5, rows),
  };
}

/** What laying a run leaves besides the metal. */
export interface LaidRun {
  /** y of both edges per column, NaN where the run is absent. */
  readonly minus: Float32Array;
  readonly plus: Float32Array;
  readonly craters: readonly Crater[];
}

/** Deposits a run, electrode length by electrode length, on whatever is already there. Marks it as run number `index` + 1. */
export function layRun(field: Field, run: RunPlan, index: number, noise: RippleNoise): LaidRun {
  const { columns } = field.grid;
  const laid = {
    minus: new Float32Array(columns).fill(Number.NaN),
    plus: new Float32Array(columns).fill(Number.NaN),
    craters: [] as Crater[],
  };
  run.segments.forEach((segment, n) => {
    const random = randomStream(`run ${run.seed}`).child(`electrode/${n}`);
    const pool = formPool(field, run, segment, random);
    if (pool.last < pool.first) return;
    depositPool(field, run, segment, pool, trainOf(run, segment, pool, random), noise, index + 1);
    for (let i = pool.first; i <= pool.last; i++) {
      if (pool.half[i] <= 0) continue;
      laid.minus[i] = pool.centre[i] - pool.minus[i];
      laid.plus[i] = pool.centre[i] + pool.plus[i];
    }
    if (pool.crater) laid.craters.push(craterAt(pool, index));
  });
  return laid;
}

function craterAt(pool: Pool, run: number): Crater {
  const dish = pool.crater;
  if (!dish) throw new Error("a pool without a dish leaves no crater");
  return { x: pool.direction * dish.travel, y: dish.y, radiusX: dish.radiusX, radiusY: dish.radiusY, run };
}

/** The train reaches beyond both ends: the pool's tail, and the rings of the crater. */
function trainOf(run: RunPlan, segment: Segment, pool: Pool, random: ReturnType<typeof randomStream>): RippleTrain {
  return drawRippleTrain(random.child("ripples"), pool.start - 14, pool.front + 26, {
    pitch: run.pitch * (segment.pitchFactor ?? 1),
    coarse: run.coarse,
    smooth: run.smooth,
    weave: run.weave,
  });
}

/** Beyond this bend (mm of travel per noise) the ripples of a wide pitch would fold over themselves. */
const MOST_BEND = 1.05;
const BEND = { wide: 0.55, fine: 0.13 };
/** Reach of a toe: with its ripple's height, with its ripple's luck, with the dwell of the electrode; mm. */
const SCALLOP = { height: 0.1, luck: 0.08, dwell: { weave: 0.26, stringer: 0.085 }, fine: 0.05 };
const FINE_RIPPLE = { weave: 0.04, stringer: 0.2 };
/** Where across the run (1 = toe) the metal begins to merge into what it lies on: later at a rolled edge. */
const MERGES = { wetted: 0.9, rolled: 0.975 };
export const ROLLED_EXPONENT = 3.6;
const MERGED = 1.02;
const REACH = 1.12;
/** A restart melts the end of the old metal down by no more than this, mm. */
const MELTED_DOWN = 0.1;

function depositPool(
  field: Field,
  run: RunPlan,
  segment: Segment,
  pool: Pool,
  train: RippleTrain,
  noise: RippleNoise,
  number: number,
): void {
  const { grid, z, bead, run: top, travel: travelOf, across: acrossOf, tint } = field;
  const dwell = run.weave ? SCALLOP.dwell.weave : SCALLOP.dwell.stringer;
  const fineShare = run.weave ? FINE_RIPPLE.weave : FINE_RIPPLE.stringer;
  const bendPitch = Math.min(run.pitch, MOST_BEND);
  const rippleFactor = segment.rippleFactor ?? 1;
  for (let i = pool.first; i <= pool.last; i++) {
    const half = pool.half[i];
    if (half <= 0) continue;
    const travel = pool.direction * columnX(grid, i);
    const centre = pool.centre[i];
    const minus = pool.minus[i];
    const width = minus + pool.plus[i];
    const height = pool.height[i];
    const tail = run.tail[i] * half;
    const ripple = rippleFactor * run.ripple[i] * Math.min(1, height * 0.5 + 0.5);
    const fine = fineShare * run.ripple[i];
    const scallopShare = half / (half + 0.8);
    const overOld = segment.wetting > 0 ? pool.start + half : Number.NEGATIVE_INFINITY;
    const rows = rowsOf(pool, grid, i);
    for (let j = rows.from; j <= rows.to; j++) {
      const k = j * grid.columns + i;
      const y = rowY(grid, j);
      const dy = y - centre;
      const isMinus = dy < 0;
      const planned = isMinus ? minus : pool.plus[i];
      const far = Math.abs(dy);
      if (far > REACH * planned) continue;
      const share = Math.min(1, far / planned);
      const bendFine = noise.bendFine[k];
      const frozen =
        travel +
        tail * (1 - share ** run.tailPower) +
        pool.tilt[i] * dy +
        (BEND.wide * noise.bend[k] + BEND.fine * bendFine) * bendPitch;
      const place = placeInTrain(train, frozen);
      // the toe reaches out ripple by ripple: looked up in the travel of the pool, not in x
      const scallop =
        SCALLOP.height * valueAt(isMinus ? train.height : train.forked, place) +
        SCALLOP.luck * valueAt(train.reach, place) +
        dwell * valueAt(isMinus ? train.dwellMinus : train.dwellPlus, place) +
        SCALLOP.fine * bendFine;
      const ragged = isMinus ? run.raggedMinus[i] : run.raggedPlus[i];
      const toe = Math.max(0.15, planned + scallop * ragged * scallopShare);
      const s = far / toe;
      if (s > MERGED) continue;
      const inside = Math.min(1, s);
      const exponent = isMinus ? run.exponentMinus[i] : run.exponentPlus[i];
      const strength = clamp(0.85 + 0.75 * noise.strength[k], 0.2, 1.6);
      const edge = 1 - inside ** 7;
      let relief = mix(
        valueAt(train.height, place),
        valueAt(train.forked, place),
        clamp(0.5 + 1.2 * noise.fork[k], 0, 1),
      );
      let dish = 0;
      let fineLeft = 1;
      if (pool.crater && travel > pool.crater.travel - 1.3 * pool.crater.radiusX) {
        const rings = craterRings(pool, train, travel, y, noise.bend[k], run.seed);
        relief = mix(relief, rings.relief, rings.share);
        fineLeft = 1 - rings.share;
        dish = rings.dish;
      }
      const fineHeight =
        fine * fineLeft * valueAt(train.fine, placeInTrain(train, frozen + (run.weave ? 0.08 : 0.25) * bendFine));
      const chord = mix(pool.chordMinus[i], pool.chordPlus[i], clamp((dy + minus) / width, 0, 1));
      let metal = chord + height * (1 - inside ** exponent) + (ripple * relief + fineHeight) * strength * edge - dish;
      if (travel < overOld) metal = Math.max(metal, z[k] - MELTED_DOWN);
      const merges = exponent > ROLLED_EXPONENT ? MERGES.rolled : MERGES.wetted;
      let fused = inside < merges ? 1 : 1 - ease(merges, MERGED, s);
      if (travel > pool.front) fused *= frontFusion(pool, travel, far, planned);
      if (segment.wetting > 0 && travel < pool.start + segment.wetting) {
        fused *= rearFusion(pool, segment, travel, y, inside);
      }
      z[k] += (metal - z[k]) * fused;
      const covered = clamp((toe - far) * grid.perMm * 0.5 + 0.5, 0, 1);
      if (covered > 0.4 && fused > 0.25) {
        top[k] = number;
        travelOf[k] = frozen;
        acrossOf[k] = dy / toe;
      }
      const shown = covered * ease(0.02, 0.3, fused);
      if (shown > bead[k]) bead[k] = shown;
      tint[k] += (0.16 * valueAt(train.tint, place) - tint[k]) * covered * Math.min(1, fused * 1.3);
    }
  }
}

/** Inside the crater the metal froze from the rim inwards: rings instead of crescents, and a dish. */
function craterRings(
  pool: Pool,
  train: RippleTrain,
  travel: number,
  y: number,
  bend: number,
  seed: number,
): { relief: number; share: number; dish: number } {
  const crater = pool.crater;
  const none = { relief: 0, share: 0, dish: 0 };
  if (!crater) return none;
  const dx = (travel - crater.travel) / crater.radiusX;
  const dy = (y - crater.y) / crater.radiusY;
  const angle = Math.atan2(dy, dx);
  const uneven = 1 + 0.07 * Math.sin(2 * angle + seed) + 0.05 * Math.sin(3 * angle + seed * 1.7);
  const r = Math.hypot(dx, dy) * uneven;
  if (r >= 1.25) return none;
  const ring = valueAt(train.height, placeInTrain(train, pool.front + 12 - r * crater.radiusX * 0.9 + 0.3 * bend));
  return {
    relief: ring * (0.35 + 0.5 * r),
    share: ease(1.2, 0.75, r),
    dish: r < 1 ? crater.depth * (1 - r * r) ** 1.25 * (0.9 + 0.25 * bend) : 0,
  };
}

/** The rounded front merges within its last few tenths. */
function frontFusion(pool: Pool, travel: number, far: number, planned: number): number {
  const along = (travel - pool.front) / pool.frontRadius;
  const roundness = Math.max(0.05, Math.sqrt(Math.max(0, 1 - along * along)));
  const r = Math.hypot(along, (far * roundness) / planned);
  return 1 - ease(0.92, 1, r);
}

/** A restart wets back over the old metal: nothing at its ragged rear edge, full a little further on. */
function rearFusion(pool: Pool, segment: Segment, travel: number, y: number, inside: number): number {
  const rear = pool.start - pool.rearRadius * Math.sqrt(Math.max(0, 1 - 0.9 * inside * inside));
  const gone = travel - rear;
  if (segment.lapSeed === undefined) return ease(-0.2, segment.wetting + 0.5 * pool.rearRadius, gone);
  const lap = 0.32 * gradient1(y / 2.1, segment.lapSeed) + 0.08 * gradient1(y / 0.7, segment.lapSeed + 1);
  return ease(-0.08, Math.max(0.3, segment.wetting), gone - lap);
}
