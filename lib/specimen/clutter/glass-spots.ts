import { clamp, ease, hypot } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient2 } from "../../surface";
import { mixMaterial } from "../field";
import { between } from "../imperfections/tones";
import { runIndex, visibleRun } from "../imperfections/visible-run";
import { boxAround } from "../plate/patches";
import type { FaceWork, Feature, FeatureBuilder } from "../work";
import { clutterFrom, emptyFootprint, type Footprint, leaveTrace } from "./footprint";
import { grainOf } from "./grain";
import { CLUTTER_TONES as TONES } from "./tones";

/** One island of glass; lengths in mm. */
interface Island {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly stretch: number;
  readonly turn: number;
  readonly thick: number;
  /** How clear it is: 0 nearly black, 1 amber. */
  readonly clear: number;
  /** Share that has chipped off again. */
  readonly chipped: number;
  readonly seed: number;
}

/** How much further it reaches where the metal lies low, in radii per step of grain; how far it hides the metal. */
const IN_CREASES = 0.34;
const THIN = 0.92;

/** Islands swim to the middle of the pool or to its edges, in groups, with crumbs round them. */
function drawIslands(
  random: RandomStream,
  work: FaceWork,
  run: number,
  from: number,
  length: number,
  coarse: number,
): Island[] {
  const lane = random.pick([-0.55, 0, 0.1, 0.6]);
  const count = 2 + Math.round(length / 5) + random.integer(3);
  return Array.from({ length: count }, (_, n) => {
    const x = from + length * random.uniform(0, 1);
    const { low, high } = visibleRun(work, run, x);
    const isLarge = n < 2 + length / 14;
    return {
      x,
      y: (low + high) / 2 + ((high - low) / 2) * clamp(lane + random.normal(0, 0.16), -0.85, 0.85),
      radius: isLarge ? clamp(random.logNormal(0.5 * coarse, 0.4), 0.25, 1.1) : random.uniform(0.14, 0.35),
      stretch: 1 + 1.4 * random.uniform(0, 1) ** 2,
      turn: random.uniform(0, 3.14),
      thick: random.uniform(0.018, 0.045),
      clear: random.uniform(0.1, 0.9),
      chipped: random.chance(0.5) ? random.uniform(0.2, 0.6) : 0,
      seed: random.seed(),
    };
  });
}

/** Lays an island; `raised` knows how far each pixel has risen already, since islands that meet do not pile up. */
function layIsland(work: FaceWork, island: Island, raised: Map<number, number>, footprint: Footprint): void {
  const field = work.strip;
  const { x: cx, y: cy, radius, stretch, seed } = island;
  const reach = 2.6 * radius * Math.sqrt(stretch) + 0.6;
  // a border softer than a pixel, so that it does not come out as steps
  const soft = Math.max(0.24, 1.5 / (field.grid.perMm * radius));
  const box = boxAround(cx, cy, reach);
  const crease = grainOf(field, box, 0.6);
  const c = Math.cos(island.turn);
  const s = Math.sin(island.turn);
  forEachPixel(field.grid, box, (k, x, y) => {
    if (field.bead[k] < 0.6) return;
    const along = ((x - cx) * c + (y - cy) * s) / Math.sqrt(stretch);
    const across = (-(x - cx) * s + (y - cy) * c) * Math.sqrt(stretch);
    // the melt ran into the creases first
    const high = crease(k);
    const wander =
      0.62 * gradient2(x / (1.1 * radius), y / (1.1 * radius), seed) + 0.26 * gradient2(x / 0.5, y / 0.5, seed + 1);
    const d = hypot(along, across) / radius + wander + IN_CREASES * clamp(high, -1.2, 1.5);
    const chip = gradient2(x / (0.8 * radius) + 9, y / (0.8 * radius), seed + 2) - 0.75 + 1.1 * island.chipped;
    const cover = ease(1 + soft, 1 - soft, d) * ease(0.3, 0, chip);
    const bed = ease(1.45, 0.85, d);
    if (bed <= 0) return;
    mixMaterial(
      field,
      k,
      TONES.glassBrown,
      0.5,
      0.4,
      0.26 * bed * clamp(0.6 + gradient2(x / 0.5, y / 0.5, seed + 3), 0, 1),
    );
    if (cover <= 0) return;
    const dome = Math.sqrt(Math.max(0, 1 - Math.min(1, d) ** 2));
    const before = raised.get(k) ?? 0;
    const rise = Math.max(before, cover * island.thick * (0.35 + 0.65 * dome));
    field.z[k] += rise - before - (before > 0 ? 0 : 0.012 * cover * clamp(high, -1.5, 1.5));
    raised.set(k, rise);
    const thin = clamp(island.clear * (1.3 - 0.8 * dome) + 0.16 * gradient2(x / 0.9, y / 0.9, seed + 4), 0.22, 1);
    const colour =
      thin < 0.5
        ? between(TONES.glassDark, TONES.glassBrown, 2 * thin)
        : between(TONES.glassBrown, TONES.glassAmber, 2 * thin - 1);
    // thin glass lets the metal show through
    mixMaterial(
      field,
      k,
      colour,
      0.16,
      0,
      cover *
        THIN *
        (0.84 - 0.4 * island.clear * (1 - 0.5 * dome)) *
        clamp(0.75 + 0.6 * gradient2(x / 0.7, y / 0.6, seed + 5), 0.3, 1),
    );
    field.brush[k] *= 1 - cover;
    leaveTrace(footprint, field, x, y, cover);
  });
}

/**
 * Islands of silica glass on a run of a wire or TIG weld, from `x` over `length` mm: small, thin, brown, shining;
 * `severity` 0.8 to 2 the diameter of the larger ones, mm. They tempt to call slag or pores.
 */
export const glassSpots: FeatureBuilder = (request, random): Feature => {
  const footprint = emptyFootprint();
  return {
    id: request.id,
    paint(work) {
      const coarse = clamp(request.severity / 1.3, 0.6, 1.6);
      const run = runIndex(work, request);
      const islands = drawIslands(random.child("islands"), work, run, request.x, Math.max(4, request.length), coarse);
      const raised = new Map<number, number>();
      for (const island of islands) layIsland(work, island, raised, footprint);
    },
    clutter: (work) => clutterFrom(work, request.id, "glass-spots", footprint),
  };
};
