import { clamp, ease } from "../../math";
import { forEachPixel, fractal1, fractal2, gradient1, gradient2 } from "../../surface";
import { mixColour, mixMaterial } from "../field";
import { type Flaking, flakingAt } from "../imperfections/scale-layers";
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
  /** How far its ends lean along the weld per mm outwards: the way of the disc. */
  readonly lean: number;
  readonly seed: number;
}

/** Scale is as thick as paper at most, mm. */
const THICKEST = 0.05;

/** How far behind its flaked edge a place lies, mm: below 0 on the toe's side, where the scale has come off. */
function behindEdge({ seed, near }: Scale, x: number, out: number): number {
  const edge = near + 1.3 * fractal1(x / 8, seed, 3, 0.6);
  return out - edge - 0.9 * fractal2(x / 2.6, out / 1.9, seed + 3, 4, 0.65);
}

/** How much of the scale the grinder left, 0..1: all near the toe, farther out only what lies in the scratches. */
function leftByGrinder({ seed, near, wide }: Scale, x: number, out: number, grain: number): number {
  const reach = near + wide + 2.4 * gradient1(x / 11, seed + 7) + 1.2 * gradient1(x / 3.4, seed + 8);
  const worn = (out - 0.45 * reach) / (0.75 * reach);
  const rubbed = 0.34 * fractal2(x / 3.1, out / 2.6, seed + 9, 4, 0.6);
  return ease(1.1, -0.25, worn + rubbed + 0.07 * clamp(grain, -1.5, 1.5) * ease(0, 0.3, worn));
}

/** Scale at a place `out` mm outside the toe: its layers, and how much of their colour the grinder left. */
function scaleAt(scale: Scale, x: number, out: number, share: number, grain: number): Flaking & { left: number } {
  const { seed } = scale;
  const left = leftByGrinder(scale, x, out, grain);
  const inside = behindEdge(scale, x, out);
  // towards the ends it breaks up into islands, and the disc's scratches run through it
  const patchy = 0.42 * fractal2(x / 4.4, out / 3, seed + 11, 4, 0.6) + 0.03 * clamp(grain, -1.5, 1.5) * (1 - share);
  const thick = 0.1 + 0.2 * clamp(inside, -2, 2.6) - 0.85 * (1 - share) ** 1.3 - 0.35 * (1 - left) ** 2 + patchy;
  return { ...flakingAt(x, out, thick, seed + 40), left };
}

function layScale(work: FaceWork, scale: Scale, footprint: Footprint): void {
  const { from, to, side, seed, thick, lean } = scale;
  const last = Math.max(8, 0.3 * (to - from));
  const envelope = unevenEnvelope(from, to, { first: 0.7 * last, last }, 1.2, seed + 20);
  const toe = Math.abs(toeAt(work, side, (from + to) / 2, 3));
  const near = Math.max(0, toe - 2);
  const far = toe + 2 * (scale.near + scale.wide) + 4;
  const box = { x0: from - 6, x1: to + 6, y0: side < 0 ? -far : near, y1: side < 0 ? -near : far };
  for (const field of patchesOf(work)) {
    const grain = grainOf(field, box, 0.35);
    const toes = new Map<number, number>();
    forEachPixel(field.grid, box, (k, x, y, i) => {
      if (field.bead[k] > 0.1) return;
      const edge = toes.get(i) ?? toeAt(work, side, x, 1.5);
      toes.set(i, edge);
      const out = (y - edge) * side;
      if (out < 0.25) return;
      const share = envelope(x + lean * (out - 4) + 3 * gradient2(x / 6, out / 3, seed + 21));
      if (share <= 0) return;
      const { layers, behind, lifted, own, crack, left } = scaleAt(scale, x, out, share, grain(k));
      if (layers <= 0) {
        // rust creeps out from under the edge over the bare plate
        const creeps = ease(-0.5, 0, behindEdge(scale, x, out)) * clamp(gradient2(x / 3.4, y / 2.2, seed + 16), 0, 1);
        mixColour(field, k, TONES.rust, 0.22 * creeps * share);
        return;
      }
      const lower = Math.min(1, layers);
      const upper = clamp(layers - 1, 0, 1);
      const tone = clamp(scale.brown + 0.55 * gradient2(x / 6, y / 3.5, seed + 12) + 0.2 * (own - 0.5), 0, 1);
      const light = 1 + 0.16 * gradient2(x / 8, y / 5, seed + 17) + 0.1 * gradient2(x / 0.7, y / 0.7, seed + 18);
      const broken = ease(0.2, 0.03, behind);
      const gap = 0.2 * upper * ease(0.07, 0, crack);
      const tight = between(TONES.scale, TONES.scaleBrown, tone);
      const colour = scaled(between(TONES.scaleBed, tight, 0.35 + 0.65 * upper), light + 0.14 * broken * lifted - gap);
      const covered = lower * (0.36 + 0.34 * upper) * left ** 1.3;
      mixMaterial(field, k, colour, 0.46, 0.24, covered);
      mixColour(field, k, TONES.rust, 0.26 * lower * broken * clamp(0.9 * gradient2(x / 3, y / 2, seed + 15), 0, 1));
      field.brush[k] *= 1 - covered;
      field.z[k] += thick * left * (0.42 * lower + 0.5 * upper + 0.5 * lifted * lower);
      leaveTrace(footprint, field, x, y, 0.33 * lower * left);
    });
  }
}

/**
 * A tongue of mill scale left between toe and ground plate, its edge flaked off in layers along near the toe: steps of
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
          lean: draw.normal(0, 0.8),
          seed: draw.seed(),
        },
        footprint,
      );
    },
    clutter: (work) => clutterFrom(work, request.id, "mill-scale-edge", footprint),
  };
};
