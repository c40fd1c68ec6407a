import { clamp, ease } from "../../math";
import { gradient1 } from "../../surface";
import { mixMaterial } from "../field";
import type { FaceWork } from "../work";
import { boxAround, forEachPlatePixel } from "./patches";
import { PLATE_TONES as TONES } from "./tones";

/** Scratches per square millimetre of plate. */
const DENSITY = 16 / 45_000;

/** Single scratches from stacking and sliding, most of them along the plate. */
export function layHandlingScratches(work: FaceWork): void {
  const random = work.random.child("plate/scratches");
  const { length, width } = work.joint;
  const count = Math.round(DENSITY * length * width);
  for (let n = 0; n < count; n++) {
    const x = random.uniform(0, length);
    const y = random.uniform(-width / 2, width / 2);
    const angle = random.chance(0.6) ? random.normal(0, 0.2) : random.uniform(0, Math.PI);
    const long = random.logNormal(11, 0.7);
    const bow = random.normal(0, 0.006);
    const wide = random.uniform(0.1, 0.25);
    const bright = random.uniform(0.15, 0.5);
    const seed = random.seed();
    const cosine = Math.cos(angle);
    const sine = Math.sin(angle);
    const half = long / 2;
    forEachPlatePixel(
      work,
      boxAround(x, y, half * Math.abs(cosine) + 3, half * Math.abs(sine) + 3),
      (field, k, px, py) => {
        const along = (px - x) * cosine + (py - y) * sine;
        if (Math.abs(along) > half) return;
        const across = (py - y) * cosine - (px - x) * sine + bow * along * along;
        const core = clamp(1 - Math.abs(across) / Math.max(wide, 0.7 / field.grid.perMm), 0, 1);
        if (core <= 0) return;
        const share = core * ease(half, 0.6 * half, Math.abs(along)) * clamp(0.5 + gradient1(along / 2.2, seed), 0, 1);
        field.z[k] -= 0.012 * share;
        mixMaterial(field, k, TONES.bareSteel, 0.4, 0.5, bright * share);
      },
    );
  }
}
