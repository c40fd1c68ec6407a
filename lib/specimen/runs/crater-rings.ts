import { ease } from "../../math";
import type { CraterDish, Pool } from "./pool";
import { placeInTrain, type RippleTrain, valueAt } from "./ripple-train";

/** Height of the rings, how far they take the place of the crescents, and the depth of the dish at one place. */
export interface CraterRings {
  readonly relief: number;
  readonly share: number;
  readonly dish: number;
}

const NONE: CraterRings = { relief: 0, share: 0, dish: 0 };
const OUTERMOST = 1.25;
/** Where the dish runs out, in radii. */
const RIM = 1.15;

/** True where a crater may show at a travel, so that the rest of the run need not ask. */
export const isNearCrater = (crater: CraterDish, travel: number): boolean =>
  travel > crater.travel - 1.3 * crater.radiusX;

/** Inside the crater the metal froze from the rim inwards: rings instead of crescents, and a dish. */
export function craterRings(
  pool: Pool,
  crater: CraterDish,
  train: RippleTrain,
  travel: number,
  y: number,
  bend: number,
): CraterRings {
  const dx = (travel - crater.travel) / crater.radiusX;
  const dy = (y - crater.y) / crater.radiusY;
  const angle = Math.atan2(dy, dx);
  const uneven = 1 + 0.07 * Math.sin(2 * angle + crater.turn) + 0.05 * Math.sin(3 * angle + crater.turn * 1.7);
  const r = Math.hypot(dx, dy) * uneven;
  if (r >= OUTERMOST) return NONE;
  const ring = valueAt(train.height, placeInTrain(train, pool.front + 12 - r * crater.radiusX * 0.9 + 0.3 * bend));
  return {
    relief: ring * (0.35 + 0.5 * r),
    share: ease(1.2, 0.75, r),
    dish: r < RIM ? crater.depth * (1 - (r / RIM) ** 2) ** 1.6 * (0.9 + 0.25 * bend) : 0,
  };
}
