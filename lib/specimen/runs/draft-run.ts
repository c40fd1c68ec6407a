import { clamp } from "../../math";
import type { RandomStream } from "../../random";
import { columnX, type Grid, gradient1 } from "../../surface";
import type { RunPlan } from "../plan";

/** A run before the hand trembles: mean values, mm. */
export interface RunDraft {
  readonly direction: 1 | -1;
  readonly y: number;
  readonly halfWidth: number;
  readonly height: number;
  readonly exponent: number;
  readonly tail: number;
  readonly tailPower: number;
  readonly pitch: number;
  readonly ripple: number;
  readonly coarse: number;
  readonly smooth: number;
  readonly weave: boolean;
}

/** A waver along x: wavelength in mm, and strength. */
type Waves = readonly (readonly [wavelength: number, strength: number])[];

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
/** The hand does not keep exactly parallel to the joint: standard deviation of the slope. */
const SLANT = 0.0014;

function wave(waves: Waves, x: number, seed: number): number {
  let sum = 0;
  waves.forEach(([wavelength, strength], n) => {
    sum += strength * gradient1(x / wavelength, seed + n);
  });
  return sum;
}

/** Lays a run's mean values along the strip and lets them waver as a hand does. Electrode lengths are not yet set. */
export function draftRun(draft: RunDraft, grid: Grid, length: number, random: RandomStream): RunPlan {
  const seed = random.seed();
  const slant = random.normal(0, SLANT);
  const along = (value: (x: number) => number) =>
    Float32Array.from({ length: grid.columns }, (_, i) => value(columnX(grid, i)));
  const { y, halfWidth, exponent, tail } = draft;
  return {
    seed,
    direction: draft.direction,
    centre: along((x) => y + slant * (x - length / 2) + halfWidth * wave(WANDER, x, seed)),
    halfWidth: along((x) => halfWidth * (1 + wave(WIDTH, x, seed + 3))),
    height: along((x) => draft.height * (1 + wave(HEIGHT, x, seed + 6))),
    exponentMinus: along((x) => exponent * (1 + wave(EXPONENT, x, seed + 9))),
    exponentPlus: along((x) => exponent * (1 + wave(EXPONENT, x, seed + 10))),
    tail: along((x) => tail * (1 + wave(TAIL, x, seed + 11))),
    ripple: along((x) => draft.ripple * clamp(1 + wave(RIPPLE, x, seed + 13), 0.3, 2)),
    raggedMinus: along(() => 1),
    raggedPlus: along(() => 1),
    tailPower: draft.tailPower,
    pitch: draft.pitch,
    coarse: draft.coarse,
    smooth: draft.smooth,
    weave: draft.weave,
    segments: [],
  };
}
