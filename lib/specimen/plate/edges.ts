import { clamp, ease, tabulate } from "../../math";
import type { RandomStream } from "../../random";
import { columnX, gradient1, gradient2, pixelsIn, rowY } from "../../surface";
import { type Field, mixColour, mixMaterial } from "../field";
import type { FaceWork } from "../work";
import { patchesOf } from "./patches";
import { PLATE_TONES as TONES } from "./tones";

/** How a side of the plate was cut. Lengths in mm, from its nominal line inwards. */
interface EdgeCut {
  /** How far the real edge strays from the line: slowly, and by the tool's own marks with their pitch. */
  readonly strays: number;
  readonly marks: number;
  readonly pitch: number;
  /** Rounding: how wide and how deep; height of the burr. */
  readonly round: readonly [number, number];
  readonly fall: readonly [number, number];
  readonly burr: number;
  /** Reach and strength of burnt scale. */
  readonly burnt: readonly [number, number];
  readonly heat: number;
  /** How much of it is worn bright. */
  readonly worn: number;
}

const CUTS: Readonly<Record<"flame" | "sawn" | "rolled-over" | "burred", EdgeCut>> = {
  flame: {
    strays: 0.2,
    marks: 0.12,
    pitch: 2.1,
    round: [0.6, 1.1],
    fall: [0.25, 0.5],
    burr: 0.03,
    burnt: [1.4, 3.6],
    heat: 0.75,
    worn: 0.25,
  },
  sawn: {
    strays: 0.08,
    marks: 0.04,
    pitch: 0.8,
    round: [0.2, 0.35],
    fall: [0.2, 0.3],
    burr: 0.05,
    burnt: [0, 0],
    heat: 0,
    worn: 0.75,
  },
  "rolled-over": {
    strays: 0.12,
    marks: 0.05,
    pitch: 3.1,
    round: [1.2, 1.9],
    fall: [0.3, 0.5],
    burr: 0,
    burnt: [0, 0],
    heat: 0,
    worn: 0.4,
  },
  burred: {
    strays: 0.12,
    marks: 0.08,
    pitch: 1.9,
    round: [0.25, 0.4],
    fall: [0.2, 0.3],
    burr: 0.13,
    burnt: [0, 0],
    heat: 0,
    worn: 0.6,
  },
};

/** Everything happens within this far of an edge, mm. */
const REACH = 4.6;
/** Beyond a stray edge there is no plate: it falls off this steeply, and what is seen there is the dark under it. */
const BEYOND = 2.2;

/**
 * The four sides of the plate as they were cut, the same on both faces: long sides alike, ends alike, each with its own
 * wander. A sheared side is rolled over on one face and burred on the other. Changes no height further than 3 mm from a side.
 */
export function finishEdges(work: FaceWork): void {
  const { length, width } = work.joint;
  const random = work.bothFaces.child("plate/edges");
  const cuts = random.child("cuts");
  const long = cutOf(cuts.pick(["flame", "flame", "sheared", "sawn"] as const), work, cuts);
  const short = cutOf(cuts.pick(["sawn", "sawn", "flame", "sheared"] as const), work, cuts);
  const half = width / 2;
  const sides = [
    { cut: long, box: { x0: 0, x1: length, y0: half - REACH, y1: half }, along: 0, line: half, inward: -1 },
    { cut: long, box: { x0: 0, x1: length, y0: -half, y1: REACH - half }, along: 0, line: -half, inward: 1 },
    { cut: short, box: { x0: 0, x1: REACH, y0: -half, y1: half }, along: 1, line: 0, inward: 1 },
    { cut: short, box: { x0: length - REACH, x1: length, y0: -half, y1: half }, along: 1, line: length, inward: -1 },
  ] as const;
  const darkened: (() => void)[] = [];
  sides.forEach(({ cut, box, along, line, inward }, n) => {
    const edge = drawEdge(cut, random.child(`side ${n}`));
    for (const field of patchesOf(work)) {
      const { grid } = field;
      const { i0, i1, j0, j1 } = pixelsIn(grid, box);
      if (i0 > i1 || j0 > j1) continue;
      const course =
        along === 0
          ? followEdge(edge, grid.columns, (i) => columnX(grid, i))
          : followEdge(edge, grid.rows, (j) => rowY(grid, j));
      const visit = (reach: number, change: (k: number, n: number, s: number, d: number) => void) => {
        for (let j = j0; j <= j1; j++) {
          const y = rowY(grid, j);
          for (let i = i0, k = j * grid.columns + i0; i <= i1; i++, k++) {
            const n = along === 0 ? i : j;
            const d = ((along === 0 ? y : columnX(grid, i)) - line) * inward;
            // most pixels near an edge are beyond all that it does: they are told before anything is called
            if (d - course.at[n] < reach) change(k, n, along === 0 ? columnX(grid, i) : y, d);
          }
        }
      };
      visit(edgeReach(edge), (k, n, s, d) => shapeEdge(field, k, edge, course, n, s, d));
      darkened.push(() => visit(0.5 / grid.perMm, (k, n, _, d) => darken(field, k, course, n, d)));
    }
  });
  // once all sides have their looks, or one would colour what lies past another
  for (const side of darkened) side();
}

