import { clamp, ease } from "../../math";
import { forEachPixel, fractal1, gradient1, gradient2 } from "../../surface";
import { TOE_OXIDE } from "../blemishes";
import { mixColour, mixMaterial } from "../field";
import { drawEnds, type Envelope, unevenEnvelope } from "../imperfections/uneven-ends";
import { alongColumns, weldBorder } from "../imperfections/weld-border";
import { forColumns, outerRun } from "../runs/edit";
import type { FaceWork, Feature, FeatureBuilder } from "../work";
import { clutterFrom, emptyFootprint, type Footprint, leaveTrace } from "./footprint";
import { CLUTTER_TONES as TONES } from "./tones";

interface Toe {
  readonly from: number;
  readonly to: number;
  readonly side: 1 | -1;
  readonly dark: number;
  readonly envelope: Envelope;
  readonly seed: number;
}

/** The bead's edge stands up a little steeper there, well below a rolled one. */
const STEEPER = 0.22;
const STEEPEST = 3.1;

/** A line fainter than this would tempt nobody. */
const LEAST_DARK = 0.42;

function planToe(work: FaceWork, { side, from, to, envelope }: Toe): void {
  const run = outerRun(work.plan, side);
  const exponent = side < 0 ? run.exponentMinus : run.exponentPlus;
  forColumns(work.strip.grid, from, to, (i, x) => {
    const steeper = Math.min(STEEPEST, exponent[i] * (1 + STEEPER * envelope(x)));
    exponent[i] = Math.max(exponent[i], steeper);
  });
}

/** A dark line in the corner between bead and plate: burnt-in oxide and a film of slag, broken, of varying weight. */
function drawToe(work: FaceWork, toe: Toe, footprint: Footprint): void {
  const { strip } = work;
  const { side, from, to, seed } = toe;
  const dark = Math.max(LEAST_DARK, toe.dark * TOE_OXIDE[work.joint.process]);
  const border = weldBorder(work, side);
  const box = { x0: from - 1, x1: to + 1, y0: side < 0 ? -20 : 0, y1: side < 0 ? 0 : 20 };
  forEachPixel(strip.grid, box, (k, x, y) => {
    const out = (y - alongColumns(work, border, x)) * side;
    if (!(out > -1 && out < 1.4)) return;
    const weight =
      toe.envelope(x) *
      clamp(0.66 + 0.75 * fractal1(x / 5.2, seed, 3, 0.6) + 0.3 * gradient1(x / 0.8, seed + 4), 0, 1.1);
    if (weight < 0.03) return;
    const wander = 0.05 + 0.05 * gradient1(x / 1.3, seed + 5);
    const half = 0.07 + 0.19 * weight * (0.65 + 0.6 * gradient1(x / 2.3, seed + 6));
    const line = ease(1.35, 0.55, Math.abs(out - wander) / half) * Math.min(1, 1.15 * weight) * dark;
    const breath =
      ease(1, 0.1, Math.abs(out - 0.1) / (out > 0.1 ? 1.2 : 0.7)) *
      weight *
      clamp(0.45 + 0.7 * gradient2(x / 1.6, y / 0.8, seed + 7), 0, 1);
    mixColour(strip, k, TONES.toeOxide, 0.42 * dark * breath);
    const seen = Math.min(1, line * (0.4 + 0.6 * weight));
    mixMaterial(strip, k, TONES.toeLine, 0.55, 0.1, 0.92 * seen);
    leaveTrace(footprint, strip, x, y, seen);
  });
}

/**
 * A toe with a tight dark line, fused and without depth, over `length` mm; `severity` 0.35 to 1.2 how dark. It tempts to
 * call undercut or overlap.
 */
export const tightToe: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("toe");
  const from = request.x;
  const to = request.x + Math.max(8, request.length);
  const ends = drawEnds(draw, to - from, [1.5, 3], [4, 9]);
  const toe: Toe = {
    from,
    to,
    side: request.side,
    dark: clamp(request.severity, 0.35, 1.2),
    envelope: unevenEnvelope(from, to, ends, 0.8, draw.seed()),
    seed: draw.seed(),
  };
  const footprint = emptyFootprint();
  return {
    id: request.id,
    plan: (work) => planToe(work, toe),
    paint: (work) => drawToe(work, toe, footprint),
    clutter: (work) => clutterFrom(work, request.id, "tight-toe", footprint),
  };
};
