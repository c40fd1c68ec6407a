import { clamp, ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2 } from "../../surface";
import { mixMaterial } from "../field";
import { measureToeGroove, type Range, type Side } from "../measure";
import { forColumns, moveToe, outerRun } from "../runs/edit";
import type { FaceWork, FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { TONES } from "./tones";
import { drawEnds, type Envelope, largestAlong, unevenEnvelope } from "./uneven-ends";
import { alongColumns, smoothBorder } from "./weld-border";

const THRESHOLD = 0.1;
const BRIDGE = 2;
/** Depth of the other toe's valley in the variant "both", as a share. */
const OTHER_SIDE: readonly [number, number] = [0.3, 0.75];
/** Middle of the valley outside the border of the weld, and its half width, as shares of its width. */
const MIDDLE_AT = 0.14;
const HALF_WIDTH = 0.62;
/** How far the ends advance and fall back, mm. */
const WAVER = 0.8;
/** The edge of the gap is fused at least this far, mm. */
const FUSED_BEYOND = 0.5;
/** About so many mm of valley to an interruption, its half length, mm, and what is left of the depth there: a trace, mm. */
const INTERRUPTED = { every: 13, half: [0.9, 2.4], left: 0.16 } as const;

/**
 * Section of the valley: a trough without any edge, v = -1 (on the bead) .. 1; it runs out longer on the plate, `plateSide`
 * times, and `sharp` draws its bottom together.
 */
function trough(v: number, plateSide: number, sharp: number): number {
  const w = v > 0 ? v / plateSide : v;
  return Math.abs(w) >= 1 ? 0 : (0.5 + 0.5 * Math.cos(Math.PI * w)) ** sharp;
}

/** The valley along one toe: everything of it is drawn for that side. */
interface Valley {
  readonly side: Side;
  readonly range: Range;
  readonly envelope: Envelope;
  readonly width: number;
  /** Depth at x, mm. */
  readonly depthAt: (x: number) => number;
  readonly most: number;
  readonly seed: number;
}

function drawValley(random: RandomStream, side: Side, x: number, length: number, severity: number): Valley {
  const ends = drawEnds(random, length, [4, 9], [8, 13]);
  const range = { from: x - 0.24 * ends.first, to: x + length + 0.24 * ends.last };
  const seed = random.seed();
  const envelope = unevenEnvelope(range.from, range.to, ends, WAVER, seed + 20);
  const breaks = Array.from({ length: Math.round((length / INTERRUPTED.every) * random.uniform(0.3, 1.5)) }, () => ({
    x: x + length * random.uniform(0.16, 0.84),
    half: random.uniform(...INTERRUPTED.half),
    share: random.uniform(0.45, 1),
  }));
  const interrupted = (at: number) => {
    const waver = 0.5 * gradient1(at / 1.4, seed + 25);
    return breaks.reduce(
      (most, one) => Math.max(most, one.share * ease(2.3 * one.half, 0, Math.abs(at - one.x + waver))),
      0,
    );
  };
  const left = Math.min(0.6, INTERRUPTED.left / severity);
  const swell = (at: number) =>
    envelope(at) *
    Math.max(
      left,
      clamp(0.72 + 0.5 * gradient1(at / 8, seed) + 0.26 * gradient1(at / 3.4, seed + 1), 0.28, 1.2) *
        mix(1, 0.15, interrupted(at)),
    );
  const largest = largestAlong(range.from, range.to, swell);
  return {
    side,
    range,
    envelope,
    width: random.uniform(1.6, 2.5) + 0.9 * severity,
    depthAt: (at) => (severity * swell(at)) / largest,
    most: severity,
    seed,
  };
}

/**
 * Shrinkage groove: a smooth, dull valley along a toe of the root bead. `severity` = largest depth, mm. It is uneven and here and there almost
 * interrupted. Variant "both": a shallower and shorter one, of its own, along the other toe as well. Truth: `measureToeGroove` on the asked side, threshold 0.1 mm.
 */
export const buildShrinkageGroove: FeatureBuilder = (request, random) => {
  const { side, x: start, length, severity } = request;
  const valleys = [drawValley(random.child("asked"), side, start, length, severity)];
  if (request.variant === "both") {
    const other = random.child("other");
    const shorter = length * other.uniform(0.55, 1);
    const from = start + (length - shorter) * other.uniform(-0.2, 1.2);
    valleys.push(drawValley(other, side < 0 ? 1 : -1, from, shorter, severity * other.uniform(...OTHER_SIDE)));
  }
  const asked = valleys[0].range;
  const trace: { k: number; share: number }[] = [];

  function cutValley(work: FaceWork, { side, range, width, depthAt, most, seed }: Valley): void {
    const { strip } = work;
    const border = smoothBorder(work, side, 1.5);
    const box = { x0: range.from - WAVER, x1: range.to + WAVER, y0: side < 0 ? -9 : 0, y1: side < 0 ? 0 : 9 };
    forEachPixel(strip.grid, box, (k, x, y) => {
      const depth = depthAt(x);
      const out = (y - alongColumns(work, border, x)) * side;
      if (!(depth > 0.01) || !(Math.abs(out) < 4.5)) return;
      const wide = width * (0.45 + 0.55 * (depth / most) ** 0.6) * (1 + 0.3 * gradient1(x / 5, seed + 8));
      const wander = MIDDLE_AT + 0.1 * gradient1(x / 3.7, seed + 9);
      const plateSide = 1.35 + 0.5 * gradient1(x / 6.1, seed + 10);
      const sharp = clamp(1.2 + 0.6 * gradient1(x / 4.3, seed + 11), 0.9, 1.8);
      const share = trough((out - wander * wide) / (HALF_WIDTH * wide), plateSide, sharp);
      if (share <= 0) return;
      strip.z[k] -= depth * share * (1 + 0.09 * gradient2(x / 0.9, y / 0.7, seed + 12));
      strip.clean[k] = Math.max(strip.clean[k], 0.6 * share);
      trace.push({ k, share: share * ease(0.05, 0.35, depth) });
    });
  }

  return {
    id: request.id,
    plan(work) {
      for (const { side, range, envelope, width } of valleys) {
        const run = outerRun(work.plan, side);
        const ragged = side < 0 ? run.raggedMinus : run.raggedPlus;
        forColumns(work.strip.grid, range.from, range.to, (i, x) => {
          const share = envelope(x);
          ragged[i] *= 1 - 0.5 * share;
          run.ripple[i] *= 1 - 0.2 * share;
          // drawn in, but never so far that an edge of the gap stays open
          const reach = side * run.centre[i] + run.halfWidth[i];
          const drawnIn = Math.max(reach - 0.1 * width, Math.min(reach, work.plan.groove + FUSED_BEYOND));
          moveToe(run, side, i, side * drawnIn, share);
        });
      }
    },
    cut(work) {
      for (const valley of valleys) cutValley(work, valley);
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
        range: { from: asked.from - 2, to: asked.to + 2 },
        threshold: THRESHOLD,
        bridge: BRIDGE,
      });
      return found && truthItem(work, request.id, "shrinkage-groove", found);
    },
  };
};
