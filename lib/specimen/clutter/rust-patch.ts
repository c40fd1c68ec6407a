import { clamp, ease } from "../../math";
import { forEachPixel, fractal2, gradient2 } from "../../surface";
import { mixMaterial } from "../field";
import { between } from "../imperfections/tones";
import { boxAround, patchesOf } from "../plate/patches";
import type { Feature, FeatureBuilder } from "../work";
import { clutterFrom, emptyFootprint, leaveTrace } from "./footprint";
import { grainOf } from "./grain";
import { besideToe } from "./place";
import { CLUTTER_TONES as TONES } from "./tones";

/** Rust grows this far out of the metal, mm. */
const BLOOM = 0.016;

/**
 * Rust on weld or plate where water stood: a rough orange-brown bloom without an edge, specks round it; about `length` mm
 * long, `severity` 0.3 to 1.2 how dense.
 */
export const rustPatch: FeatureBuilder = (request, random): Feature => {
  const footprint = emptyFootprint();
  return {
    id: request.id,
    paint(work) {
      const draw = random.child("rust");
      const { x: middle, y: across } = besideToe(work, request, draw.uniform(-2, 5));
      const half = Math.max(4, request.length) / 2;
      const tall = half * draw.uniform(0.4, 0.75);
      const turn = draw.normal(0, 0.3);
      const dense = clamp(request.severity, 0.3, 1.2);
      const isRing = draw.chance(0.12);
      const seed = draw.seed();
      const reach = 1.9 * half;
      const box = boxAround(middle, across, reach, 1.9 * tall + 3);
      const c = Math.cos(turn);
      const s = Math.sin(turn);
      for (const field of patchesOf(work)) {
        const wide = grainOf(field, box, 0.7);
        forEachPixel(field.grid, box, (k, x, y) => {
          const u = ((x - middle) * c + (y - across) * s) / half;
          const v = ((y - across) * c - (x - middle) * s) / tall;
          const d = Math.hypot(u, v) + 0.75 * gradient2(x / 7, y / 7, seed);
          if (d > 1.9) return;
          // where a drop dried, its rim rusted most
          const body = isRing
            ? Math.max(0.55 * ease(1.2, 0.2, d), ease(0.6, 0.95, d) * ease(1.5, 1, d))
            : ease(1.75, 0.25, d);
          const cloud = 0.5 + 0.95 * fractal2(x / 4.5, y / 4.5, seed + 1, 4, 0.62);
          const speck = ease(0.42, 0.78, fractal2(x / 0.8, y / 0.8, seed + 2, 2, 0.6)) * ease(1.9, 0.9, d);
          // water stays in creases, the brush and the glove keep the crests bare
          const wet = ease(1.7, -0.7, wide(k));
          const share = clamp((1.25 * body * cloud + 0.55 * speck) * (0.45 + 0.75 * wet) * dense * 1.25 - 0.12, 0, 1);
          if (share < 0.015) return;
          const age = clamp(0.45 + 0.8 * fractal2(x / 1.6, y / 1.6, seed + 3, 3, 0.6) + 0.3 * (share - 0.4), 0, 1);
          const colour =
            age < 0.5 ? between(TONES.rustPale, TONES.rust, 2 * age) : between(TONES.rust, TONES.rustDeep, 2 * age - 1);
          mixMaterial(field, k, colour, 0.9, 0, 0.88 * ease(0, 0.85, share));
          field.z[k] += BLOOM * share * (0.5 + 0.9 * gradient2(x / 0.3, y / 0.3, seed + 4));
          field.brush[k] *= 1 - ease(0, 0.4, share);
          leaveTrace(footprint, field, x, y, 1.2 * share);
        });
      }
    },
    clutter: (work) => clutterFrom(work, request.id, "rust-patch", footprint),
  };
};
