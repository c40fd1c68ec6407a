import { clamp, ease } from "../../math";
import { forEachPixel, gradient1 } from "../../surface";
import { mixMaterial } from "../field";
import { measureToeGroove, type Side } from "../measure";
import { forColumns, moveToe, outerRun } from "../runs/edit";
import type { FaceWork, FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { TONES } from "./tones";
import { drawEnds, largestAlong, unevenEnvelope } from "./uneven-ends";
import { alongColumns, smoothBorder } from "./weld-border";

const THRESHOLD = 0.1;
const BRIDGE = 2;
/** Depth of the other toe's valley in the variant "both", as a share. */
const OTHER_SIDE = 0.55;
/** Middle of the valley outside the border of the weld, and its half width, as shares of its width. */
const MIDDLE_AT = 0.14;
const HALF_WIDTH = 0.62;

/** Section of the valley: a smooth trough without any edge, v = -1 (on the bead) .. 1; it runs out longer on the plate. */
const PLATE_SIDE = 1.35;
const trough = (v: number): number => {
  const w = v > 0 ? v / PLATE_SIDE : v;
  return Math.abs(w) >= 1 ? 0 : (0.5 + 0.5 * Math.cos(Math.PI * w)) ** 1.15;
};

/**
 * Shrinkage groove: a smooth, dull valley along a toe of the root bead. `severity` = largest depth, mm. Variant "both":
 * a shallower one along the other toe as well. Truth: `measureToeGroove` on the asked side, threshold 0.1 mm.
 */
export const buildShrinkageGroove: FeatureBuilder = (request, random) => {
  const sides: Side[] = request.variant === "both" ? [request.side, -request.side as Side] : [request.side];
  const ends = drawEnds(random, request.length, [5, 9], [8, 13]);
  const from = request.x - 0.24 * ends.first;
  const to = request.x + request.length + 0.24 * ends.last;
  const width = random.uniform(1.9, 2.5) + 0.9 * request.severity;
  const seed = random.seed();
  const envelope = unevenEnvelope(from, to, ends, 0.3, seed + 20);
  const swell = (x: number) =>
    envelope(x) * clamp(0.8 + 0.34 * gradient1(x / 8, seed) + 0.08 * gradient1(x / 3.4, seed + 1), 0.3, 1.15);
  const most = largestAlong(from, to, swell);
  const depthAt = (x: number) => (request.severity * swell(x)) / most;
  const trace: { k: number; share: number }[] = [];

  function cutValley(work: FaceWork, side: Side): void {
    const { strip } = work;
    const border = smoothBorder(work, side, 1.5);
    const strength = side === request.side ? 1 : OTHER_SIDE;
    const box = { x0: from, x1: to, y0: side < 0 ? -9 : 0, y1: side < 0 ? 0 : 9 };
    forEachPixel(strip.grid, box, (k, x, y) => {
      const depth = strength * depthAt(x);
      const out = (y - alongColumns(work, border, x)) * side;
      if (!(depth > 0.01) || !(Math.abs(out) < 4)) return;
      const relative = depth / (strength * request.severity);
      const wide = width * (0.5 + 0.5 * relative ** 0.6) * (1 + 0.13 * gradient1(x / 5, seed + 8 + side));
      const share = trough((out - MIDDLE_AT * wide) / (HALF_WIDTH * wide));
      if (share <= 0) return;
      strip.z[k] -= depth * share;
      strip.clean[k] = Math.max(strip.clean[k], 0.6 * share);
      trace.push({ k, share: share * ease(0.05, 0.35, depth) });
    });
  }

  return {
    id: request.id,
    plan(work) {
      for (const side of sides) {
        const run = outerRun(work.plan, side);
        const ragged = side < 0 ? run.raggedMinus : run.raggedPlus;
        forColumns(work.strip.grid, from, to, (i, x) => {
          const share = envelope(x);
          ragged[i] *= 1 - 0.5 * share;
          run.ripple[i] *= 1 - 0.2 * share;
          const edge = run.centre[i] + side * run.halfWidth[i];
          moveToe(run, side, i, edge - side * 0.1 * width, share);
        });
      }
    },
    cut(work) {
      for (const side of sides) cutValley(work, side);
    },
    paint(work) {
      const { strip, noise } = work;
      for (const { k, share } of trace) {
        const dull = clamp(0.6 + 0.35 * noise.patchFine[k], 0.2, 0.8) * ease(0.08, 0.8, share);
        mixMaterial(strip, k, TONES.skin, 0.62, 0.3, dull);
        strip.brush[k] *= 1 - 0.8 * share;
      }
    },
    measure(work) {
      const found = measureToeGroove(work, {
        side: request.side,
        range: { from: from - 2, to: to + 2 },
        threshold: THRESHOLD,
        bridge: BRIDGE,
      });
      return found && truthItem(work, request.id, "shrinkage-groove", found);
    },
  };
};
