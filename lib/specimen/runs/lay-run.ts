import { type RandomStream, randomStream } from "../../random";
import type { Field } from "../field";
import type { RunPlan, Segment } from "../plan";
import type { Crater } from "../work";
import { depositPool } from "./deposit-pool";
import { type CraterDish, formPool, type Pool } from "./pool";
import type { RippleNoise } from "./ripple-noise";
import { drawRippleTrain, type RippleTrain } from "./ripple-train";

/** What laying a run leaves besides the metal. */
export interface LaidRun {
  /** y of both edges per column, NaN where the run is absent. */
  readonly minus: Float32Array;
  readonly plus: Float32Array;
  readonly craters: readonly Crater[];
}

/**
 * Deposits a run, electrode length by electrode length, on whatever is already there. Marks it as run number `index` + 1.
 * The lengths in `creased` have one crease that stands out.
 */
export function layRun(
  field: Field,
  run: RunPlan,
  index: number,
  noise: RippleNoise,
  creased: ReadonlySet<Segment> = new Set(),
): LaidRun {
  const { columns } = field.grid;
  const minus = new Float32Array(columns).fill(Number.NaN);
  const plus = new Float32Array(columns).fill(Number.NaN);
  const craters: Crater[] = [];
  run.segments.forEach((segment, n) => {
    const random = randomStream(`run ${run.seed}`).child(`electrode/${n}`);
    const pool = formPool(field, run, segment, random);
    if (pool.last < pool.first) return;
    const train = trainOf(run, segment, pool, creased.has(segment), random);
    depositPool({ field, run, segment, pool, noise, train, number: index + 1 });
    for (let i = pool.first; i <= pool.last; i++) {
      if (pool.half[i] <= 0) continue;
      // where two lengths overlap, the narrow end of one lies on the full width of the other
      const low = pool.centre[i] - pool.minus[i];
      const high = pool.centre[i] + pool.plus[i];
      minus[i] = Number.isNaN(minus[i]) ? low : Math.min(minus[i], low);
      plus[i] = Number.isNaN(plus[i]) ? high : Math.max(plus[i], high);
    }
    if (pool.crater) craters.push(craterAt(pool.crater, run.direction, index));
  });
  return { minus, plus, craters };
}

function craterAt(dish: CraterDish, direction: 1 | -1, run: number): Crater {
  return { x: direction * dish.travel, y: dish.y, radiusX: dish.radiusX, radiusY: dish.radiusY, run };
}

/** How far a train reaches before the start (the pool's tail) and beyond the front (the rings of the crater), mm. */
const TRAIN = { before: 14, beyond: 26 };

function trainOf(run: RunPlan, segment: Segment, pool: Pool, isCreased: boolean, random: RandomStream): RippleTrain {
  return drawRippleTrain(random.child("ripples"), pool.start - TRAIN.before, pool.front + TRAIN.beyond, {
    pitch: run.pitch * (segment.pitchFactor ?? 1),
    coarse: run.coarse,
    smooth: run.smooth,
    evenness: run.evenness,
    isCreased,
  });
}
