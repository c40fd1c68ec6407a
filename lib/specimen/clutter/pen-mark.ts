import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { gradient1, gradient2, value1 } from "../../surface";
import { type Colour, type Field, mixColour, mixLit } from "../field";
import { toeAt } from "../runs/edit";
import type { Point } from "../truth";
import type { FaceWork, Feature, FeatureBuilder } from "../work";
import { clutterFrom, emptyFootprint, type Footprint, leaveTrace } from "./footprint";
import { grainOf } from "./grain";
import { drawByHand, type HandLine, visitAlong } from "./hand-line";
import { placeNumber, placeShape } from "./mark-shapes";
import { besideToe, overWeld } from "./place";
import { CLUTTER_TONES as TONES } from "./tones";

/** What is in the pen: paint covers and fills the grain, ink only stains. */
interface Pen {
  readonly colour: Colour;
  readonly isPaint: boolean;
  /** Half width of the tip, mm. */
  readonly half: number;
  /** How full it is: an empty one skips. */
  readonly full: number;
  readonly seed: number;
}

const PAINTS = [TONES.paintWhite, TONES.paintWhite, TONES.paintYellow, TONES.paintRed];
const INKS = [TONES.inkBlack, TONES.inkBlack, TONES.inkBlue];
/** Paint is this thick, mm. */
const THICK = 0.018;

function takePen(random: RandomStream, full: number): Pen {
  const isPaint = random.chance(0.55);
  return {
    colour: random.pick(isPaint ? PAINTS : INKS),
    isPaint,
    half: isPaint ? random.uniform(0.8, 1.4) : random.uniform(0.3, 0.75),
    full: clamp(full, 0.3, 1.3),
    seed: random.seed(),
  };
}

/** How much of each pixel of a patch the earlier lines of a mark have covered. */
type Coverage = Map<Field, Map<number, number>>;

/** Over this much of its end a line gets thinner, mm, and this share of its width is left. */
const TAPER = { over: 5, left: 0.45 };

/**
 * One line of the pen: set down full, thinner where the hand was quick, starved and narrow towards its end. Bristles or felt
 * leave streaks along it; the tip jumps over creases and the dips at toes.
 */
function drawLine(work: FaceWork, pen: Pen, line: HandLine, laidBefore: Coverage, footprint: Footprint): void {
  const { half, full, seed, isPaint } = pen;
  const least = isPaint ? 0.3 : 0.6;
  const taper = Math.min(TAPER.over, 0.5 * line.length);
  visitAlong(work, line, 1.6 * half, (field, box) => {
    const covered = laidBefore.get(field) ?? new Map<number, number>();
    laidBefore.set(field, covered);
    const fine = grainOf(field, box, 0.3);
    const wide = grainOf(field, box, 1.1);
    const dips = grainOf(field, box, 2.4);
    return (k, x, y, off, along) => {
      const left = line.length - along;
      const quick = 1 - 0.2 * ease(0, 0.5 * line.length, along) + 0.14 * gradient1(along / 4.4, seed);
      const thin = 1 - (1 - TAPER.left) * ease(taper, -0.5, left);
      const bleed = isPaint ? 0.09 : 0.14;
      const ragged = 1 + bleed * gradient2(x / 0.5, y / 0.5, seed + 1) + 0.07 * gradient2(x / 1.6, y / 1.6, seed + 5);
      const edge = half * quick * thin * ragged;
      const outward = Math.abs(off) / edge;
      if (outward >= 1.15) return;
      const starved =
        ease(0.3, 1.1, along / line.length) * (1.3 - full) * (0.75 + 0.6 * gradient1(along / 3.5, seed + 2));
      // beyond its ends streaks run straight on, not round them
      const over = Math.max(0, -along, -left);
      const beside = over > 0 ? Math.sign(off) * Math.sqrt(Math.max(0, off * off - over * over)) : off;
      // streaks keep their place across the tip and come and go along the line
      const bristle =
        value1(beside / 0.24 + 0.35 * gradient1(along / 6, seed + 6), seed + 3) *
        (0.7 + 0.5 * gradient1(along / 2.7, seed + 7));
      const streak = 0.5 * bristle + 0.3 * gradient2(x / 0.4, y / 0.4, seed + 4);
      // the tip slides over creases and hollows, and the less there is in it the more it skips
      const reached =
        0.5 * wide(k) + 0.25 * fine(k) + 0.2 * Math.min(0, dips(k)) + 0.75 * streak - 2.2 * Math.max(0, starved);
      const body = ease(1.15, 0.8, outward) * ease(-1.5, -0.35, reached);
      if (body < 0.02) return;
      // thicker where it was set down and where the tip pressed it aside; thin paint lets the metal through
      const pooled = 0.16 * ease(2.2 * half, -half, along) + 0.07 * ease(0.55, 0.95, outward);
      const laid = clamp(
        0.88 + 0.3 * streak + 0.22 * gradient2(x / 2.6, y / 2.6, seed + 8) + pooled - 0.35 * Math.max(0, starved),
        least,
        0.99,
      );
      const whole = body * laid;
      // where lines of a mark cross, the later one adds only what the earlier one left open: no disc shows through it
      const before = covered.get(k) ?? 0;
      if (whole <= before) return;
      covered.set(k, whole);
      const share = (whole - before) / (1 - before);
      if (isPaint) {
        const light = 0.94 + 0.1 * streak - 0.12 * pooled;
        mixLit(field, k, pen.colour, light, 0.5 + 0.12 * streak, 0, 0.96 * share);
        field.z[k] += THICK * (1 + 0.1 * laid) * (whole - before);
        field.brush[k] *= 1 - share;
      } else {
        mixColour(field, k, pen.colour, 0.94 * share);
        field.metal[k] *= 1 - 0.6 * share;
      }
      leaveTrace(footprint, field, x, y, whole);
    };
  });
}

/** A number of a weld, a plate or a day: never the number of the specimen. */
const figures = (random: RandomStream): string =>
  `${1 + random.integer(9)}${random.chance(0.6) ? random.integer(10) : ""}`;

/**
 * Paint marker or felt pen: `variant` line-across (over the weld from plate to plate; in black it tempts to call a crack), number (a number beside the weld) or stroke; `severity` 0.3 to 1.2 how full the pen is.
 */
export const penMark: FeatureBuilder = (request, random): Feature => {
  const shape = request.variant ?? "line-across";
  const footprint = emptyFootprint();
  return {
    id: request.id,
    paint(work) {
      const draw = random.child("pen");
      const size = Math.max(6, request.length);
      const pen = takePen(draw, request.severity);
      const covered: Coverage = new Map();
      for (const corners of cornersOf(work, draw, shape, size))
        drawLine(work, pen, drawByHand(draw, corners, { sway: 0.35, tremor: 0.07 }), covered, footprint);
    },
    clutter: (work) => clutterFrom(work, request.id, "pen-mark", footprint),
  };

  function cornersOf(work: FaceWork, draw: RandomStream, shape: string, size: number): Point[][] {
    if (shape === "number") {
      const height = clamp(size * 0.5, 5, 11);
      return placeNumber(work, draw, figures(draw), height, besideToe(work, request, 2 + height / 2));
    }
    if (shape === "stroke") return placeShape(draw, "stroke", size, besideToe(work, request, draw.uniform(1, 4)));
    const place = overWeld(work, request);
    const weld = toeAt(work, 1, place.x, 2) - toeAt(work, -1, place.x, 2);
    return placeShape(draw, "line-across", weld + 2 * draw.uniform(3.5, 11), place);
  }
};
