import { ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2 } from "../../surface";
import { mixMaterial } from "../field";
import { scaled } from "../imperfections/tones";
import type { FaceWork } from "../work";
import { PLATE_TONES as TONES } from "./tones";

/** Height that is left at the very end, mm. */
const LEFT = { cap: 0.25, root: 0.12 } as const;
const REACH = 10;

/** The first and the last few millimetres of weld, ground down to a short ramp after the run-on tabs were cut off. */
export function grindWeldEnds(work: FaceWork, random: RandomStream): void {
  const { strip, joint } = work;
  for (const end of [0, joint.length]) {
    const flat = random.uniform(1.2, 2.6);
    const slope = random.uniform(0.2, 0.3);
    const dull = random.uniform(0.35, 0.75);
    const seed = random.seed();
    const box = { x0: end - REACH, x1: end + REACH, y0: -14, y1: 14 };
    forEachPixel(strip.grid, box, (k, x, y) => {
      if (strip.bead[k] <= 0.02) return;
      const inward = Math.abs(x - end) + 0.5 * gradient1(y / 5, seed) + 0.1 * gradient1(y / 1.9, seed + 1);
      // the grinder rolls into the ramp: no edge that would flash
      const past = inward - flat;
      const ramp = LEFT[work.face] + slope * (past > 1 ? past - 0.5 : past > 0 ? 0.5 * past * past : 0);
      const above = strip.z[k] - strip.parent[k] - ramp;
      if (above <= 0) return;
      const scratch = gradient2(x / 3, y / 0.45, seed + 3);
      strip.z[k] = strip.parent[k] + ramp + 0.004 * gradient2(x / 2.5, y / 0.5, seed + 2);
      const share = ease(0, 0.15, above);
      const smoky = Math.max(0, Math.min(1, dull + 0.5 * gradient2(x / 3.5, y / 4, seed + 5)));
      mixMaterial(strip, k, scaled(TONES.groundSteel, 0.56 + 0.12 * scratch), 0.64, 0.38, 0.72 * share);
      mixMaterial(strip, k, TONES.smoke, 0.66, 0.3, 0.5 * smoky * share);
      strip.brush[k] = mix(strip.brush[k], 0.3, share);
      strip.brushAngle[k] = 0.12 * gradient1(y / 3, seed + 4);
    });
  }
}