function cutOf(kind: "flame" | "sawn" | "sheared", { face }: FaceWork, random: RandomStream): EdgeCut {
  const isBurredOnCap = random.chance(0.5);
  if (kind !== "sheared") return CUTS[kind];
  return CUTS[(face === "cap") === isBurredOnCap ? "burred" : "rolled-over"];
}

interface Edge extends Omit<EdgeCut, "round" | "fall" | "burnt"> {
  readonly round: number;
  readonly fall: number;
  readonly burnt: number;
  readonly lean: number;
  readonly seed: number;
}

function drawEdge(cut: EdgeCut, random: RandomStream): Edge {
  return {
    ...cut,
    round: random.uniform(...cut.round),
    fall: random.uniform(...cut.fall),
    burnt: random.uniform(...cut.burnt),
    lean: random.normal(0, 0.0007),
    seed: random.seed(),
  };
}

/** What is the same right across an edge, a value per place along it. */
interface Course {
  /** How far the real edge lies inside the nominal line, mm. */
  readonly at: Float32Array;
  readonly torn: Float32Array;
  readonly scorched: Float32Array;
  readonly worn: Float32Array;
}

function followEdge(edge: Edge, count: number, placeOf: (n: number) => number): Course {
  const { seed } = edge;
  const along = (value: (s: number) => number) => tabulate(count, (n) => value(placeOf(n)));
  return {
    at: along((s) => {
      const slow = 0.55 * gradient1(s / 61, seed) + 0.45 * gradient1(s / 17, seed + 1);
      // the tool's marks come unevenly spaced: evenly spaced ones look like the teeth of a zip
      const place = s / edge.pitch + 1.7 * gradient1(s / (4.3 * edge.pitch), seed + 2);
      const marks = 0.5 + 0.6 * gradient1(place, seed + 3) + 0.3 * gradient1(2.7 * place, seed + 4);
      // never outside its nominal line: the plate is no larger than it was ordered
      return Math.max(0, edge.strays * (0.5 + slow) + edge.marks * marks + edge.lean * s);
    }),
    torn: along((s) =>
      clamp(
        0.3 +
          0.8 * gradient1(s / 13, seed + 10) +
          0.7 * gradient1(s / 3.1, seed + 5) +
          0.25 * gradient1(s / 0.7, seed + 6),
        0,
        1.4,
      ),
    ),
    scorched: along((s) => 0.9 * gradient1(s / 11, seed + 8)),
    worn: along((s) => 0.55 + 0.6 * gradient1(s / 9, seed + 9)),
  };
}

/** Further inside than this an edge is not worn, and has no burr, mm. */
const WORN = 0.55;
const BURRED = 0.7;

/** Further inside than this an edge changes nothing, mm. */
const edgeReach = ({ round, burr, heat, burnt }: Edge): number =>
  Math.max(round, WORN, burr > 0 ? BURRED : 0, heat > 0 ? burnt + 1 : 0);

/** Share of a pixel past the edge: one that the edge runs through is covered in part, or the edge would be a stair. */
const goneAt = ({ grid }: Field, course: Course, n: number, d: number): number =>
  clamp(0.5 - (d - course.at[n]) * grid.perMm, 0, 1);

function shapeEdge(field: Field, k: number, edge: Edge, course: Course, n: number, s: number, d: number): void {
  const { seed, round, fall } = edge;
  const inside = d - course.at[n];
  if (goneAt(field, course, n, d) >= 1) {
    field.z[k] -= fall - BEYOND * inside;
    field.brush[k] = 0;
    return;
  }
  if (inside < round) {
    const rounded = 1 - clamp(inside / round, 0, 1);
    field.z[k] -= fall * rounded * rounded + BEYOND * Math.max(0, -inside);
  }
  if (edge.burr > 0 && inside > -0.1 && inside < BURRED) {
    field.z[k] += edge.burr * course.torn[n] * Math.exp(-(((inside - 0.22) / 0.16) ** 2));
  }
  const isHot = edge.heat > 0 && inside < edge.burnt + 1;
  if (!isHot && inside >= WORN) return;
  const wander = gradient2(s / 3.1, d / 1.4, seed + 7);
  if (isHot) {
    const bare = 1 - field.bead[k];
    const hot = ease(edge.burnt + 0.6, 0.1 * edge.burnt, inside + 1.1 * wander + course.scorched[n]);
    mixMaterial(field, k, TONES.scaleBurnt, 0.6, 0.25, edge.heat * hot * bare * (1 - 0.8 * field.band[k]));
    mixColour(field, k, TONES.blue, 0.22 * hot * (1 - hot) * 4 * clamp(0.2 + wander, 0, 1) * bare);
  }
  const worn = edge.worn * ease(WORN, 0.05, inside) * clamp(course.worn[n] + 0.3 * wander, 0, 1);
  if (worn > 0) {
    mixMaterial(field, k, TONES.bareSteel, 0.56, 0.42, 0.6 * worn);
    field.brush[k] *= 1 - worn;
  }
}

/** Nothing but dark is seen past an edge. */
function darken(field: Field, k: number, course: Course, n: number, d: number): void {
  const gone = goneAt(field, course, n, d);
  if (gone > 0) mixMaterial(field, k, TONES.beyond, 0.95, 0, gone);
}
