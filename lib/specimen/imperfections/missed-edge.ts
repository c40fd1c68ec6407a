import { clamp, ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { fractal1, gradient1 } from "../../surface";
import type { Range, Side } from "../measure";
import { forColumns, moveToe, outerRun } from "../runs/edit";
import type { FaceWork, FeatureRequest } from "../work";
import { drawPreparation, type Preparation } from "./prepared-face";
import { drawEnds, type Envelope, evenedOut, largestAlong, unevenEnvelope } from "./uneven-ends";

/** A place where the bead did take on the edge within an unfused stretch, mm. */
interface Bridge {
  readonly x: number;
  readonly half: number;
  readonly skew: number;
  readonly share: number;
}

/** An edge of the joint that the weld ran past without fusing it, mm. */
export interface MissedEdge {
  readonly side: Side;
  readonly range: Range;
  readonly envelope: Envelope;
  /** Set-back of the fusion line from the corner where it is largest. */
  readonly setBack: number;
  /** Length over which it wanders. */
  readonly wander: number;
  readonly bridges: readonly Bridge[];
  /** How long before and after the imperfection the toe already runs close to the corner. */
  readonly leads: { readonly before: number; readonly after: number };
  readonly preparation: Preparation;
  readonly seed: number;
}

/** Draws an unfused edge for a request; `setBack` = largest distance of the fusion line from the corner, mm. */
export function drawMissedEdge(random: RandomStream, request: FeatureRequest, setBack: number): MissedEdge {
  const ends = drawEnds(random, request.length, [4, 7], [7, 13]);
  const range = { from: request.x - 0.5 * ends.first, to: request.x + request.length + 0.5 * ends.last };
  const seed = random.seed();
  const bridges = Array.from({ length: bridgeCount(random, request.length) }, () => ({
    x: request.x + request.length * random.uniform(0.22, 0.82),
    half: random.uniform(0.7, 1.4),
    skew: clamp(random.normal(0, 0.5), -0.7, 0.7),
    share: random.uniform(0.7, 1),
  }));
  return {
    side: request.side,
    range,
    envelope: unevenEnvelope(range.from, range.to, ends, 0.6, seed + 3),
    setBack,
    wander: random.uniform(4, 8),
    bridges,
    leads: { before: random.uniform(14, 34), after: random.uniform(14, 34) },
    preparation: drawPreparation(random),
    seed,
  };
}

const bridgeCount = (random: RandomStream, length: number): number =>
  random.integer(2) + (length > 18 && random.chance(0.7) ? 1 : 0);

function bridged(edge: MissedEdge, x: number): number {
  const sum = edge.bridges.reduce((total, bridge) => {
    const shifted = x - bridge.x + 0.35 * gradient1(x / 1.1, edge.seed + 30);
    const half = bridge.half * (1 + (shifted > 0 ? bridge.skew : -bridge.skew));
    return total + bridge.share * Math.exp(-((shifted / half) ** 2));
  }, 0);
  return Math.min(1, sum);
}

/** How far a toe that only just covers its edge reaches over the corner at x, mm. */
const coverAt = (seed: number, x: number): number => 0.34 + 0.22 * gradient1(x / 3.7, seed + 35);

/** Set-back of the fusion line from the corner at x, mm; below 0 where the bead washed over the corner. */
export function setBackAlong(edge: MissedEdge): (x: number) => number {
  const uneven = (x: number) =>
    edge.envelope(x) ** 1.15 *
    clamp(0.85 + 0.5 * fractal1(x / edge.wander, edge.seed, 2) + 0.1 * gradient1(x / 1.6, edge.seed + 1), 0.15, 1.5);
  const most = largestAlong(edge.range.from, edge.range.to, uneven);
  const sharp = (x: number) => {
    const washed = -0.22 + 0.12 * gradient1(x / 1.7, edge.seed + 31);
    // at its ends the bead leaves the edge as slowly as it had reached it
    const covered = coverAt(edge.seed, x) * ease(0.75, 0, edge.envelope(x));
    return mix((edge.setBack * uneven(x)) / most - covered, washed, bridged(edge, x));
  };
  return evenedOut(sharp, 0.7);
}

/**
 * Corner of the prepared face at x: distance from the joint's centre, mm. It wavers a little, as every prepared edge does,
 * and here and there the arc has melted a piece of it away.
 */
export function cornerAlong(work: FaceWork, seed: number): (x: number) => number {
  const { groove } = work.plan;
  return (x) => {
    const melted = clamp(0.1 + gradient1(x / 4.6, seed + 13) + 0.35 * gradient1(x / 1.9, seed + 14), 0, 1) ** 1.4;
    const wandering =
      0.14 * gradient1(x / 13, seed + 2) + 0.06 * gradient1(x / 2.6, seed + 12) + 0.03 * gradient1(x / 0.9, seed + 15);
    return groove + 0.08 + wandering + 0.42 * melted;
  };
}

/** Plans the toe along a missed edge: it nears the corner before and after, and stays back from it in between. */
export function planMissedEdge(work: FaceWork, edge: MissedEdge, exponent: number): void {
  const { side, range, leads, seed } = edge;
  const run = outerRun(work.plan, side);
  const exponents = side < 0 ? run.exponentMinus : run.exponentPlus;
  const ragged = side < 0 ? run.raggedMinus : run.raggedPlus;
  const corner = cornerAlong(work, seed);
  const setBack = setBackAlong(edge);
  forColumns(work.strip.grid, range.from - 38, range.to + 38, (i, x) => {
    const waver = 1.2 * gradient1(x / 4.1, seed + 33);
    const near =
      ease(range.from - leads.before, range.from + 1, x + waver) *
      ease(range.to + leads.after, range.to - 1, x + waver);
    const toe = (run.centre[i] + side * run.halfWidth[i]) * side;
    moveToe(run, side, i, side * Math.min(toe, corner(x) - setBack(x)), near);
    const share = edge.envelope(x);
    if (share < 0.005) return;
    ragged[i] *= 1 + 0.4 * share;
    exponents[i] = mix(exponents[i], exponent + 1.5 * gradient1(x / 4.5, seed + 6), share);
  });
}
