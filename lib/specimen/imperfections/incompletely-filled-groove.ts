import { clamp, ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { fractal1, gradient1 } from "../../surface";
import { betweenEdges, measureHollow, type Side } from "../measure";
import type { RunPlan } from "../plan";
import { forColumns, moveToe, outerRun } from "../runs/edit";
import type { FaceWork, FeatureBuilder, FeatureRequest } from "../work";
import { cutExposedFace, type ExposedFace, type ExposedTrace, paintExposedFace } from "./exposed-face";
import { truthItem } from "./found";
import { cornerAlong } from "./missed-edge";
import { drawPreparation, type Preparation } from "./prepared-face";
import { drawEnds, type Envelope, evenedOut, largestAlong, unevenEnvelope } from "./uneven-ends";

const THRESHOLD = 0.2;
const BRIDGE = 4;
/** What crevice and worn corner add to a shallow fusion line, mm. */
const CREVICE = 0.14;

/** One edge of the groove that stays open, mm. */
interface OpenSide {
  readonly side: Side;
  readonly envelope: Envelope;
  /** The same, as slow as the run's height can follow. */
  readonly sinking: Envelope;
  /** Depth of the metal below the plate at this edge, as a share of the asked depth. */
  readonly depthShare: number;
  readonly preparation: Preparation;
  readonly seed: number;
}

/** Draws one edge: its ends lie up to a fifth of the length further in than asked, differently for either edge. */
function drawOpenSide(random: RandomStream, request: FeatureRequest, side: Side, depthShare: number): OpenSide {
  const from = request.x + random.uniform(-0.1, 0.06) * request.length;
  const to = request.x + request.length - random.uniform(-0.1, 0.06) * request.length;
  const ends = drawEnds(random, to - from, [4, 7], [8, 14]);
  const seed = random.seed();
  const envelope = unevenEnvelope(from - 0.4 * ends.first, to + 0.4 * ends.last, ends, 0.8, seed + 20);
  return {
    side,
    envelope,
    sinking: evenedOut(envelope, 5),
    depthShare,
    preparation: drawPreparation(random),
    seed,
  };
}

/**
 * Incompletely filled groove: a dished low stretch, a strip of bevel to be seen along both edges, or with variant
 * "one-side" along the asked edge only. `severity` = largest depth below the plates, mm. Truth: `measureHollow` between
 * the groove's edges, threshold 0.2 mm.
 */
export const buildIncompletelyFilledGroove: FeatureBuilder = (request, random) => {
  const depth = request.severity;
  const isOneSided = request.variant === "one-side";
  const other = -request.side as Side;
  const near = drawOpenSide(random.child("near"), request, request.side, 1);
  const far = drawOpenSide(random.child("far"), request, other, random.uniform(0.7, 1));
  const open = isOneSided ? [near] : [near, far];
  const from = request.x - 9;
  const to = request.x + request.length + 9;
  const leads = { before: random.uniform(7, 18), after: random.uniform(7, 18) };
  const seed = random.seed();
  const range = { from, to };
  const middle = unevenEnvelope(from + 4, to - 4, drawEnds(random, request.length, [7, 9], [11, 15]), 0.6, seed + 50);
  const lowest = (x: number) => open.reduce((most, edge) => Math.max(most, edge.envelope(x)), 0);
  let faces: { face: ExposedFace; trace: ExposedTrace }[] = [];

  /** Depth of the fusion line below the plate along one edge, mm. */
  function depthAlong(edge: OpenSide): (x: number) => number {
    const uneven = (x: number) =>
      clamp(0.85 + 0.35 * fractal1(x / 7, edge.seed, 2) + 0.12 * gradient1(x / 1.8, edge.seed + 4), 0.5, 1.3);
    const most = largestAlong(from, to, (x) => edge.envelope(x) * uneven(x));
    return (x) => ((depth - CREVICE * ease(1.3, 0.6, depth)) * edge.depthShare * uneven(x)) / most;
  }

  function lowerFill(work: FaceWork): void {
    const { fill } = work.plan;
    forColumns(work.strip.grid, from - 3, to + 3, (i, x) => {
      const wide = ease(from - 2, from + 10, x) * ease(to + 2, to - 10, x);
      const share = 0.4 * lowest(x) + 0.6 * wide;
      fill[i] = mix(fill[i], Math.min(fill[i], -depth - 0.55 + 0.15 * gradient1(x / 6, seed + 30)), share);
    });
  }

  function setBackToe(work: FaceWork, edge: OpenSide): void {
    const run = outerRun(work.plan, edge.side);
    const ragged = edge.side < 0 ? run.raggedMinus : run.raggedPlus;
    const corner = cornerAlong(work, edge.seed);
    const down = depthAlong(edge);
    forColumns(work.strip.grid, from - 19, to + 19, (i, x) => {
      const waver = 1.2 * gradient1(x / 4.3, edge.seed + 60);
      const lead = ease(from - leads.before, from + 4, x + waver) * ease(to + leads.after, to - 4, x + waver);
      const toe = (run.centre[i] + edge.side * run.halfWidth[i]) * edge.side;
      const close = corner(x) + 0.35 + 0.25 * gradient1(x / 3.3, edge.seed + 62);
      moveToe(run, edge.side, i, edge.side * Math.min(toe, close), 0.9 * lead);
      const share = edge.envelope(x);
      moveToe(run, edge.side, i, edge.side * (corner(x) - down(x) / work.plan.wallSlope), share);
      ragged[i] *= 1 + 0.3 * share;
    });
  }

  /** The runs over the open part come out low and flat; a single weave is dished. */
  function flattenRuns(work: FaceWork): void {
    const { runs } = work.plan;
    forColumns(work.strip.grid, from - 6, to + 6, (i, x) => {
      runs.forEach((run, n) => {
        const share = shareOf(work, run, n, x);
        if (share <= 0) return;
        const low =
          runs.length === 1 ? -0.12 + 0.1 * gradient1(x / 9, seed + 3) : 0.4 + 0.1 * gradient1(x / 4, seed + n);
        run.height[i] = mix(run.height[i], low, share);
        run.exponentMinus[i] = mix(run.exponentMinus[i], 2.1, share);
        run.exponentPlus[i] = mix(run.exponentPlus[i], 2.1, share);
        if (run.weave) run.ripple[i] *= 1 + 0.7 * share;
      });
    });
  }

  /** How far a run takes part at x: the outer runs with their own edge, those between with the middle. */
  function shareOf(work: FaceWork, run: RunPlan, n: number, x: number): number {
    if (work.plan.runs.length === 1) return isOneSided ? 0.6 * middle(x) : middle(x);
    const own = open.filter((edge) => outerRun(work.plan, edge.side) === run);
    if (own.length > 0) return Math.max(...own.map((edge) => edge.sinking(x)));
    return n > 0 && !isOneSided ? middle(x) : 0;
  }

  function exposedFace(work: FaceWork, edge: OpenSide): ExposedFace {
    return {
      side: edge.side,
      range,
      preparation: edge.preparation,
      corner: cornerAlong(work, edge.seed),
      shown: (x) => ease(0, 0.25, edge.envelope(x)),
      slope: work.plan.wallSlope,
      floor: Number.POSITIVE_INFINITY,
      crevice: 0.1,
      gaping: 0.05,
      beyondCentre: 0,
    };
  }

  return {
    id: request.id,
    plan(work) {
      lowerFill(work);
      for (const edge of open) setBackToe(work, edge);
      flattenRuns(work);
    },
    cut(work) {
      faces = open.map((edge) => {
        const face = exposedFace(work, edge);
        return { face, trace: cutExposedFace(work, face) };
      });
    },
    paint(work) {
      for (const { face, trace } of faces) paintExposedFace(work, face, trace);
    },
    measure(work) {
      const found = measureHollow(work, betweenEdges(work.plan.groove), 1, {
        range,
        threshold: THRESHOLD,
        bridge: BRIDGE,
      });
      return found && truthItem(work, request.id, "incompletely-filled-groove", found);
    },
  };
};
