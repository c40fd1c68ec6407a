import { tabulate } from "../../math";
import { columnX, gradient1 } from "../../surface";
import type { RunPlan } from "../plan";
import type { FaceWork } from "../work";
import { layRun } from "./lay-run";
import type { RippleNoise } from "./ripple-noise";
import { type Stretch, unfilledStretches } from "./unfilled-stretches";

/** Narrowest layer, mm of half width. */
const LEAST_HALF = 2;
/** A length of it without humps, craters or restarts. */
const PLAIN = { hump: 0, humpLength: 5, crater: 0, shift: 0, widen: 0, wetting: 0 };

/**
 * Lays the layer under the cap, one weave from wall to wall: along the stretches given, or where the groove is not filled and
 * it can be seen.
 */
export function layLayerBelow(work: FaceWork, noise: RippleNoise, stretches?: readonly Stretch[]): void {
  const { strip, plan, look } = work;
  const { grid } = strip;
  const seed = work.random.child("layer-below").seed();
  const along = (value: (x: number, i: number) => number) => tabulate(grid.columns, (i) => value(columnX(grid, i), i));
  const halfWidth = along((x, i) =>
    Math.max(LEAST_HALF, plan.groove + plan.fill[i] / plan.wallSlope + 0.15 * gradient1(x / 5, seed + 2)),
  );
  const layer: RunPlan = {
    seed,
    direction: 1,
    centre: along((x) => 0.2 * gradient1(x / 9, seed + 1)),
    halfWidth,
    height: along((x) => -0.12 + 0.2 * gradient1(x / 11, seed + 3)),
    exponentMinus: along(() => 2),
    exponentPlus: along(() => 2),
    tail: along(() => 0.4),
    ripple: along(() => look.rippleHeight * 1.2),
    raggedMinus: along(() => 1),
    raggedPlus: along(() => 1),
    tailPower: 2,
    pitch: look.ripplePitch * 1.3,
    coarse: 0.4,
    smooth: 0.1,
    weave: false,
    evenness: 0.2,
    fine: 0.1,
    bend: 1,
    dwell: 0.085,
    lean: 0,
    lag: 0,
    segments: (stretches ?? unfilledStretches(work, halfWidth)).map(({ a, b }) => ({ a, b, ...PLAIN })),
  };
  layRun(strip, layer, 0, noise);
  strip.run.fill(0);
}
