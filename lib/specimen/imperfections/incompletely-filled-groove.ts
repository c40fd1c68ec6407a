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
/** How far the middle of a weave is dished below the line between its toes, mm and as a share of the depth. */
const DISH = { most: 0.5, share: 0.42 };
const dishOf = (request: FeatureRequest): number => Math.min(DISH.most, DISH.share * request.severity);
/** A weave's pool evens out what its toes stand on over so much to both sides, mm. */
const WEAVE_BRIDGES = 2.6;
/** What crevice and worn corner add to a shallow fusion line, mm. */
const CREVICE = 0.05;

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

/** What stays open and how the runs sink towards it: drawn for stringers and for one weave, since they starve differently. */
interface Shaping {
  readonly open: readonly OpenSide[];
  /** Over how long before and behind the toes already draw in to the corners, mm. */
  readonly leads: { readonly before: number; readonly after: number };
  /** How far the runs between the toes have lost their height. */
  readonly middle: Envelope;
  /** Slow wander of the toes while they draw in, mm. */
  readonly wander: number;
  /** What the toes stand on is evened out over so much to both sides, mm. */
  readonly followed: number;
  /** How much less deep than asked the toes lie: the dish and the crevice come on top, mm. */
  readonly less: number;
  /** Least and mean share of the depth along an edge, and how much it varies. */
  readonly unevenness: { readonly least: number; readonly mean: number; readonly swing: number };
}

/** Draws one edge of stringers: its ends lie up to a fifth of the length further in than asked, differently for either edge. */
function drawOpenSide(random: RandomStream, request: FeatureRequest, side: Side, depthShare: number): OpenSide {
  const from = request.x + random.uniform(-0.1, 0.06) * request.length;
  const to = request.x + request.length - random.uniform(-0.1, 0.06) * request.length;
  const ends = drawEnds(random, to - from, [4, 7], [8, 14]);
  const seed = random.seed();
  const envelope = unevenEnvelope(from - 0.4 * ends.first, to + 0.4 * ends.last, ends, 0.8, seed + 20);
  return openSide(random, side, depthShare, envelope, seed);
}

const openSide = (
  random: RandomStream,
  side: Side,
  depthShare: number,
  envelope: Envelope,
  seed: number,
): OpenSide => ({
  side,
  envelope,
  sinking: evenedOut(envelope, 5),
  depthShare,
  preparation: drawPreparation(random),
  seed,
});

function shapeStringers(random: RandomStream, request: FeatureRequest, isOneSided: boolean): Shaping {
  const near = drawOpenSide(random.child("near"), request, request.side, 1);
  const far = drawOpenSide(random.child("far"), request, -request.side as Side, random.uniform(0.7, 1));
  const leads = { before: random.uniform(14, 32), after: random.uniform(14, 32) };
  const from = request.x - 5;
  const to = request.x + request.length + 5;
  return {
    open: isOneSided ? [near] : [near, far],
    leads,
    middle: unevenEnvelope(from, to, drawEnds(random, request.length, [7, 9], [11, 15]), 0.6, random.seed()),
    wander: 0,
    followed: 0,
    less: CREVICE * ease(1.3, 0.6, request.severity),
    unevenness: {
      least: mix(0.72, 0.5, ease(0.5, 1, request.severity)),
      mean: 0.85,
      swing: mix(0.18, 0.35, ease(0.5, 1, request.severity)),
    },
  };
}

/** The two toes of a weave leave their corners this far from each other, at most so much of the length, mm. */
const TOES_APART = { mm: [3, 10], most: 0.3 } as const;
/** The crown of a weave sinks over this length, beginning this far before anything lies open, mm. */
const SAG = { length: [22, 30], before: [14, 20] } as const;

/** A weave starves: its crown sags over a long way, then the toes leave their corners, one after the other at either end. */
function shapeWeave(random: RandomStream, request: FeatureRequest, isOneSided: boolean): Shaping {
  const apart = () => Math.min(random.uniform(...TOES_APART.mm), TOES_APART.most * request.length);
  const isNearLate = { first: random.chance(0.5), last: random.chance(0.5) };
  const late = { first: apart(), last: apart() };
  const drawSide = (own: RandomStream, side: Side, depthShare: number, isNear: boolean): OpenSide => {
    const inward = (end: "first" | "last") => (!isOneSided && isNearLate[end] === isNear ? late[end] : 0);
    const from = request.x + inward("first");
    const to = request.x + request.length - inward("last");
    const ends = drawEnds(own, to - from, [5, 8], [8, 14]);
    const seed = own.seed();
    const sharp = unevenEnvelope(from - 0.35 * ends.first, to + 0.35 * ends.last, ends, 0.9, seed + 20);
    return openSide(own, side, depthShare, (x) => sharp(x + 1.5 * gradient1(x / 8, seed + 24)), seed);
  };
  const near = drawSide(random.child("near"), request.side, 1, true);
  const far = drawSide(random.child("far"), -request.side as Side, random.uniform(0.7, 1), false);
  const sag = { first: random.uniform(...SAG.length), last: random.uniform(...SAG.length) };
  return {
    open: isOneSided ? [near] : [near, far],
    leads: { before: random.uniform(15, 26), after: random.uniform(15, 26) },
    middle: unevenEnvelope(
      request.x - random.uniform(...SAG.before),
      request.x + request.length + random.uniform(...SAG.before),
      sag,
      0,
      random.seed(),
    ),
    wander: 0.45,
    followed: WEAVE_BRIDGES,
    less: 0.2 * dishOf(request),
    unevenness: { least: 0.32, mean: 0.75, swing: 0.6 },
  };
}

