import { clamp, ease, tabulate } from "../../math";
import { columnX, fractal1, gradient1, noiseField, rowsBetween, rowY, withGridRoom } from "../../surface";
import { type Field, mixLit } from "../field";
import type { FaceWork } from "../work";
import { grindBand } from "./ground-band";
import { patchesOf } from "./patches";
import { plateNoise } from "./plate-noise";
import { PLATE_TONES as TONES } from "./tones";

/** Cleans the plates beside the joint before welding: ground to bare metal, or only gone over with a wire brush. */
export function cleanJoint(work: FaceWork): void {
  if (work.look.cleaning === "ground") grindBand(work);
  else brushJoint(work);
}

/** The bevelling tool or the brush takes the skin off this near to the joint, mm from the groove's edge. */
const BARE = { least: 1, most: 4.5 };
/** Beyond the brush's mean reach it wanders so far, mm. */
const WANDER = 7;

/** A wire brush burnishes scale and rust off the high places; bare metal shows only along the joint and in specks. */
function brushJoint(work: FaceWork): void {
  const random = work.random.child("plate/brushed");
  const seed = random.seed();
  const bare = random.uniform(BARE.least, BARE.most);
  const reach = work.plan.groove + work.look.bandWidth * random.uniform(0.6, 1.1);
  const hard = random.uniform(0.35, 0.9);
  for (const field of patchesOf(work)) {
    withGridRoom(() => brushPatch(work, field, { seed, bare, reach, hard }));
  }
}

interface Brushing {
  readonly seed: number;
  readonly bare: number;
  /** From the centre line. */
  readonly reach: number;
  readonly hard: number;
}

function brushPatch(work: FaceWork, field: Field, { seed, bare, reach, hard }: Brushing): void {
  const { grid, z, band, brush, brushAngle } = field;
  const { groove } = work.plan;
  const furthest = reach + WANDER;
  const rows = [-furthest, furthest] as const;
  const { first, end } = rowsBetween(grid, rows);
  if (first >= end) return;
  // wires drag along the joint
  const wire = noiseField(grid, 7, 0.36, seed + 1, 2, 0.7, rows);
  const press = noiseField(grid, 15, 6, seed + 2, 2, 0.5, rows);
  const spots = plateNoise(work, field, "blotchFine", rows);
  const lines = tabulate(2 * grid.columns, (n) => {
    const own = seed + 40 + (n & 1);
    const x = columnX(grid, n >> 1);
    return 2.2 * gradient1(x / 47, own) + 1.3 * gradient1(x / 13, own + 4) + 0.5 * fractal1(x / 4, own + 8, 2);
  });
  for (let j = first; j < end; j++) {
    const y = rowY(grid, j);
    const away = Math.abs(y);
    if (away > furthest) continue;
    const side = y < 0 ? 0 : 1;
    for (let i = 0, k = j * grid.columns; i < grid.columns; i++, k++) {
      const limit = reach + lines[2 * i + side];
      const brushed = ease(4, -5, away - limit + 2.2 * press[k] + 1.6 * spots[k]);
      if (brushed <= 0.01) continue;
      const streak = clamp(0.45 + 0.6 * wire[k], 0, 1);
      const polished = brushed * hard * clamp(0.7 + 0.6 * press[k], 0.1, 1);
      mixLit(field, k, TONES.scaleThin, 0.78 + 0.24 * streak, 0.36, 0.36, polished * (0.3 + 0.35 * streak));
      const near = ease(
        groove + bare + 0.9,
        groove + bare - 0.4,
        away + 1.5 * spots[k] + 0.5 * wire[k] + 0.35 * lines[2 * i + side],
      );
      const rubbed = 0.5 * polished * ease(0.5, 1.1, 0.8 * spots[k] + 0.5 * press[k] + 0.5 * wire[k] + 0.3 * hard);
      const share = Math.max(near, rubbed);
      band[k] = share;
      brush[k] = 0.32 * Math.max(share, polished);
      brushAngle[k] = 0;
      z[k] -= 0.012 * share - 0.003 * wire[k] * polished;
      if (share <= 0.01) continue;
      mixLit(field, k, TONES.groundSteel, 0.76 + 0.14 * streak, 0.44, 0.66, 0.9 * share);
    }
  }
}
