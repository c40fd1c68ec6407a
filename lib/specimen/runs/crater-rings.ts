import { ease, hypot } from "../../math";
import { gradient2 } from "../../surface";
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
/** Length of the lumps that its floor froze in, in radii. */
const LUMP = 0.55;
/** Least that the unevenness of the outline comes to, but for the noise. */
const LEAST_UNEVEN = 1 - 0.15 - 0.12;
/** How far behind its middle the longest crater reaches, in planned radii. */
const LONGEST = 2.1;
/** Where the dish runs out, in radii. */
const RIM = 1.18;

/** True where a crater may show at a travel, so that the rest of the run need not ask. */
export const isNearCrater = (crater: CraterDish, travel: number): boolean =>
  travel > crater.travel - LONGEST * crater.radiusX;

/**
 * Inside the crater the metal froze from the rim inwards: rings instead of crescents, and a dish. The crescents behind
 * close round it, so that rings show towards the front only; its lowest place lies off the middle.
 */
export function craterRings(
  pool: Pool,
  crater: CraterDish,
  train: RippleTrain,
  travel: number,
  y: number,
  bend: number,
): CraterRings {
  const { luck } = crater;
  const size = 0.74 + 0.34 * luck[1];
  const dx = (travel - crater.travel) / (crater.radiusX * size * (0.85 + 0.35 * luck[2]));
  const dy = (y - crater.y) / (crater.radiusY * size);
  const round = hypot(dx, dy);
  if (round * (LEAST_UNEVEN - 0.16 * Math.abs(bend)) >= OUTERMOST) return NONE;
  const angle = Math.atan2(dy, dx);
  const uneven =
    1 +
    (0.05 + 0.1 * luck[3]) * Math.sin(2 * angle + crater.turn + crater.travel) +
    (0.04 + 0.08 * luck[4]) * Math.sin(3 * angle + crater.turn * 1.7 + 2 * crater.travel) +
    0.16 * bend;
  const r = round * uneven;
  if (r >= OUTERMOST) return NONE;
  const rear = 0.5 - 0.5 * Math.cos(angle);
  const offX = 0.5 * luck[5] - 0.15;
  const offY = 0.5 * luck[6] - 0.25;
  const low = hypot(dx - offX * (1 - r / OUTERMOST), dy - offY * (1 - r / OUTERMOST)) * uneven;
  const seed = Math.round(8 * crater.travel);
  const wide = Math.max(1.9, LUMP * crater.radiusX);
  const lumps = gradient2(travel / wide, (1.25 * y) / wide, seed) + 0.25 * gradient2(travel / 0.8, y / 0.8, seed + 1);
  const ring = valueAt(
    train.height,
    placeInTrain(train, pool.front + 12 - low * crater.radiusX * 0.9 + 0.8 * bend + 0.3 * lumps),
  );
  const steep = 1.1 + 1.1 * luck[7];
  const floor = low < RIM ? (1 - (low / RIM) ** 2) ** steep : 0;
  // the skin was drawn in as the floor shrank: lumps, and ridges that run inwards
  const rays =
    1 - 2.6 * Math.abs(gradient2(1.5 * Math.cos(angle) + 0.9 * r, 1.5 * Math.sin(angle) + 0.3 * lumps, seed + 2));
  const drawnIn = (0.25 + 0.5 * luck[8]) * Math.min(1, crater.depth) * ease(1.15, 0.7, r);
  return {
    relief: ring * (0.4 + 0.4 * r),
    share: ease(1.2, 0.5, r + 0.35 * rear + 0.25 * lumps),
    dish: crater.depth * floor * (0.9 + 0.25 * bend + 0.1 * lumps) - 0.035 * drawnIn * rays * ease(0.3, 0.75, low),
  };
}
