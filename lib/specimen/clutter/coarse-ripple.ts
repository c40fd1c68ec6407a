import { clamp } from "../../math";
import { columnX, nearestColumn, rowOf } from "../../surface";
import { drawEnds, unevenEnvelope } from "../imperfections/uneven-ends";
import { runIndex, visibleRun } from "../imperfections/visible-run";
import { bandOutline, longestStretch } from "../measure";
import { forColumns } from "../runs/edit";
import type { ClutterItem } from "../truth";
import type { FaceWork, Feature, FeatureBuilder } from "../work";

/** Ripples count as coarse where they are this many times as high as the run's own. */
const COARSE_FROM = 1.45;
/** Roughness is averaged over this half length, mm, and must be coarse for this long. */
const AVERAGED = 2.5;
const SHORTEST = 5;
/** Form longer than this half length, mm, is no ripple. */
const FORM = 1.6;
const BRIDGE = 3;
/** Ripples are cut down where they lie on each other: this much is asked for each time of height that is to be seen. */
const GAIN = 1.8;
/** Looked at beyond the stretch that was asked, mm. */
const BEYOND = 4;

/** Mean of values over `reach` places to both sides. */
function smoothed(values: Float32Array, reach: number): Float32Array {
  const sums = new Float64Array(values.length + 1);
  for (let n = 0; n < values.length; n++) sums[n + 1] = sums[n] + values[n];
  return values.map((_, n) => {
    const first = Math.max(0, n - reach);
    const last = Math.min(values.length - 1, n + reach);
    return (sums[last + 1] - sums[first]) / (last + 1 - first);
  });
}

/** How high the ripples of a run are, mm per column: mean deviation from the run's form on five lines along its middle. */
function rippleHeights(work: FaceWork, run: number): Float32Array {
  const { grid, z } = work.strip;
  const total = new Float32Array(grid.columns);
  const plan = work.plan.runs[run];
  const lines = [-0.3, -0.15, 0, 0.15, 0.3];
  for (const share of lines) {
    const profile = total.map((_, i) => {
      const j = clamp(Math.round(rowOf(grid, plan.centre[i] + share * plan.halfWidth[i])), 0, grid.rows - 1);
      return z[j * grid.columns + i];
    });
    const form = smoothed(profile, Math.round(FORM * grid.perMm));
    for (let i = 0; i < total.length; i++) total[i] += Math.abs(profile[i] - form[i]) / lines.length;
  }
  return smoothed(total, Math.round(AVERAGED * grid.perMm));
}

/** The longest coarse stretch of a run near the one asked for, measured from the finished surface. */
function measuredCoarse(work: FaceWork, id: string, run: number, from: number, to: number): ClutterItem | null {
  const { grid } = work.strip;
  const heights = rippleHeights(work, run);
  const sorted = heights.slice().sort();
  const usual = sorted[sorted.length >> 1];
  const first = nearestColumn(grid, from - BEYOND);
  const near = Array.from(heights.subarray(first, nearestColumn(grid, to + BEYOND) + 1));
  const stretch = longestStretch(
    near.map((height) => height > COARSE_FROM * usual),
    Math.round(BRIDGE * grid.perMm),
  );
  if (!stretch || (stretch.last - stretch.first) / grid.perMm < SHORTEST) return null;
  const start = columnX(grid, first + stretch.first);
  const end = columnX(grid, first + stretch.last);
  const count = Math.ceil((end - start) / 2);
  const spans = Array.from({ length: count + 1 }, (_, n) => {
    const x = start + ((end - start) * n) / count;
    return { x, ...visibleRun(work, run, x) };
  });
  const low = Math.min(...spans.map((span) => span.low));
  const high = Math.max(...spans.map((span) => span.high));
  return {
    id,
    face: work.face,
    kind: "coarse-ripple",
    start,
    end,
    across: (low + high) / 2,
    outline: bandOutline(spans, 0.5 / grid.perMm),
  };
}

/**
 * A stretch of strong but sound ripples on a run, `length` mm long, `severity` (0.8 to 1.8) times higher than usual on top
 * of their own height: the hand slowed down or the arc was long. It tempts to call an irregular surface or a restart.
 */
export const coarseRipple: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("ripple");
  const from = request.x;
  const to = request.x + Math.max(8, request.length);
  const ends = drawEnds(draw, to - from, [2, 4], [4, 9]);
  const envelope = unevenEnvelope(from, to, ends, 1, draw.seed());
  const gain = clamp(request.severity, 0.8, 1.8);
  return {
    id: request.id,
    plan(work) {
      const run = work.plan.runs[runIndex(work, request)];
      forColumns(work.strip.grid, from, to, (i, x) => {
        const share = envelope(x);
        run.ripple[i] *= 1 + GAIN * gain * share;
        run.raggedMinus[i] *= 1 + 0.3 * share;
        run.raggedPlus[i] *= 1 + 0.3 * share;
      });
    },
    clutter: (work) => measuredCoarse(work, request.id, runIndex(work, request), from, to),
  };
};
