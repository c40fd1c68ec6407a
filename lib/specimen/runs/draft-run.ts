import { clamp, ease, mix, tabulate } from "../../math";
import type { RandomStream } from "../../random";
import { columnX, type Grid, gradient1 } from "../../surface";
import type { RunPlan } from "../plan";

/** What the hand does not change along a run. */
type Constant =
  | "direction"
  | "tailPower"
  | "pitch"
  | "coarse"
  | "smooth"
  | "weave"
  | "evenness"
  | "fine"
  | "bend"
  | "dwell"
  | "lean"
  | "lag";

/** A run before the hand trembles: mean values, mm. */
export interface RunDraft extends Pick<RunPlan, Constant> {
  readonly y: number;
  readonly halfWidth: number;
  readonly height: number;
  readonly exponent: number;
  /** Added to the edge exponent towards y < centre and y > centre. */
  readonly exponentMinus: number;
  readonly exponentPlus: number;
  readonly tail: number;
  readonly ripple: number;
  /** Raggedness of the toes, 1 normal. */
  readonly ragged: number;
}

/** The hand that lays a run. */
export interface Hand {
  /** 0 a steady hand in an easy position, 1 the mean, 2 a nervous one. */
  readonly tremble: number;
  /** Wavelengths of its waver against the mean. */
  readonly tempo: number;
}

/** A waver along x: wavelength in mm, and strength. */
export type Waves = readonly (readonly [wavelength: number, strength: number])[];

const WANDER: Waves = [
  [46, 0.085],
  [19, 0.045],
  [7.5, 0.02],
];
const WIDTH: Waves = [
  [31, 0.055],
  [12, 0.05],
  [4.7, 0.028],
];
const HEIGHT: Waves = [
  [37, 0.13],
  [11, 0.1],
  [4.3, 0.06],
];
const EXPONENT: Waves = [[15, 0.16]];
const TAIL: Waves = [
  [23, 0.22],
  [8, 0.12],
];
const RIPPLE: Waves = [
  [27, 0.35],
  [9, 0.25],
];
/** A bead's back is round: below this edge exponent its crown would be a ridge, a line ruled through all ripples. */
export const ROUND = 1.9;
/** The hand does not keep exactly parallel to the joint: standard deviation of the slope. */
const SLANT = 0.0014;
/** Raggedness of the toes of the steadiest hand, and how much more the mean one has. */
const RAGGED = { least: 0.45, more: 0.55 };

export function wave(waves: Waves, x: number, seed: number): number {
  let sum = 0;
  waves.forEach(([wavelength, strength], n) => {
    sum += strength * gradient1(x / wavelength, seed + n);
  });
  return sum;
}

/** A hand that drifts off is set right again: how far it drifts, after how long it is noticed, how soon it is back; mm. */
const DRIFT = { far: 0.24, noticed: [14, 55], back: [3, 9] } as const;

/** Piecewise drift off the line and back, as places along x and how far off the hand is there, mm. */
function drawDrift(length: number, tremble: number, random: RandomStream): (readonly [x: number, off: number])[] {
  const knots: [number, number][] = [];
  let off = random.normal(0, 0.5 * DRIFT.far * tremble);
  for (let x = -20; x < length + 20; ) {
    knots.push([x, off]);
    x += random.uniform(...DRIFT.noticed);
    off += random.normal(0, DRIFT.far * tremble);
    knots.push([x, off]);
    x += random.uniform(...DRIFT.back);
    off *= random.uniform(-0.25, 0.4);
  }
  return knots;
}

/** Drift along the columns of a grid, eased between its knots. */
function driftAlong(grid: Grid, knots: readonly (readonly [number, number])[]): Float32Array {
  let n = 0;
  return tabulate(grid.columns, (i) => {
    const x = columnX(grid, i);
    while (n + 2 < knots.length && x > knots[n + 1][0]) n++;
    const [x0, off0] = knots[n];
    const [x1, off1] = knots[n + 1];
    return mix(off0, off1, ease(x0, x1, x));
  });
}

/** Lays a run's mean values along the strip and lets them waver as a hand does. Electrode lengths are not yet set. */
export function draftRun(draft: RunDraft, hand: Hand, grid: Grid, length: number, random: RandomStream): RunPlan {
  const seed = random.seed();
  const { tremble, tempo } = hand;
  const slant = random.normal(0, SLANT * tremble);
  const drift = driftAlong(grid, drawDrift(length, tremble, random.child("drift")));
  const along = (value: (x: number, i: number) => number) => tabulate(grid.columns, (i) => value(columnX(grid, i), i));
  const waver = (waves: Waves, x: number, own: number) => tremble * wave(waves, x / tempo, seed + own);
  const { y, halfWidth, height, exponent, exponentMinus, exponentPlus, tail, ripple, ragged, ...constant } = draft;
  const raggedByHand = ragged * (RAGGED.least + RAGGED.more * tremble);
  return {
    ...constant,
    seed,
    centre: along((x, i) => y + slant * (x - length / 2) + drift[i] + halfWidth * waver(WANDER, x, 0)),
    halfWidth: along((x) => halfWidth * (1 + waver(WIDTH, x, 3))),
    height: along((x) => height * (1 + waver(HEIGHT, x, 6))),
    exponentMinus: along((x) => Math.max(ROUND, (exponent + exponentMinus) * (1 + wave(EXPONENT, x, seed + 9)))),
    exponentPlus: along((x) => Math.max(ROUND, (exponent + exponentPlus) * (1 + wave(EXPONENT, x, seed + 10)))),
    tail: along((x) => tail * (1 + waver(TAIL, x, 11))),
    ripple: along((x) => ripple * clamp(1 + waver(RIPPLE, x, 13), 0.3, 2)),
    raggedMinus: along(() => raggedByHand),
    raggedPlus: along(() => raggedByHand),
    segments: [],
  };
}
