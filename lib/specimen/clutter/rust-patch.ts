import { clamp, ease, hypot, mix } from "../../math";
import type { RandomStream } from "../../random";
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

/** How the water stood and dried: mm, and radians. */
interface Habit {
  /** Height of the patch against its length. */
  readonly tall: number;
  readonly turn: number;
  /** Size of its lobes and of its clouds, and how closed it is. */
  readonly lobe: number;
  readonly cloud: number;
  readonly closed: number;
}

/** A puddle, a run along the weld or down the plate, or scattered drops. */
function drawHabit(random: RandomStream): Habit {
  switch (random.pick(["puddle", "run", "drops"] as const)) {
    case "puddle":
      return {
        tall: random.uniform(0.45, 0.85),
        turn: random.normal(0, 0.5),
        lobe: random.uniform(5, 10),
        cloud: random.uniform(3, 6),
        closed: random.uniform(0.35, 0.6),
      };
    case "run":
      return {
        tall: random.uniform(0.16, 0.34),
        turn: random.chance(0.5) ? random.normal(0, 0.2) : random.normal(Math.PI / 2, 0.35),
        lobe: random.uniform(3, 6),
        cloud: random.uniform(2, 4),
        closed: random.uniform(0.3, 0.5),
      };
    case "drops":
      return {
        tall: random.uniform(0.35, 0.7),
        turn: random.uniform(-1, 1),
        lobe: random.uniform(2.5, 5),
        cloud: random.uniform(1.4, 2.6),
        closed: random.uniform(0.08, 0.25),
      };
  }
}

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
      const habit = drawHabit(draw);
      const { x: middle, y: across } = besideToe(work, request, draw.uniform(-2, 5));
      const half = Math.max(4, request.length) / 2;
      const tall = half * habit.tall;
      const turn = habit.turn;
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
          const bend = 0.75 * gradient2(x / habit.lobe, y / habit.lobe, seed);
          const d = hypot(u, v) + bend + 0.3 * fractal2(x / 2.2, y / 2.2, seed + 6, 3, 0.6);
          if (d > 1.9) return;
          // where a drop dried, its rim rusted most
          const body = isRing
            ? Math.max(0.55 * ease(1.2, 0.2, d), ease(0.6, 0.95, d) * ease(1.5, 1, d))
            : ease(1.75, 0.25, d);
          const cloud = habit.closed + 0.95 * fractal2(x / habit.cloud, y / habit.cloud, seed + 1, 4, 0.7);
          const crust = ease(-0.45, 0.35, fractal2(x / 0.42, y / 0.42, seed + 7, 2, 0.7) + 0.5 * ease(1, 0, d));
          const speck = ease(0.42, 0.78, fractal2(x / 0.8, y / 0.8, seed + 2, 2, 0.6)) * ease(1.9, 0.9, d);
          // water stays in creases, the brush and the glove keep the crests bare
          const wet = ease(1.7, -0.7, wide(k));
          const share = clamp(
            (1.25 * body * cloud * mix(0.45, 1, crust) + 0.7 * speck) * (0.66 + 0.5 * wet) * dense * 1.2 - 0.12,
            0,
            1,
          );
          if (share < 0.015) return;
          const age = clamp(0.5 + 1.1 * fractal2(x / 0.9, y / 0.9, seed + 3, 3, 0.7) + 0.5 * (share - 0.4), 0, 1);
          const colour =
            age < 0.5 ? between(TONES.rustPale, TONES.rust, 2 * age) : between(TONES.rust, TONES.rustDeep, 2 * age - 1);
          mixMaterial(field, k, colour, 0.92, 0, 0.8 * ease(0, 0.85, share));
          field.z[k] += BLOOM * share * (0.5 + 0.9 * gradient2(x / 0.3, y / 0.3, seed + 4));
          field.brush[k] *= 1 - ease(0, 0.4, share);
          leaveTrace(footprint, field, x, y, 1.2 * share);
        });
      }
    },
    clutter: (work) => clutterFrom(work, request.id, "rust-patch", footprint),
  };
};
