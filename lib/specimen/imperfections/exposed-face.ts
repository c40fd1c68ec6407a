import { clamp, ease, mix } from "../../math";
import { forEachPixel, fractal1, gradient1 } from "../../surface";
import { mixMaterial } from "../field";
import type { Range, Side } from "../measure";
import type { FaceWork } from "../work";
import { type Preparation, paintCorner, paintPrepared, preparedRelief, roundedFall } from "./prepared-face";
import { TONES } from "./tones";
import { alongColumns, weldBorder } from "./weld-border";

/** A prepared face of the joint that the weld did not cover, mm. */
export interface ExposedFace {
  readonly side: Side;
  readonly range: Range;
  readonly preparation: Preparation;
  /** Distance of the face's corner from the joint's centre at x. */
  readonly corner: (x: number) => number;
  /** How much of the imperfection is there at x, 0..1. */
  readonly shown: (x: number) => number;
  /** Fall of the face per mm towards the centre, and where it ends below the plate. */
  readonly slope: number;
  readonly floor: number;
  /** Depth of the crevice between the face and the edge of the bead, and the share of its length that gapes. */
  readonly crevice: number;
  readonly gaping: number;
  /** How far the face is painted and cut towards the middle beyond the centre line. */
  readonly beyondCentre: number;
}

interface Exposed {
  readonly k: number;
  readonly x: number;
  /** Inside the corner and outside the bead's border, mm. */
  readonly inside: number;
  readonly toBead: number;
  readonly share: number;
  /** Coverage of the gaping crevice, 0..1. */
  readonly gap: number;
}

/** What the cut left for the painter. */
export type ExposedTrace = readonly Exposed[];

const ROUNDED = 0.7;
/** Rounding of the corner: depth and width, mm, from sharp to worn. */
const WEAR = { depth: [0, 0.08], width: [0.1, 0.3] } as const;
const NICK = 0.06;
/** How round the arc has melted the face's shoulder, mm, from hardly touched to washed. */
const SHOULDER = [0.03, 0.42] as const;

/** How far the face has fallen `inside` mm from its corner at x, mm across: at first gently where the arc touched it. */
function fallen({ preparation: { seed } }: ExposedFace, x: number, inside: number): number {
  const washed = mix(...SHOULDER, clamp(0.45 + 0.8 * fractal1(x / 5.2, seed + 23, 2), 0, 1));
  const from = Math.max(0, inside) + 0.12;
  return (roundedFall(inside) * from) / (from + washed);
}

/**
 * Shapes what lies between the corner of a prepared face and the border of the weld: the face at its true depth with the
 * marks of its preparation, a worn and nicked corner, a crevice that gapes here and there along the bead's rolled edge.
 */
export function cutExposedFace(work: FaceWork, face: ExposedFace): ExposedTrace {
  const { strip } = work;
  const { side, preparation } = face;
  const { seed } = preparation;
  const border = weldBorder(work, side);
  const trace: Exposed[] = [];
  const reach = face.corner((face.range.from + face.range.to) / 2) + 1.2;
  const inner = -face.beyondCentre;
  const box = {
    x0: face.range.from - 3,
    x1: face.range.to + 3,
    y0: side < 0 ? -reach : inner,
    y1: side < 0 ? -inner : reach,
  };
  forEachPixel(strip.grid, box, (k, x, y) => {
    if (face.shown(x) < 0.02) return;
    const edge = alongColumns(work, border, x);
    const toBead = (y - edge) * side;
    const corner = face.corner(x);
    const inside = corner - y * side;
    const open = corner - edge * side;
    if (!(toBead > -ROUNDED) || inside < -ROUNDED) return;
    if (open > 0) strip.clean[k] = Math.max(strip.clean[k], inside > 0 && toBead > 0 ? 1 : 0.5);
    const bare = ease(0, 0.14, Math.min(toBead, open));
    if (inside <= 0) {
      const worn = clamp(0.5 + 0.9 * fractal1(x / 4.3, seed + 17, 2), 0, 1);
      const wear = mix(...WEAR.depth, worn) * Math.exp(inside / mix(...WEAR.width, worn));
      strip.z[k] -= (wear + face.slope * fallen(face, x, inside)) * bare;
      if (bare > 0) trace.push({ k, x, inside, toBead, share: bare, gap: 0 });
      return;
    }
    if (toBead > 0) {
      const nick = NICK * ease(0.2, 0.6, gradient1(x / 1.6, seed + 14)) * Math.exp(-((inside / 0.22) ** 2));
      const down = Math.min(face.floor, fallen(face, x, inside) * face.slope);
      const relief = preparedRelief(preparation, x, inside) * ease(0, 0.2, inside);
      const target = strip.parent[k] - down - nick + relief;
      // near its corner the face is cut to its true depth; further down the foot of the bead and the layer below stay
      const kept = Math.max(target, strip.z[k] - mix(3, 0.05, ease(0.2, 0.45, inside)));
      strip.z[k] += (kept - strip.z[k]) * 0.85;
    }
    const gap = cutCrevice(work, face, k, x, toBead, open);
    if (toBead > 0 || gap > 0) trace.push({ k, x, inside, toBead, share: toBead > 0 ? bare : 0, gap });
  });
  return trace;
}

/** Deepens the line where bead and face touch, broken along x, and rounds the bead's edge over it; returns its coverage. */
function cutCrevice(work: FaceWork, face: ExposedFace, k: number, x: number, toBead: number, open: number): number {
  const { seed } = face.preparation;
  const there = ease(0.04, 0.22, open);
  if (there <= 0) return 0;
  if (toBead < 0) work.strip.z[k] -= face.crevice * (1 + toBead / ROUNDED) ** 2.4 * there;
  const gapes = clamp(face.gaping + 0.95 * fractal1(x / 2.9, seed + 20, 3), 0, 1) * there;
  const half = 0.13 + 0.05 * gradient1(x / 1.4, seed + 21);
  const share = Math.max(0, 1 - Math.abs(toBead - 0.04) / half);
  work.strip.z[k] -= face.crevice * gapes * share * (toBead > 0 ? 1 : 0.7);
  return gapes * share;
}

/** Colours an exposed face, its corner and its crevice. */
export function paintExposedFace(work: FaceWork, face: ExposedFace, trace: ExposedTrace): void {
  for (const { k, x, inside, toBead, share, gap } of trace) {
    const down = Math.min(face.floor, inside * face.slope);
    if (inside > 0 && share > 0)
      paintPrepared(work.strip, k, face.preparation, { x, down, toBead }, 0.92 * share * ease(0, 0.12, inside));
    if (share > 0) paintCorner(work.strip, k, face.preparation, x, inside, share);
    if (gap > 0) mixMaterial(work.strip, k, TONES.shade, 0.7, 0.1, 0.55 * ease(0.35, 0.95, gap));
  }
}
