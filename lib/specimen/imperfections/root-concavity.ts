import { clamp, ease, mix } from "../../math";
import { forEachPixel, gradient1, nearestColumn } from "../../surface";
import { mixMaterial } from "../field";
import { betweenToes, measureHollow, type Side } from "../measure";
import { forColumns, moveToe } from "../runs/edit";
import type { FaceWork, FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { scaled, TONES } from "./tones";
import { largestAlong, unevenEnvelope } from "./uneven-ends";

const THRESHOLD = 0.15;
const BRIDGE = 2;
/** Share of the width from toe to toe in which the hollow is sounded. */
const SOUNDED = 0.8;
/** Both edges of the gap are fused at least this far, mm. */
const FUSED_BEYOND = 0.45;
/** Here and there the melt wetted a plate so much further, mm. */
const WETTED = 0.45;
/** Convexity of a usual bead, mm: until it is gone nothing is hollow. */
const CONVEX = 0.8;
/** How far its colour goes towards clean metal, from a shallow one to a deep one. */
const BRIGHTER = { least: 0.12, most: 0.42, from: 0.4, to: 1.2 } as const;

/**
 * Root concavity: a smooth trough in the root bead, a shade brighter than the bead and with faint ripples, both edges fused. `severity` = largest depth below the
 * plates, mm. Truth: `measureHollow` over the middle 0.8 of the
 * width from toe to toe, threshold 0.15 mm.
 */
export const buildRootConcavity: FeatureBuilder = (request, random) => {
  const a = random.uniform(8, 13);
  const b = random.uniform(11, 18);
  const ends = random.chance(0.5) ? { first: a, last: b } : { first: b, last: a };
  // the part of the ends that only loses the bead's normal convexity lies outside what was asked
  const before = 0.15 + (0.75 * (CONVEX + THRESHOLD)) / (CONVEX + request.severity);
  const from = request.x - before * ends.first;
  const to = request.x + request.length + before * ends.last;
  const brighter = mix(BRIGHTER.least, BRIGHTER.most, ease(BRIGHTER.from, BRIGHTER.to, request.severity));
  const seed = random.seed();
  const envelope = unevenEnvelope(from, to, ends, 0.9, seed + 10);
  const uneven = (x: number) =>
    clamp(0.9 + 0.25 * gradient1(x / 8, seed) + 0.035 * gradient1(x / 3, seed + 1), 0.2, 1.2);
  const most = largestAlong(from, to, (x) => envelope(x) * uneven(x));
  const depthAt = (x: number) => (request.severity * uneven(x)) / most;

  /** How far the melt wetted each plate beyond the least, 0..1. */
  const wetted = (x: number, side: Side) =>
    clamp(0.45 + 0.9 * gradient1(x / 6.4, seed + 20 + side) + 0.25 * gradient1(x / 2.3, seed + 24 + side), 0, 1);

  function paintTrough(work: FaceWork): void {
    const { strip, noise, plan } = work;
    const [run] = plan.runs;
    forEachPixel(strip.grid, { x0: from - 4, x1: to + 4, y0: -4.5, y1: 4.5 }, (k, x, y) => {
      if (strip.bead[k] < 0.5) return;
      const i = nearestColumn(strip.grid, x);
      const patch = noise.patchFine[k];
      // the calm pool began and ended as the metal froze: along its crescents, not straight across
      const froze = run.direction * (strip.travel[k] - 0.6 * run.tail[i] * run.halfWidth[i]);
      const share = envelope(clamp(froze, x - 3, x + 3) + 1.6 * patch);
      if (share < 0.02) return;
      const off = Math.abs(y - run.centre[i]) / run.halfWidth[i];
      const bright = share * ease(0.95, 0.55, off) * clamp(0.75 + 0.5 * patch, 0.3, 1);
      mixMaterial(strip, k, scaled(TONES.cutMetal, 0.8), 0.46 + 0.08 * patch, 0.75, brighter * bright);
      mixMaterial(strip, k, TONES.straw, 0.45, 0.7, 0.2 * brighter * share * ease(0.55, 0.85, off) * ease(1, 0.9, off));
    });
  }

  return {
    id: request.id,
    plan(work) {
      const [run] = work.plan.runs;
      forColumns(work.strip.grid, from, to, (i, x) => {
        const share = envelope(x);
        run.height[i] = mix(run.height[i], -depthAt(x), share);
        // narrower than a convex bead, but never so that an edge of the gap stays open
        const least = work.plan.groove + Math.abs(run.centre[i]) + FUSED_BEYOND;
        const narrow = Math.max(Math.min(run.halfWidth[i], least), 0.84 * run.halfWidth[i]);
        run.halfWidth[i] = mix(run.halfWidth[i], Math.max(narrow, least), share);
        for (const side of [-1, 1] as const) {
          const toe = side * run.centre[i] + run.halfWidth[i];
          moveToe(run, side, i, side * (toe + WETTED * wetted(x, side)), share);
        }
        run.exponentMinus[i] = mix(run.exponentMinus[i], 1.9, share);
        run.exponentPlus[i] = mix(run.exponentPlus[i], 1.9, share);
        run.ripple[i] *= 1 + 1.6 * share; // a hollow run ripples less by itself
      });
    },
    paint: paintTrough,
    measure(work) {
      const found = measureHollow(work, betweenToes(work), SOUNDED, {
        range: { from, to },
        threshold: THRESHOLD,
        bridge: BRIDGE,
      });
      return found && truthItem(work, request.id, "root-concavity", found);
    },
  };
};
