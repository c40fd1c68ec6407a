import { clamp, ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1 } from "../../surface";
import { mixMaterial } from "../field";
import { measureOverlap } from "../measure";
import { forColumns, moveToe, outerRun } from "../runs/edit";
import type { FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { TONES } from "./tones";
import { drawEnds, evenedOut, largestAlong, unevenEnvelope } from "./uneven-ends";
import { alongColumns, weldBorder } from "./weld-border";

/** The edge reaches out further than this over the sound toe's line, mm. */
const THRESHOLD = 0.5;
const BRIDGE = 2;
/** Beyond this the edge is a rolled lip instead of a wetted toe. */
const ROLLED_EXPONENT = 6.5;
/** The section changes over this length before and after the rolled metal, mm. */
const EASED = 3;
const CREASE_DEPTH = 0.12;
const CREASE_HALF = 0.14;
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
    const spacing = clamp(random.logNormal(4.2, 0.4), 2, 9);
    tongues.push({
      x: x + spacing / 2,
      half: spacing * random.uniform(0.75, 1.15),
      reach: random.uniform(0.5, 1),
    });
    x += spacing;
  }
  return tongues;
}

const tongueAt = (tongues: readonly Tongue[], x: number): number =>
  tongues.reduce((most, t) => {
    const along = (x - t.x) / t.half;
    return Math.abs(along) >= 1 ? most : Math.max(most, t.reach * (1 - along * along) ** 0.6);
  }, 0.3);

/**
 * Overlap: weld metal rolled out over the plate along one toe in uneven tongues, with a tight crease under its edge.
 * `severity` = largest reach over the plate, mm (a short one cannot reach far: at most 0.9 mm + 0.13 of its length). Truth: `measureOverlap`, reach more than 0.5 mm; width = largest reach.
 */
export const buildOverlap: FeatureBuilder = (request, random) => {
  const { side } = request;
  const from = request.x - 2.5;
  const to = request.x + request.length + 2.5;
  const tongues = drawTongues(random, from, to);
  const seed = random.seed();
  const envelope = unevenEnvelope(from, to, drawEnds(random, request.length, [3, 5], [5, 9]), 0.6, seed);
  const uneven = (x: number) => envelope(x) * tongueAt(tongues, x) * (1 + 0.1 * gradient1(x / 1.6, seed + 2));
  const most = largestAlong(from, to, uneven);
  const largest = Math.min(request.severity, 0.9 + 0.13 * request.length);
  const reachAt = (x: number) => (largest * uneven(x)) / most;
  const rolled = evenedOut((x) => ease(0.1, 1.1, reachAt(x)), EASED);
  const shifted = evenedOut(reachAt, 0.7);
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
        run.height[i] *= 1 + 0.12 * share;
        ragged[i] *= 1 + 0.4 * share;
      });
    },
    cut(work) {
      const { strip } = work;
      const border = weldBorder(work, side);
      const box = { x0: from, x1: to, y0: side < 0 ? -20 : 0, y1: side < 0 ? 0 : 20 };
      forEachPixel(strip.grid, box, (k, x, y) => {
        const share = rolled(x);
        const out = (y - alongColumns(work, border, x)) * side;
        if (share < 0.05 || !(out > -LIP && out < 1.2)) return;
        strip.clean[k] = Math.max(strip.clean[k], 0.8 * share);
        // tight, but not drawn with a pen: here and there the lip did wet the plate
        const tight = clamp(0.75 + 0.7 * gradient1(x / 2.7, seed + 5), 0.1, 1);
        const crease = share * tight * Math.max(0, 1 - Math.abs(out - 0.05) / CREASE_HALF);
        strip.z[k] -= CREASE_DEPTH * crease;
        if (crease > 0) creases.push({ k, share: crease });
        if (out < 0) lips.push({ k, share: share * ease(-LIP, -0.35, out) });
      });
    },
    paint(work) {
      const { strip, noise } = work;
      for (const { k, share } of lips) {
        const skin = share * clamp(0.55 + 0.5 * noise.patchFine[k], 0.1, 0.8);
        mixMaterial(strip, k, TONES.skin, 0.5, 0.5, skin);
      }
      for (const { k, share } of creases) {
        mixMaterial(strip, k, TONES.gap, 0.8, 0, 0.85 * ease(0.2, 0.8, share));
        strip.brush[k] *= 1 - share;
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