/**
 * Incompletely filled groove: a dished low stretch, a strip of bevel to be seen along both edges, or with variant
 * "one-side" along the asked edge only. `severity` = largest depth below the plates, mm. Truth: `measureHollow` between
 * the groove's edges, threshold 0.2 mm.
 */
export const buildIncompletelyFilledGroove: FeatureBuilder = (request, random) => {
  const depth = request.severity;
  const dish = dishOf(request);
  const isOneSided = request.variant === "one-side";
  const stringers = shapeStringers(random.child("stringers"), request, isOneSided);
  const weave = shapeWeave(random.child("weave"), request, isOneSided);
  const shapingOf = (work: FaceWork) => (work.plan.runs.length === 1 ? weave : stringers);
  const from = request.x - 9;
  const to = request.x + request.length + 9;
  const range = { from, to };
  const seed = random.seed();
  let faces: { face: ExposedFace; trace: ExposedTrace }[] = [];

  /** Depth of the fusion line below the plate along one edge, mm. */
  function depthAlong(edge: OpenSide, { unevenness, less, followed }: Shaping): (x: number) => number {
    const { least, mean, swing } = unevenness;
    const uneven = (x: number) =>
      clamp(mean + swing * fractal1(x / 7, edge.seed, 2) + 0.12 * gradient1(x / 1.8, edge.seed + 4), least, 1.3);
    const planned = (x: number) => edge.envelope(x) * uneven(x);
    const most = largestAlong(from, to, followed > 0 ? evenedOut(planned, followed) : planned);
    return (x) => ((depth - less) * edge.depthShare * uneven(x)) / most;
  }

  function lowerFill(work: FaceWork): void {
    const { fill } = work.plan;
    const { open } = shapingOf(work);
    const lowest = (x: number) => open.reduce((most, edge) => Math.max(most, edge.envelope(x)), 0);
    forColumns(work.strip.grid, from - 3, to + 3, (i, x) => {
      const wide = ease(from - 2, from + 10, x) * ease(to + 2, to - 10, x);
      const share = 0.4 * lowest(x) + 0.6 * wide;
      fill[i] = mix(fill[i], Math.min(fill[i], -depth - 0.55 + 0.15 * gradient1(x / 6, seed + 30)), share);
    });
  }

  function setBackToe(work: FaceWork, edge: OpenSide): void {
    const shaping = shapingOf(work);
    const { leads, wander } = shaping;
    const run = outerRun(work.plan, edge.side);
    const ragged = edge.side < 0 ? run.raggedMinus : run.raggedPlus;
    const corner = cornerAlong(work, edge.seed);
    const down = depthAlong(edge, shaping);
    forColumns(work.strip.grid, from - 35, to + 35, (i, x) => {
      const waver = 1.2 * gradient1(x / 4.3, edge.seed + 60);
      const lead = ease(from - leads.before, from + 3, x + waver) * ease(to + leads.after, to - 3, x + waver);
      const toe = (run.centre[i] + edge.side * run.halfWidth[i]) * edge.side;
      const over = 0.35 + 0.25 * gradient1(x / 3.3, edge.seed + 62) + wander * gradient1(x / 9, edge.seed + 63);
      const share = edge.envelope(x);
      // the toe leaves its edge early and slowly: a shallow groove would else be open over half of its length only
      const covered = over * ease(0.6, 0, share);
      const target = corner(x) + covered - (share * down(x)) / work.plan.wallSlope;
      moveToe(run, edge.side, i, edge.side * Math.min(toe, target), lead);
      ragged[i] *= 1 + 0.3 * share;
    });
  }

  /** The runs over the open part come out low and flat; a single weave is dished. */
  function flattenRuns(work: FaceWork): void {
    const { runs } = work.plan;
    forColumns(work.strip.grid, from - 13, to + 13, (i, x) => {
      runs.forEach((run, n) => {
        const share = shareOf(work, run, n, x);
        if (share <= 0) return;
        const low =
          runs.length === 1 ? -dish * (1 + 0.5 * gradient1(x / 9, seed + 3)) : 0.4 + 0.1 * gradient1(x / 4, seed + n);
        run.height[i] = mix(run.height[i], low, share);
        run.exponentMinus[i] = mix(run.exponentMinus[i], 2.1, share);
        run.exponentPlus[i] = mix(run.exponentPlus[i], 2.1, share);
        if (run.weave) run.ripple[i] *= 1 + 1.6 * share;
      });
    });
  }

  /** How far a run takes part at x: the outer runs with their own edge, those between with the middle. */
  function shareOf(work: FaceWork, run: RunPlan, n: number, x: number): number {
    const { open, middle } = shapingOf(work);
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
      shown: (x) => ease(0, 0.2, edge.envelope(x)),
      slope: work.plan.wallSlope,
      floor: 1.02 * depth,
      crevice: 0.1,
      gaping: 0.05,
      beyondCentre: 0,
    };
  }

  return {
    id: request.id,
    plan(work) {
      lowerFill(work);
      for (const edge of shapingOf(work).open) setBackToe(work, edge);
      flattenRuns(work);
    },
    cut(work) {
      faces = shapingOf(work).open.map((edge) => {
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
