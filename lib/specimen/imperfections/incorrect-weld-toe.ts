import { clamp, ease, mix } from "../../math";
import { forEachPixel, fractal1, gradient1, sampleAt } from "../../surface";
import { measureSteepToe, plateBeside } from "../measure";
import { forColumns, outerRun } from "../runs/edit";
import type { FaceWork, FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { drawEnds, evenedOut, largestAlong, unevenEnvelope } from "./uneven-ends";
import { alongColumns, columnTable, type WeldBorder, weldBorder } from "./weld-border";

/** Steeper than this over its first 0.6 mm counts, degrees: sound welds reach 58 over a few millimetres. */
const THRESHOLD = 60;
const BRIDGE = 4;
/** Where the flank's height is asked for, mm inside the edge. */
const FLANK = 0.6;
const STEEP_EXPONENT = 6.5;
/** Length before and after the imperfection over which the bead rises, mm. */
const LIFTED_OVER = 13;
/** How far inside the edge the bead is still fuller than it would be, mm. */
const SHOULDER = 3;

/**
 * Incorrect weld toe: along one toe the bead stands up steeply, without a smooth passage, but fused and without reaching
 * out. `severity` = how high the flank stands above the plate 0.6 mm inside its edge, mm (1.25 to 1.7: about 62 to
 * 69 degrees). Truth: `measureSteepToe`, longest stretch steeper than 60 degrees.
 */
export const buildIncorrectWeldToe: FeatureBuilder = (request, random) => {
  const { side } = request;
  const ends = drawEnds(random, request.length, [4, 6], [6, 11]);
  const from = request.x - 0.4 * ends.first;
  const to = request.x + request.length + 0.4 * ends.last;
  const seed = random.seed();
  const envelope = unevenEnvelope(from, to, ends, 0.8, seed);
  const uneven = (x: number) =>
    envelope(x) * (1 + 0.14 * fractal1(x / 7, seed + 2, 2) + 0.05 * gradient1(x / 2, seed + 3));
  const most = largestAlong(from, to, uneven);
  const shareAt = (x: number) => uneven(x) / most;
  // the bead rises and falls slowly: only its flank begins and ends with the imperfection
  const lifted = evenedOut(shareAt, LIFTED_OVER);
  const rolled = evenedOut((x) => ease(0, 0.8, shareAt(x)), 2.5);

  /** How much height is missing at each column 0.6 mm inside the edge, evened out along the weld; mm. */
  function missingHeight(work: FaceWork, border: WeldBorder): (x: number) => number {
    const { grid, z } = work.strip;
    const missing = new Float32Array(grid.columns);
    forColumns(grid, from, to, (i, x) => {
      const inside = border[i] - side * FLANK;
      missing[i] = request.severity - (sampleAt(grid, z, x, inside) - plateBeside(work, side, x)(inside));
    });
    return evenedOut((x) => Math.max(0, alongColumns(work, missing, clamp(x, from, to))) * shareAt(x), 0.9);
  }

  function fillShoulder(work: FaceWork): void {
    const { strip } = work;
    const border = weldBorder(work, side);
    const missing = columnTable(work, missingHeight(work, border), from - 1, to + 1);
    const middle = alongColumns(work, border, (from + to) / 2);
    const box = { x0: from - 1, x1: to + 1, y0: middle - 6, y1: middle + 6 };
    forEachPixel(strip.grid, box, (k, x, y) => {
      const inside = (alongColumns(work, border, x) - y) * side;
      if (inside <= -0.1 || inside >= SHOULDER) return;
      const height = alongColumns(work, missing, x);
      if (height <= 0) return;
      const flank = clamp((inside + 0.1) / (FLANK + 0.1), 0, 1) ** 0.8;
      strip.z[k] += height * flank * (1 - ease(FLANK, SHOULDER, inside));
    });
  }

  return {
    id: request.id,
    plan(work) {
      const run = outerRun(work.plan, side);
      const exponent = side < 0 ? run.exponentMinus : run.exponentPlus;
      forColumns(work.strip.grid, from - LIFTED_OVER, to + LIFTED_OVER, (i, x) => {
        exponent[i] = mix(exponent[i], STEEP_EXPONENT, rolled(x));
        // a bead that stands up at its edge is full to its crown
        const flank = 1 - (1 - FLANK / run.halfWidth[i]) ** STEEP_EXPONENT;
        const full = Math.max(run.height[i], (0.9 * request.severity) / flank);
        run.height[i] = mix(run.height[i], full, lifted(x));
      });
    },
    cut: fillShoulder,
    measure(work) {
      const range = { from: from - 2, to: to + 2 };
      const found = measureSteepToe(work, { side, range, threshold: THRESHOLD, bridge: BRIDGE });
      return found && truthItem(work, request.id, "incorrect-weld-toe", { ...found, width: null });
    },
  };
};
