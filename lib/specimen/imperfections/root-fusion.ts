import { clamp, ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { fractal1, gradient1 } from "../../surface";
import { measureAlongEdge } from "../measure";
import { forColumns } from "../runs/edit";
import type { FaceWork, FeatureBuilder, FeatureRequest } from "../work";
import { cutExposedFace, type ExposedFace, type ExposedTrace, paintExposedFace } from "./exposed-face";
import { truthItem } from "./found";
import { cornerAlong, drawMissedEdge, planMissedEdge, setBackAlong } from "./missed-edge";

/** A worn corner alone is shallower, mm. */
const THRESHOLD = 0.2;
const BRIDGE = 4;
const WINDOW = { inside: 1.3, outside: 0.15 };

/** Spots where a drop of the bead did reach the edge, too short to end the imperfection: about one to a centimetre. */
const drawSpots = (random: RandomStream, { x, length }: FeatureRequest) =>
  Array.from({ length: Math.round((length / 10) * random.uniform(0.4, 1.6)) }, () => ({
    x: x + length * random.uniform(0.12, 0.88),
    half: random.uniform(0.3, 0.75),
    skew: random.uniform(-0.6, 0.6),
    share: random.uniform(0.4, 0.95),
  }));

/**
 * Lack of root fusion: the root bead took on one plate only, the other root edge stands beside it with a dark, broken
 * line. `severity` = largest depth, mm. Truth: `measureAlongEdge` at the gap's edge, from 1.3 mm inside to 0.15 mm
 * outside it, threshold 0.2 mm, fused bridges up to 4 mm.
 */
export const buildRootFusion: FeatureBuilder = (request, random) => {
  const depth = request.severity;
  const slope = random.uniform(1.15, 1.9);
  const drawn = drawMissedEdge(random, request, (0.05 + 0.7 * depth) * random.uniform(0.9, 1.2));
  const edge = { ...drawn, bridges: [...drawn.bridges, ...drawSpots(random.child("spots"), request)] };
  const { range, seed } = edge;
  /** The arc melted the root edge away here and there: to be seen, but not fused. */
  const melted = (x: number) =>
    0.55 * clamp(fractal1(x / 3.4, seed + 50, 2) + 0.25 * gradient1(x / 11, seed + 52) - 0.08, 0, 1);
  let face: ExposedFace | null = null;
  let trace: ExposedTrace = [];

  function planGap(work: FaceWork): void {
    const { plan, strip } = work;
    forColumns(strip.grid, range.from - 9, range.to + 9, (i, x) => {
      const share = ease(range.from - 9, range.from, x) * ease(range.to + 9, range.to, x);
      plan.fill[i] = mix(plan.fill[i], -depth * (0.82 + 0.16 * gradient1(x / 3, seed + 5)), share);
      plan.runs[0].height[i] += 0.3 * depth * edge.envelope(x);
    });
  }

  return {
    id: request.id,
    plan(work) {
      planGap(work);
      planMissedEdge(work, edge, 3.4);
    },
    cut(work) {
      const setBack = setBackAlong(edge);
      const corner = cornerAlong(work, seed);
      face = {
        side: request.side,
        range,
        preparation: edge.preparation,
        corner: (x) => corner(x) + melted(x),
        shown: (x) => ease(-0.1, 0.2, setBack(x)),
        slope,
        floor: 0.9 * depth,
        crevice: 0.12 * depth,
        gaping: 0.12,
        beyondCentre: 0.4,
      };
      trace = cutExposedFace(work, face);
    },
    paint(work) {
      if (face) paintExposedFace(work, face, trace);
    },
    measure(work) {
      const search = {
        side: request.side,
        range: { from: range.from - 1, to: range.to + 1 },
        threshold: THRESHOLD,
        bridge: BRIDGE,
      };
      const { groove } = work.plan;
      const found = measureAlongEdge(work, search, () => request.side * groove, WINDOW);
      return found && truthItem(work, request.id, "root-fusion", found);
    },
  };
};
