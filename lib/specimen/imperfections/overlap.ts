import { clamp, ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, fractal1, type Grid, gradient1, nearestColumn } from "../../surface";
import { mixMaterial } from "../field";
import { measureOverlap } from "../measure";
import { forColumns, moveToe, outerRun } from "../runs/edit";
import type { FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { TONES } from "./tones";
import { drawEnds, evenedOut, largestAlong, unevenEnvelope } from "./uneven-ends";
import { alongColumns, type WeldBorder, weldBorder } from "./weld-border";

/** The edge reaches out further than this over the sound toe's line, mm. */
const THRESHOLD = 0.5;
const BRIDGE = 2;
/** Beyond this the edge is a rolled lip instead of a wetted toe. */
const ROLLED_EXPONENT = 6.5;
/** A bead flatter than this has no metal to roll out, mm. */
const LEAST_CROWN = 0.85;
/** The section changes over this length before and after the rolled metal, mm. */
const EASED = 3;
/** Crease under the lip, mm: how deep, and half its width from tight to gaping. */
const CREASE_DEPTH = 0.1;
const CREASE_HALF = [0.1, 0.2] as const;
/** Reach of a lip that hardly overhangs and of one that does, mm. */
const OVERHANGS = { from: 0.5, to: 2.4 };
/** Length behind the edge over which the lip's skin is smooth and oxidised, mm. */
const LIP = 1.1;

/** One tongue of metal that rolled out, mm. */
interface Tongue {
  readonly x: number;
  readonly half: number;
  readonly reach: number;
}

/** Draws the tongues: uneven in length and reach, each overlapping its neighbours. */
function drawTongues(random: RandomStream, from: number, to: number): Tongue[] {
  const tongues: Tongue[] = [];
  for (let x = from - 1; x < to; ) {
    const spacing = clamp(random.logNormal(5.4, 0.45), 2.4, 12);
    tongues.push({
      x: x + spacing / 2,
      half: spacing * random.uniform(0.85, 1.4),
      reach: random.uniform(0.45, 1),
    });
    x += spacing;
  }
  return tongues;
}

const tongueAt = (tongues: readonly Tongue[], x: number): number =>
  tongues.reduce((most, t) => {
    const along = (x - t.x) / t.half;
    return Math.abs(along) >= 1 ? most : Math.max(most, t.reach * (1 - along * along));
  }, 0.3);

/** Nothing is changed further outside the border than this, mm. */
const BESIDE = 1.2;

/** A box round what lies beside the border from one x to another. */
function besideBorder(grid: Grid, border: WeldBorder, from: number, to: number) {
  const there = border
    .subarray(Math.max(0, nearestColumn(grid, from) - 1), nearestColumn(grid, to) + 2)
    .filter((y) => !Number.isNaN(y));
  return { x0: from, x1: to, y0: Math.min(...there) - BESIDE, y1: Math.max(...there) + BESIDE };
}

/**
 * Overlap: weld metal rolled out over the plate along one toe in uneven tongues, with a tight crease under its edge.
 * `severity` = largest reach over the plate, mm (a short one cannot reach far: at most 0.9 mm + 0.13 of its length). Truth: `measureOverlap`, reach more than 0.5 mm; width = largest reach.
 */
export const buildOverlap: FeatureBuilder = (request, random) => {
  const { side } = request;
  const ends = drawEnds(random, request.length, [4, 7], [7, 13]);
  const from = request.x - 0.45 * ends.first - 1.2;
  const to = request.x + request.length + 0.45 * ends.last + 1.2;
  const tongues = drawTongues(random, from, to);
  const seed = random.seed();
  const envelope = unevenEnvelope(from, to, ends, 0.9, seed);
  const uneven = (x: number) => envelope(x) * tongueAt(tongues, x) * (1 + 0.1 * gradient1(x / 1.6, seed + 2));
  const largest = Math.min(request.severity, 0.9 + 0.13 * request.length);
  const even = evenedOut(uneven, 1);
  const most = largestAlong(from, to, even);
  const shifted = (x: number) => (largest * even(x)) / most;
  const rolled = evenedOut((x) => ease(0.1, 1.2, shifted(x)), EASED);
  const creases: { k: number; share: number }[] = [];
  const lips: { k: number; share: number }[] = [];

  return {
    id: request.id,
    plan(work) {
      const run = outerRun(work.plan, side);
      const ragged = side < 0 ? run.raggedMinus : run.raggedPlus;
      const exponent = side < 0 ? run.exponentMinus : run.exponentPlus;
      forColumns(work.strip.grid, from - EASED, to + EASED, (i, x) => {
        const share = rolled(x);
        const edge = run.centre[i] + side * run.halfWidth[i];
        moveToe(run, side, i, edge + side * shifted(x), 1);
        exponent[i] = mix(exponent[i], ROLLED_EXPONENT, share);
        run.height[i] = mix(run.height[i], Math.max(1.12 * run.height[i], LEAST_CROWN), share);
        ragged[i] *= 1 + 0.4 * share;
      });
    },
    cut(work) {
      const { strip } = work;
      const border = weldBorder(work, side);
      forEachPixel(strip.grid, besideBorder(strip.grid, border, from, to), (k, x, y) => {
        const out = (y - alongColumns(work, border, x)) * side;
        if (!(out > -LIP && out < BESIDE)) return;
        const share = rolled(x);
        if (share < 0.05) return;
        strip.clean[k] = Math.max(strip.clean[k], 0.8 * share);
        // it comes and goes: here and there the lip did wet the plate
        const overhangs = ease(OVERHANGS.from, OVERHANGS.to, shifted(x));
        const tight = clamp(0.1 + 0.7 * overhangs + 1.1 * fractal1(x / 3.6, seed + 5, 2), 0, 1);
        const half = mix(...CREASE_HALF, clamp(0.3 + 0.9 * gradient1(x / 1.9, seed + 7), 0, 1));
        const at = 0.02 + 0.05 * gradient1(x / 1.3, seed + 8);
        const crease = share * tight * Math.max(0, 1 - Math.abs(out - at) / half);
        strip.z[k] -= CREASE_DEPTH * crease;
        if (crease > 0) creases.push({ k, share: crease });
        if (out < 0) lips.push({ k, share: share * ease(-LIP, -0.35, out) });
      });
    },
    paint(work) {
      const { strip, noise } = work;
      for (const { k, share } of lips) {
        const skin = share * clamp(0.3 + 0.6 * noise.patchFine[k], 0, 0.6);
        mixMaterial(strip, k, TONES.skin, 0.5, 0.5, skin);
      }
      for (const { k, share } of creases) {
        mixMaterial(strip, k, TONES.shade, 0.7, 0.1, 0.5 * ease(0.25, 0.95, share));
        strip.brush[k] *= 1 - 0.7 * share;
      }
    },
    measure(work) {
      const found = measureOverlap(work, {
        side,
        range: { from: from - EASED, to: to + EASED },
        threshold: THRESHOLD,
        bridge: BRIDGE,
      });
      return found && truthItem(work, request.id, "overlap", found);
    },
  };
};
