import { clamp } from "../../math";
import type { RandomStream } from "../../random";
import { columnX, fractal1, type Grid, gradient1, hash01, nearestColumn, sampleAt } from "../../surface";
import type { Field } from "../field";
import type { RunPlan, Segment } from "../plan";

/** What one electrode's pool does along the strip: one value per column, meaningful from `first` to `last`; mm. */
export interface Pool {
  readonly direction: 1 | -1;
  readonly first: number;
  readonly last: number;
  readonly centre: Float32Array;
  /** Half width before the toes' raggedness; 0 where the pool was not. */
  readonly half: Float32Array;
  readonly minus: Float32Array;
  readonly plus: Float32Array;
  readonly height: Float32Array;
  /** Heights already there at both toes: the bead stands on the line between them. */
  readonly chordMinus: Float32Array;
  readonly chordPlus: Float32Array;
  /** How much further the pool had gone at one toe than at the other, mm per mm. */
  readonly tilt: Float32Array;
  /** Travel (direction * x) of the first and the last metal, before the rounded ends. */
  readonly start: number;
  readonly front: number;
  readonly rearRadius: number;
  readonly frontRadius: number;
  readonly crater: CraterDish | null;
}

/** The hollow in which the last metal froze. */
export interface CraterDish {
  readonly depth: number;
  readonly travel: number;
  readonly y: number;
  readonly radiusX: number;
  readonly radiusY: number;
  /** Phase of its uneven outline, radians. */
  readonly turn: number;
  /** Numbers 0..1 by which it differs from the other craters of its run. */
  readonly luck: Float64Array;
}

/** Length of a run's rounded front as a share of its half width: a weave ends blunt, at one side of its last swing. */
const FRONT_RADIUS = [0.75, 0.95] as const;
const WEAVE_FRONT = { radius: [0.36, 0.56], bluntness: 3.2, aside: 0.32 } as const;
/** Narrower than this the rounded end of a bead is nothing, mm. */
const LEAST_HALF = 0.15;
/** The plate is felt for a little outside the toe. */
const FELT_AT = 1.03;
/** Length of the pool that evens out what lies below, mm: a bigger pool bridges more. */
const BRIDGED = { root: 1.5, stringer: 2.3, weave: 3.2 };
const WIDEST_ROOT = 3.6;
/** A bead's end does not follow a drop deeper than this, mm. */
const DEEPEST_DROP = 2.5;

/** So many numbers tell one crater from another. */
const LUCK = 9;

const frontRadii = (run: RunPlan): readonly [number, number] => (run.weave ? WEAVE_FRONT.radius : FRONT_RADIUS);

/** Works out the pool of one electrode length on top of the heights that are there now. */
export function formPool(field: Field, run: RunPlan, segment: Segment, random: RandomStream): Pool {
  const { grid } = field;
  const { direction } = run;
  const plane = (): Float32Array => new Float32Array(grid.columns);
  const start = direction > 0 ? segment.a : -segment.b;
  const front = direction > 0 ? segment.b : -segment.a;
  const atFront = nearestColumn(grid, direction * front);
  const atStart = nearestColumn(grid, direction * start);
  const frontHalf = run.halfWidth[atFront];
  const frontRadius = frontHalf * random.uniform(...frontRadii(run));
  const ownRear = (run.halfWidth[atStart] + segment.widen) * random.uniform(0.7, 0.95);
  const pool = {
    direction,
    first: grid.columns,
    last: -1,
    centre: plane(),
    half: plane(),
    minus: plane(),
    plus: plane(),
    height: plane(),
    chordMinus: plane(),
    chordPlus: plane(),
    tilt: plane(),
    start,
    front,
    rearRadius: segment.rearRadius ?? ownRear,
    frontRadius,
    crater: craterOf(segment, front, run.centre[atFront] + random.normal(0, 0.04) * frontHalf, frontHalf, run.seed),
  };
  const seed = random.seed();
  for (let i = 0; i < grid.columns; i++) {
    if (!formColumn(pool, run, segment, i, columnX(grid, i), seed)) continue;
    feelToes(pool, field, run, segment, i);
    pool.first = Math.min(pool.first, i);
    pool.last = i;
  }
  const bridged = Math.round(bridgedLength(run, atStart) * grid.perMm);
  pool.chordMinus = bridge(pool.chordMinus, pool, bridged);
  pool.chordPlus = bridge(pool.chordPlus, pool, bridged);
  return pool;
}

const bridgedLength = (run: RunPlan, column: number): number =>
  run.weave ? BRIDGED.weave : run.halfWidth[column] > WIDEST_ROOT ? BRIDGED.stringer : BRIDGED.root;

function craterOf(segment: Segment, front: number, y: number, half: number, turn: number): CraterDish | null {
  if (segment.crater <= 0) return null;
  const travel = front - 0.34 * half;
  const luck = Float64Array.from({ length: LUCK }, (_, n) => hash01(Math.round(8 * travel), n, turn));
  return { depth: segment.crater, travel, y, radiusX: 0.92 * half, radiusY: 0.78 * half, turn, luck };
}

interface Forming {
  readonly direction: 1 | -1;
  readonly centre: Float32Array;
  readonly half: Float32Array;
  readonly minus: Float32Array;
  readonly plus: Float32Array;
  readonly height: Float32Array;
  readonly tilt: Float32Array;
  readonly start: number;
  readonly front: number;
  readonly rearRadius: number;
  readonly frontRadius: number;
}

