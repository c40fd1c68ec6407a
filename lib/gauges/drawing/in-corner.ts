import type { Mm } from "../../math";
import { GUIDE_HALF, LEG_BODY, SHOULDERS } from "../body";
import type { BladePlacement } from "../fillet-blade";
import { GAUGES } from "../kinds";
import { lensOver, millimetreScale, type Track, tenthsVernier } from "./scales";
import { arc, type Corner, type Drawing, disc, label, roundedBox, shape, stacked, thumbScrew } from "./shapes";

const { sole, nose, edge } = LEG_BODY;
/** The beam over the slide carries the main scale from here on. */
const LEG_NOUGHT = 40;
const SLIDE_TOP = 5.4;
const THROAT_NOUGHT = 52;
const SLIDE_HALF = 2.6;
/** Where the bevel of a knife edge ends, mm behind its front and over the plate. */
const BEVEL: Corner = [edge.height / Math.tan((edge.bevel * Math.PI) / 180), edge.level + edge.height];

const fromCorner = (along: Mm): Mm => along / Math.SQRT2;

function rangeOf() {
  const { range } = GAUGES["fillet-gauge"];
  if (range === null) throw new Error("a fillet gauge has a scale");
  return range;
}

/** The end for legs: sole and nose on one bracket, and a slide that runs along the plate to the toe. */
export function drawLegGauge(position: Mm, end: Mm): Drawing {
  const range = rangeOf();
  const main: Track = { origin: [LEG_NOUGHT, SLIDE_TOP], along: [1, 0], out: [0, 1] };
  const vernier: Track = { ...main, out: [0, -1] };
  const bracket: readonly Corner[] = [
    [0, nose.from],
    [0, nose.to],
    [2.5, nose.to + 3],
    [6, 36],
    [30, 36],
    [sole.to, 31],
    [sole.to, 17],
    [73, 17],
    [74.5, 15.5],
    [74.5, SLIDE_TOP],
    [sole.to, SLIDE_TOP],
    [sole.to, 0],
    [sole.from, 0],
    [sole.from, 18],
    ...arc([sole.from - 6, 18], 6, 0, 90, 10),
    [6, 24],
    [3, nose.from],
  ];
  const slide: readonly Corner[] = [
    [end, edge.level],
    [end + BEVEL[0], BEVEL[1]],
    [end + BEVEL[0] + 4, SLIDE_TOP],
    [end + 55, SLIDE_TOP],
    [end + 55, edge.level],
  ];
  const grip = roundedBox(end + 51, edge.level + 0.2, end + 56, 7.6, 0.8);
  // the slide runs behind the foot, in front of the beam's lower edge
  const foot: readonly Corner[] = [
    [sole.from, 0],
    [sole.to, 0],
    [sole.to, 8],
    [sole.from, 8],
  ];
  return stacked(
    lensOver(main, position),
    shape("body", bracket),
    shape("bore", disc([26, 30], 2.6)),
    millimetreScale(main, range.lowest, range.highest),
    label("LEG", [29, 23], 2.1),
    label("mm", [71, 14.2], 1.5),
    label("1/10", [31, 14.2], 1.5),
    shape("moving", slide),
    shape("moving", grip),
    tenthsVernier(vernier, position),
    shape("body", foot),
    thumbScrew([29, 10.5], 2.6, 40),
  );
}

/** The end for throats: two shoulders at 45 degrees and a slide along the bisector between them. */
export function drawThroatGauge(position: Mm, end: Mm): Drawing {
  const range = rangeOf();
  const main: Track = { origin: [SLIDE_HALF, THROAT_NOUGHT], along: [0, 1], out: [1, 0] };
  const vernier: Track = { ...main, out: [-1, 0] };
  const slide: readonly Corner[] = [
    [-SLIDE_HALF, end + 5],
    [-0.8, end + 2],
    [-0.8, end],
    [0.8, end],
    [0.8, end + 2],
    [SLIDE_HALF, end + 5],
    [SLIDE_HALF, end + 90],
    [-SLIDE_HALF, end + 90],
  ];
  return stacked(
    lensOver(main, position),
    shape("body", shouldered(86, GUIDE_HALF)),
    shape("recess", roundedBox(-SLIDE_HALF - 0.5, 26, SLIDE_HALF, 86, 0.05)),
    millimetreScale(main, range.lowest, range.highest),
    label("mm", [6.3, 81.6], 1.5),
    label("1/10", [-6.4, 81.6], 1.4),
    label("THROAT", [-11.5, 32], 2.1),
    shape("moving", slide),
    shape("moving", roundedBox(-5, end + 89.4, 5, end + 92.6, 0.8)),
    tenthsVernier(vernier, position),
    thumbScrew([-6.3, 44], 2.4, 110),
  );
}

/** Outline of a plate that stands in the corner on two shoulders, narrowing to a column `half` mm wide each side. */
function shouldered(top: Mm, half: Mm): readonly Corner[] {
  const inner = fromCorner(SHOULDERS.from);
  const outer = fromCorner(SHOULDERS.to);
  const right: readonly Corner[] = [
    [9, 26],
    [inner - 1.2, inner + 3],
    [inner, inner],
    [outer, outer],
    [outer, outer + 10],
    [half + 4, outer + 16],
    [half, outer + 20],
    [half, top - 2],
    [half - 2, top],
  ];
  return [...right, ...right.map(([u, w]): Corner => [-u, w]).reverse()];
}

/** One fillet blade: a nib at its size between a back on one plate and a sole on the other, or between two shoulders. */
export function drawBlade({ use, size }: Pick<BladePlacement, "use" | "size">): Drawing {
  return use === "leg" ? legBlade(size) : throatBlade(size);
}

function legBlade(size: Mm): Drawing {
  const outline: readonly Corner[] = [
    [0, nose.from],
    [0, 30],
    ...arc([8, 31], 8, 180, 90, 8),
    [31, 39],
    ...arc([31, 35], 4, 90, 0, 8),
    [sole.to, 0],
    [sole.from, 0],
    [sole.from - 0.1, edge.level],
    [size, edge.level],
    [size + BEVEL[0], BEVEL[1]],
    [size + BEVEL[0] + 2, 5],
    [20, 8],
    [21, 17],
    ...arc([17, 17], 4, 0, 90, 8),
    [4, 21],
  ];
  return stacked(null, shape("body", outline), shape("bore", disc([29, 33], 2.4)), label(`z ${size}`, [15, 30], 4.2));
}

function throatBlade(size: Mm): Drawing {
  const inner = fromCorner(SHOULDERS.from);
  const outer = fromCorner(SHOULDERS.to);
  const right: readonly Corner[] = [
    [0.8, size],
    [0.8, size + 1],
    [3.2, size + 4],
    [4.5, 20],
    [inner - 1.2, inner + 5],
    [inner, inner],
    [outer, outer],
    [outer, outer + 9],
    ...arc([outer - 5, outer + 14], 5, 0, 90, 8),
  ];
  return stacked(
    null,
    shape("body", [...right, ...right.map(([u, w]): Corner => [-u, w]).reverse()]),
    shape("bore", disc([13, 35], 2.4)),
    label(`a ${size}`, [-3, 31], 4.2),
  );
}
