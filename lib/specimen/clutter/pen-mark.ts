import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { gradient1, gradient2, value1 } from "../../surface";
import { type Colour, mixColour, mixMaterial } from "../field";
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

/** One line of the pen: a drop where it was set down, thinner where the hand was quick, starved towards its end. */
function drawLine(work: FaceWork, pen: Pen, line: HandLine, footprint: Footprint): void {
  const { half, full, seed, isPaint } = pen;
  visitAlong(work, line, 1.6 * half, (field, box) => {
    const fine = grainOf(field, box, 0.3);
    const wide = grainOf(field, box, 1.1);
    return (k, x, y, off, along) => {
      const drop = 0.3 * Math.exp(-along / (1.6 * half));
      const quick = 1 - 0.22 * ease(0, 0.5 * line.length, along) + 0.1 * gradient1(along / 4.4, seed);
      const bleed = isPaint ? 0.04 : 0.12;
      const edge = half * (quick + drop) * (1 + bleed * gradient2(x / 0.5, y / 0.5, seed + 1));
      const outward = Math.abs(off) / edge;
      if (outward >= 1.12) return;
      const starved =
        ease(0.35, 1, along / line.length) * (1.25 - full) * (0.7 + 0.7 * gradient1(along / 3.5, seed + 2));
      const streak = 0.4 * value1(off / 0.3, seed + 3) + 0.35 * gradient2(x / 0.4, y / 0.4, seed + 4);
      // the tip slides over creases and hollows, and the less there is in it the more it skips
      const reached = 0.45 * wide(k) + 0.25 * fine(k) + streak - 2.2 * Math.max(0, starved);
      const body = ease(1.12, 0.9, outward) * ease(-1.55, -0.75, reached);
      const ends = ease(0, 0.5 * half, along + half * 0.4) * ease(0, 0.5 * half, line.length + 0.4 * half - along);
      const share = body * ends;
      if (share < 0.02) return;
      const rim = 1 + 0.12 * ease(0.6, 0.95, outward);
      if (isPaint) {
        mixMaterial(field, k, pen.colour, 0.42 + 0.1 * streak, 0, 0.95 * share);
        field.z[k] += THICK * rim * share;
        field.brush[k] *= 1 - share;
      } else {
        mixColour(field, k, pen.colour, clamp(0.78 * rim + 0.1 * streak, 0, 0.93) * share);
        field.metal[k] *= 1 - 0.6 * share;
      }
      leaveTrace(footprint, field, x, y, share);
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
      for (const corners of cornersOf(work, draw, shape, size))
        drawLine(work, pen, drawByHand(draw, corners, { sway: 0.35, tremor: 0.07 }), footprint);
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
