import { clamp, ease, hypot, mix } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2, value1 } from "../../surface";
import { type Colour, mixMaterial } from "../field";
import { boxAround, patchesOf } from "../plate/patches";
import type { FaceWork, Feature, FeatureBuilder } from "../work";
import { clutterFrom, emptyFootprint, type Footprint, leaveTrace } from "./footprint";
import { grainOf } from "./grain";
import { boxOf, drawByHand, type HandLine, visitAlong } from "./hand-line";
import { type MarkShape, placeShape } from "./mark-shapes";
import { besideToe } from "./place";
import { CLUTTER_TONES as TONES } from "./tones";

/** A swath that a glove wiped over the mark; angle in radians, lengths in mm. */
interface Wipe {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  readonly half: number;
  readonly left: number;
  readonly seed: number;
}

interface Chalk {
  readonly lines: readonly HandLine[];
  /** Half width of the stick. */
  readonly half: number;
  /** How hard it was pressed, 0..1.3. */
  readonly pressure: number;
  readonly colour: Colour;
  readonly wipe: Wipe | null;
  readonly seed: number;
}

/** Grains of chalk stand this far above the metal, mm. */
const THICK = 0.008;
/** The most that chalk covers of a pixel, and what its dust covers where no grain was rubbed off. */
const MOST = 0.74;
const DUST = 0.13;
/** What a glove leaves is rubbed into the metal, and seen more than as much loose chalk. */
const WIPED = 1.5;
/** A grain of chalk is as large as this, mm: single pixels of rolled plate catch none. */
const SOFT = 0.13;
/** Chalk is so much paler than plate that it is seen where other things would not be: its cover counts so much more. */
const TRACED = 1.2;

/** What is left at a place of a wiped mark, 0..1; its edges are as uneven as a glove. */
function leftBy(wipe: Wipe | null, x: number, y: number): number {
  if (!wipe) return 1;
  const along = (x - wipe.x) * Math.cos(wipe.angle) + (y - wipe.y) * Math.sin(wipe.angle);
  const across = -(x - wipe.x) * Math.sin(wipe.angle) + (y - wipe.y) * Math.cos(wipe.angle);
  const ragged =
    across + 1.6 * gradient1(along / 9, wipe.seed) + 0.8 * gradient2(along / 4, across / 1.1, wipe.seed + 1);
  const wiped = ease(wipe.half, 0.55 * wipe.half, Math.abs(ragged));
  return 1 - wiped * (1 - wipe.left * (1 + 0.8 * gradient2(along / 12, across / 0.9, wipe.seed + 2)));
}

/** How much chalk a line leaves on the high grain that the stick slid over. */
function drag(work: FaceWork, chalk: Chalk, line: HandLine, footprint: Footprint): void {
  const { half, pressure, seed } = chalk;
  // where the widest edge of the body has run out
  const reach = 1.75 * half;
  visitAlong(work, line, reach, (field, box) => {
    const fine = grainOf(field, box, 0.3);
    const wide = grainOf(field, box, 1.3, SOFT);
    return (k, x, y, off, along) => {
      const edge = half * (1 + 0.16 * gradient1(along / 3.1, seed) + 0.1 * gradient1(along / 0.9, seed + 1));
      // a stick has no sharp border: what lies there gets less and less
      const body = ease(1.2 * edge, 0.35 * edge, Math.abs(off + 0.18 * half * gradient1(along / 6, seed + 2)));
      const ends = ease(-0.5, 1.2, along + 0.5 * value1(off / 0.5, seed + 3)) * ease(-0.6, 2.2, line.length - along);
      const pressed = pressure * (0.82 + 0.3 * gradient1(along / 5.5, seed + 4));
      const facet = 0.5 * value1(off / 0.42, seed + 5) * (0.6 + 0.4 * gradient1(along / 7, seed + 6));
      const grit = 0.7 * gradient2(x / 0.34, y / 0.34, seed + 7) + 0.6 * gradient2(x / 0.9, y / 0.9, seed + 8);
      const caught = 0.2 * fine(k) + 0.75 * wide(k) + grit + facet;
      const left = leftBy(chalk.wipe, x, y);
      // grains rubbed off on what stands high, and between them the dust that fell from the stick
      const grains = ease(-0.4, 3.2, caught + 2.1 * pressed + 0.9 * (body - 1));
      // a glove spreads them
      const rubbed = left < 1 ? mix(grains, 0.85 * Math.min(1, pressed), 0.6 * (1 - left)) : grains;
      const dust = DUST * (0.8 + 0.5 * gradient2(x / 1.7, y / 1.7, seed + 9)) * Math.min(1, pressed + 0.3);
      const share = body * ends * Math.min(1, WIPED * left) * Math.min(MOST, dust + (1 - dust) * MOST * rubbed);
      if (share < 0.01) return;
      mixMaterial(field, k, chalk.colour, 0.92, 0, share);
      field.z[k] += THICK * share;
      field.brush[k] *= 1 - share;
      leaveTrace(footprint, field, x, y, TRACED * share);
    };
  });
}