/** Share of the pool's full size left in its rounded end, `beyond` of `radius` mm outside. */
const remaining = (beyond: number, radius: number): number => Math.max(0, 1 - (beyond / radius) ** 2);

/** One column of the pool; false where the pool was not. */
function formColumn(pool: Forming, run: RunPlan, segment: Segment, i: number, x: number, seed: number): boolean {
  const travel = run.direction * x;
  if (travel < pool.start - pool.rearRadius || travel > pool.front + pool.frontRadius) return false;
  const gone = Math.max(0, travel - pool.start);
  let narrow = 1;
  let low = 1;
  let aside = 0;
  if (travel > pool.front) {
    const beyond = (travel - pool.front) / pool.frontRadius;
    const left = remaining(travel - pool.front, pool.frontRadius);
    narrow = run.weave ? (1 - beyond ** WEAVE_FRONT.bluntness) ** (1 / WEAVE_FRONT.bluntness) : Math.sqrt(left);
    low = left ** 0.9;
    if (run.weave) aside = (seed % 2 === 0 ? 1 : -1) * WEAVE_FRONT.aside * beyond ** 2 * run.halfWidth[i];
  } else if (travel < pool.start) {
    const left = remaining(pool.start - travel, pool.rearRadius);
    narrow = Math.sqrt(left);
    low = left ** 0.75;
  }
  const { narrow: lacking = 0, swell = 1, cant = 0 } = segment;
  narrow *= 1 - lacking * Math.exp(-((gone / swell) ** 2));
  const half = (run.halfWidth[i] + segment.widen * Math.exp(-gone / 10)) * narrow;
  if (half < LEAST_HALF) return false;
  const crown = run.lean * half;
  pool.half[i] = half;
  pool.centre[i] = run.centre[i] + segment.shift * Math.exp(-gone / 14) + aside + crown;
  pool.minus[i] = Math.max(LEAST_HALF, half + crown + narrow * run.raggedMinus[i] * raggedness(x, seed));
  pool.plus[i] = Math.max(LEAST_HALF, half - crown + narrow * run.raggedPlus[i] * raggedness(x, seed + 10));
  const hump = segment.hump * Math.exp(-((Math.max(0, gone - 1) / segment.humpLength) ** 2));
  pool.height[i] = (run.height[i] + hump) * low;
  pool.tilt[i] =
    run.lag + cant * Math.exp(-gone / 7) + 0.16 * gradient1(x / 17, seed + 20) + 0.1 * gradient1(x / 5, seed + 21);
  return true;
}

/** Wander of a toe that does not belong to single ripples, mm. */
const raggedness = (x: number, seed: number): number =>
  0.1 * fractal1(x / 1.7, seed + 1, 2) + 0.16 * gradient1(x / 4.3, seed + 2);

function feelToes(
  pool: Forming & { chordMinus: Float32Array; chordPlus: Float32Array },
  field: Field,
  run: RunPlan,
  segment: Segment,
  i: number,
): void {
  const { grid, z } = field;
  const x = columnX(grid, i);
  const travel = run.direction * x;
  pool.chordMinus[i] = sampleAt(grid, z, x, pool.centre[i] - pool.minus[i] * FELT_AT);
  pool.chordPlus[i] = sampleAt(grid, z, x, pool.centre[i] + pool.plus[i] * FELT_AT);
  if (travel >= pool.start && travel <= pool.front) return;
  const isRear = travel < pool.start;
  const full = run.direction * (isRear ? pool.start : pool.front);
  const at = nearestColumn(grid, full);
  const reach = run.halfWidth[at] * FELT_AT;
  const isOnOld = isRear && segment.wetting > 0;
  const stand = isOnOld ? bounded : carried;
  pool.chordMinus[i] = stand(pool.chordMinus[i], sampleAt(grid, z, full, run.centre[at] - reach));
  pool.chordPlus[i] = stand(pool.chordPlus[i], sampleAt(grid, z, full, run.centre[at] + reach));
}

/** In its rounded ends a bead stands on what its full width stands on, or it would dive into the joint. */
const carried = (here: number, there: number): number => Math.max(here, bounded(here, there));

/** The rounded rear of a restart does so too: standing on the old bead's back it would heap up. */
const bounded = (here: number, there: number): number => Math.min(there, here + DEEPEST_DROP);

/** Running mean along x over the columns where the pool was. */
function bridge(chord: Float32Array, pool: Pool, reach: number): Float32Array {
  const out = chord.slice();
  const { half, first, last } = pool;
  let sum = 0;
  let count = 0;
  const take = (i: number, sign: 1 | -1) => {
    if (i < first || i > last || half[i] <= 0) return;
    sum += sign * chord[i];
    count += sign;
  };
  for (let i = first; i < first + reach; i++) take(i, 1);
  for (let i = first; i <= last; i++) {
    take(i + reach, 1);
    if (half[i] > 0) out[i] = sum / count;
    take(i - reach, -1);
  }
  return out;
}

/** Rows that can be wetted in a column, bounded to the grid. */
export function rowsOf(pool: Pool, grid: Grid, i: number): { from: number; to: number } {
  const reach = 1.12;
  return {
    from: clamp(Math.floor((pool.centre[i] - pool.minus[i] * reach - grid.y0) * grid.perMm - 2), 0, grid.rows - 1),
    to: clamp(Math.ceil((pool.centre[i] + pool.plus[i] * reach - grid.y0) * grid.perMm + 2), 0, grid.rows - 1),
  };
}
