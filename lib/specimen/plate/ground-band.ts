import { clamp, ease } from "../../math";
import { fractal1, gradient1, noiseField, rowY } from "../../surface";
import { type Field, mixMaterial } from "../field";
import type { FaceWork } from "../work";
import { drawGrit, type Grit, type Ground, layStrokes, planStrokes, type Stroke, untouched } from "./disc-strokes";
import { patchesOf } from "./patches";
import { plateNoise } from "./plate-noise";
import { PLATE_TONES as TONES } from "./tones";

/** The band may wander this far beyond its mean width, mm. */
const WANDER = 9;
/** Nobody leaves scale this near to the joint, mm from the groove's edge. */
const ALWAYS_BARE = 4;

interface BandSide {
  readonly side: 1 | -1;
  readonly strokes: readonly Stroke[];
  readonly limit: (x: number) => number;
}

/** Parent metal ground bright beside the groove: strokes of a disc, ending in half-removed scale. */
export function grindBand(work: FaceWork): void {
  const random = work.random.child("plate/band");
  const seed = random.seed();
  const inner = work.plan.groove - 2;
  const outer = work.plan.groove + work.look.bandWidth;
  const sides: BandSide[] = ([-1, 1] as const).map((side) => ({
    side,
    strokes: planStrokes(side, inner, outer + 4, work.joint.length, random.child(`side ${side}`)),
    limit: bandLimit(outer, side, seed),
  }));
  const grit = drawGrit(seed);
  for (const field of patchesOf(work)) grindPatch(work, field, sides, grit, seed, outer + WANDER);
}

/** Limit of the band along x for one side, mm from the centre line: the hand drifts, hurries, goes over a place again. */
function bandLimit(outer: number, side: 1 | -1, seed: number): (x: number) => number {
  const own = seed + 511 + 40 * side;
  return (x) =>
    outer +
    2.6 * gradient1(x / 53, own) +
    2.1 * gradient1(x / 21, own + 1) +
    1.2 * gradient1(x / 8.3, own + 2) +
    0.5 * fractal1(x / 3.1, own + 3, 2);
}

function grindPatch(
  work: FaceWork,
  field: Field,
  sides: readonly BandSide[],
  grit: Grit,
  seed: number,
  furthest: number,
): void {
  const { grid } = field;
  const y0 = Math.max(grid.y0, -furthest);
  const y1 = Math.min(grid.y0 + grid.rows / grid.perMm, furthest);
  if (y0 >= y1) return;
  const rows: readonly [number, number] = [y0, y1];
  const noise: BandNoise = {
    press: noiseField(grid, 8, 5, seed + 54, 3, 0.5, rows),
    touch: noiseField(grid, 3.1, 2.6, seed + 60, 2, 0.6, rows),
    warp: noiseField(grid, 14, 14, seed + 53, 1, 0.5, rows),
    blotchFine: plateNoise(work, field, "blotchFine", rows),
    flake: plateNoise(work, field, "flake", rows),
  };
  const ground = untouched(field);
  for (const { side, strokes, limit } of sides) {
    const from = side > 0 ? Math.max(0, y0) : y0;
    const to = side > 0 ? y1 : Math.min(0, y1);
    if (from >= to) continue;
    layStrokes(field, ground, strokes, grit, noise);
    const limits = Float32Array.from({ length: grid.columns }, (_, i) => limit(grid.x0 + (i + 0.5) / grid.perMm));
    bareMetal(work, field, [from, to], ground, limits, noise);
  }
}

interface BandNoise {
  readonly press: Float32Array;
  readonly touch: Float32Array;
  readonly warp: Float32Array;
  readonly blotchFine: Float32Array;
  readonly flake: Float32Array;
}

function bareMetal(
  work: FaceWork,
  field: Field,
  [from, to]: readonly [number, number],
  ground: Ground,
  limits: Float32Array,
  noise: BandNoise,
): void {
  const { grid, z, parent, band, brush, brushAngle } = field;
  const { scratch, reach, tone, touched } = ground;
  const { press, touch, blotchFine, flake } = noise;
  const { groove } = work.plan;
  const colour: [number, number, number] = [0, 0, 0];
  for (let j = 0; j < grid.rows; j++) {
    const y = rowY(grid, j);
    if (y < from || y >= to) continue;
    const away = Math.abs(y);
    for (let i = 0, k = j * grid.columns; i < grid.columns; i++, k++) {
      // single scratches run past the limit and the scale comes off in patches: the border is neither a line nor a row of teeth
      const inside = limits[i] - away + 0.9 * reach[k] + 3 * blotchFine[k] + 2.4 * flake[k] + touch[k];
      const worn = ease(-6.5, 5, inside) * Math.max(0.8, touched[k]);
      const cover = Math.max(worn, ease(groove + ALWAYS_BARE + 3, groove + ALWAYS_BARE, away));
      if (cover <= 0.02) continue;
      const easy = 0.8 * blotchFine[k] + 0.6 * flake[k] + 0.2 * reach[k] + 0.5 * touch[k] + 0.1 * scratch[k];
      let bare = ease(0.22, 0.95, cover + 0.55 * easy * (1.5 - cover)) * ease(0, 0.25, cover);
      // low spots keep their scale
      bare *= ease(-0.66, -0.3, 0.8 * press[k] + 0.35 * flake[k] + 0.25 * (bare - 0.5));
      const thin = ease(0.02, 0.5, cover + 0.4 * easy) * (1 - bare);
      if (thin > 0.01) {
        const streak = clamp(scratch[k] + 0.4, 0, 1);
        mixMaterial(field, k, TONES.scaleThin, 0.5, 0.34, thin * (0.26 + 0.42 * streak));
        z[k] += 0.003 * scratch[k] * thin;
      }
      if (bare <= 0.004) continue;
      band[k] = bare;
      const together = Math.min(1, Math.sqrt(ground.cosine[k] ** 2 + ground.sine[k] ** 2));
      brush[k] = 0.5 * bare * together;
      brushAngle[k] = 0.5 * Math.atan2(ground.sine[k], ground.cosine[k]);
      z[k] += (parent[k] - 0.012 + 0.0078 * scratch[k] - z[k]) * bare;
      const light = 0.88 + 0.09 * scratch[k] + 0.1 * press[k] + 0.1 * blotchFine[k] + 1.25 * tone[k];
      colour[0] = TONES.groundSteel[0] * light;
      colour[1] = TONES.groundSteel[1] * light * 0.995;
      colour[2] = TONES.groundSteel[2] * light * 0.985;
      const rough = clamp(0.39 + 0.06 * press[k] + 0.03 * scratch[k] - 0.3 * tone[k], 0.3, 0.58);
      mixMaterial(field, k, colour, rough, 0.78, 0.94 * bare);
    }
  }
}