/** Dust that a glove carried out of the mark, in streaks along its way; `reach` mm to both sides of where it wiped. */
function smear(work: FaceWork, chalk: Chalk, wipe: Wipe, reach: number): void {
  const c = Math.cos(wipe.angle);
  const s = Math.sin(wipe.angle);
  // the streaks fade out before the box ends, or its sides would be seen
  const far = hypot(reach, 1.05 * wipe.half);
  const box = boxAround(wipe.x, wipe.y, far);
  for (const field of patchesOf(work)) {
    const wide = grainOf(field, box, 0.8, SOFT);
    forEachPixel(field.grid, box, (k, x, y) => {
      const along = (x - wipe.x) * c + (y - wipe.y) * s;
      const across = -(x - wipe.x) * s + (y - wipe.y) * c;
      const swath =
        ease(1.05 * wipe.half, 0.4 * wipe.half, Math.abs(across)) * ease(reach, 0.35 * reach, Math.abs(along));
      if (swath <= 0) return;
      const streak =
        0.5 + 0.5 * value1(across / 0.8, wipe.seed + 4) + 0.6 * gradient2(along / 8, across / 1.2, wipe.seed + 5);
      const share = 0.17 * swath * clamp(streak, 0, 1) * ease(-1.2, 0.8, wide(k));
      if (share > 0.004) mixMaterial(field, k, chalk.colour, 0.85, 0.05, share);
    });
  }
}

function drawChalk(
  random: RandomStream,
  shape: MarkShape,
  corners: ReturnType<typeof placeShape>,
  severity: number,
): Chalk {
  const isWiped = random.chance(shape === "circle" ? 0.8 : 0.3);
  const lines = corners.map((line) => drawByHand(random, line, { sway: 0.55, tremor: 0.16 }));
  const [first] = lines;
  const hold = first.points[random.integer(first.points.length)];
  return {
    lines,
    half: random.uniform(0.9, 1.7),
    pressure: clamp(severity, 0.25, 1.3) * random.uniform(0.9, 1.1),
    colour: random.chance(0.7) ? TONES.chalkWhite : TONES.chalkYellow,
    wipe: isWiped
      ? {
          x: hold[0],
          y: hold[1],
          angle: random.normal(0, 0.5),
          half: random.uniform(5, 9),
          left: random.uniform(0.15, 0.5),
          seed: random.seed(),
        }
      : null,
    seed: random.seed(),
  };
}

/** How far outside the toe a mark is made when no place is asked for: a circle is drawn round something on the toe. */
const OUT: Readonly<Partial<Record<MarkShape, number>>> = { circle: 0, "length-tick": 1.5, stroke: 2.6 };

/**
 * Chalk: `variant` stroke, tick, arrow, circle (most are half wiped off) or length-tick, `length` mm large, `severity`
 * 0.3 to 1.2 how hard it was pressed. It catches on high grain only and hides nothing.
 */
export const chalkMark: FeatureBuilder = (request, random): Feature => {
  const shape = (request.variant ?? "stroke") as MarkShape;
  const size = Math.max(6, request.length);
  const footprint = emptyFootprint();
  return {
    id: request.id,
    paint(work) {
      const place = besideToe(work, request, OUT[shape] ?? 2 + size / 2);
      const draw = random.child("chalk");
      const chalk = drawChalk(draw, shape, placeShape(draw, shape, size, place), request.severity);
      for (const line of chalk.lines) drag(work, chalk, line, footprint);
      if (!chalk.wipe) return;
      const { x0, x1, y0, y1 } = boxOf(
        chalk.lines.flatMap(({ points }) => points),
        5,
      );
      smear(work, chalk, chalk.wipe, 0.5 * Math.max(x1 - x0, y1 - y0));
    },
    clutter: (work) => clutterFrom(work, request.id, "chalk-mark", footprint),
  };
};
