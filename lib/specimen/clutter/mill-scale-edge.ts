import { clamp, ease } from "../../math";
import { forEachPixel, fractal1, fractal2, gradient1, gradient2 } from "../../surface";
import { mixColour, mixMaterial } from "../field";
import { between, scaled } from "../imperfections/tones";
import { unevenEnvelope } from "../imperfections/uneven-ends";
import { patchesOf } from "../plate/patches";
import { toeAt } from "../runs/edit";
import type { FaceWork, Feature, FeatureBuilder } from "../work";
import { clutterFrom, emptyFootprint, type Footprint, leaveTrace } from "./footprint";
import { grainOf } from "./grain";
import { CLUTTER_TONES as TONES } from "./tones";

/** A tongue of scale that the grinder did not reach; lengths in mm. */
interface Scale {
  readonly from: number;
  readonly to: number;
  readonly side: 1 | -1;
  /** Distance of its broken edge from the toe, and how far out it goes before the ground plate begins. */
  readonly near: number;
  readonly wide: number;
  readonly thick: number;
  readonly brown: number;
  readonly seed: number;
}

/** Scale is as thick as paper at most, mm. */
const THICKEST = 0.05;

/** How far behind its flaked edge a place lies, mm: below 0 on the toe's side, where the scale has come off. */
function behindEdge({ seed, near }: Scale, x: number, out: number): number {
  const edge = near + 1.1 * fractal1(x / 9, seed, 3, 0.6);
  return out - edge - 0.75 * fractal2(x / 2.3, out / 1.7, seed + 3, 3, 0.65);
}

/** How much of the scale the grinder left, 0..1: all near the toe, farther out only what lies in the scratches. */
function leftByGrinder({ seed, near, wide }: Scale, x: number, out: number, grain: number): number {
  const reach = near + wide + 2.4 * gradient1(x / 11, seed + 7) + 1.2 * gradient1(x / 3.4, seed + 8);
  const worn = (out - 0.45 * reach) / (0.75 * reach);
  return ease(1.05, 0.05, worn + 0.3 * clamp(grain, -1.5, 1.5) * ease(0, 0.3, worn));
}

function layScale(work: FaceWork, scale: Scale, footprint: Footprint): void {
  const { from, to, side, seed, thick } = scale;
  const envelope = unevenEnvelope(from, to, { first: 6, last: 8 }, 1.2, seed + 20);
  const toe = Math.abs(toeAt(work, side, (from + to) / 2, 3));
  const near = Math.max(0, toe - 2);
  const far = toe + 2 * (scale.near + scale.wide) + 4;
  const box = { x0: from - 2, x1: to + 2, y0: side < 0 ? -far : near, y1: side < 0 ? -near : far };
  for (const field of patchesOf(work)) {
    const grain = grainOf(field, box, 0.35);
    const toes = new Map<number, number>();
    forEachPixel(field.grid, box, (k, x, y, i) => {
      if (field.bead[k] > 0.1) return;
      const edge = toes.get(i) ?? toeAt(work, side, x, 1.5);
      toes.set(i, edge);
      const out = (y - edge) * side;
      if (out < 0.25) return;
      const share = envelope(x);
      const left = leftByGrinder(scale, x, out, grain(k)) * ease(0, 0.6, share);
      if (left <= 0.01) return;
      const inside = behindEdge(scale, x, out) - 2.6 * (1 - share) ** 2;
      if (inside <= 0) return;
      const hole = fractal2(x / 3.6, y / 2.9, seed + 11, 4, 0.6) + 0.22 * ease(2.5, 0, inside);
      const kept = ease(0, 0.2, inside) * ease(0.5, 0.44, hole) * left;
      if (kept <= 0.01) return;
      const tone = clamp(
        scale.brown + 0.6 * gradient2(x / 6, y / 3.5, seed + 12) + 0.3 * gradient2(x / 1.1, y / 0.9, seed + 13),
        0,
        1,
      );
      const light = 1 + 0.22 * gradient2(x / 8, y / 5, seed + 17) + 0.14 * gradient2(x / 0.7, y / 0.7, seed + 18);
      mixMaterial(field, k, scaled(between(TONES.scale, TONES.scaleBrown, tone), light), 0.46, 0.24, 0.7 * kept);
      field.brush[k] *= 1 - 0.9 * kept;
      // at its break the scale is thick here and worn to nothing there
      const standing = clamp(
        0.45 + 0.8 * gradient1(x / 3.8, seed + 19) + 0.3 * gradient2(x / 1.4, y / 1.4, seed + 14),
        0,
        1,
      );
      field.z[k] += thick * kept * standing;
      // a fresh break has a pale rim on the scale and rust has crept under it here and there
      const rim = kept * ease(0.5, 0.1, inside);
      mixColour(field, k, TONES.scaleBed, 0.2 * rim * clamp(0.1 + gradient1(x / 1.8, seed + 15), 0, 1));
      mixColour(field, k, TONES.rust, 0.4 * rim * clamp(gradient1(x / 4.6, seed + 16) - 0.1, 0, 1));
      leaveTrace(footprint, field, x, y, 0.33 * kept);
    });
  }
}

/**
 * A tongue of mill scale left between toe and ground plate, its flaked edge running along near the toe: a step of
 * `severity` mm, at most 0.05, which in low light looks like a groove or an overlap; `length` mm long.
 */
export const millScaleEdge: FeatureBuilder = (request, random): Feature => {
  const footprint = emptyFootprint();
  return {
    id: request.id,
    paint(work) {
      const draw = random.child("scale");
      layScale(
        work,
        {
          from: request.x,
          to: request.x + Math.max(8, request.length),
          side: request.side,
          near: draw.uniform(0.9, 2.6),
          wide: draw.uniform(3.5, 8),
          thick: clamp(request.severity, 0.015, THICKEST),
          brown: draw.uniform(0.1, 0.7),
          seed: draw.seed(),
        },
        footprint,
      );
    },
    clutter: (work) => clutterFrom(work, request.id, "mill-scale-edge", footprint),
  };
};
