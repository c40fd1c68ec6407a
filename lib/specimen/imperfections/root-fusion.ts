import { clamp, ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { fractal1, gradient1 } from "../../surface";
import { forColumns } from "../runs/edit";
import type { FaceWork, FeatureBuilder, FeatureRequest } from "../work";
import { cornerAlong, drawMissedEdge } from "./missed-edge";
import { missedEdgeFeature } from "./missed-edge-feature";

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
 * line. `severity` = largest depth, mm. Truth: see `missedEdgeFeature`, from 1.3 mm inside the gap's edge to 0.15 mm outside
 * it.
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

  function planGap(work: FaceWork): void {
    const { plan, strip } = work;
    forColumns(strip.grid, range.from - 9, range.to + 9, (i, x) => {
      const share = ease(range.from - 9, range.from, x) * ease(range.to + 9, range.to, x);
      plan.fill[i] = mix(plan.fill[i], -depth * (0.82 + 0.16 * gradient1(x / 3, seed + 5)), share);
      plan.runs[0].height[i] += 0.3 * depth * edge.envelope(x);
    });
  }

  return missedEdgeFeature(request.id, {
    type: "root-fusion",
    edge,
    exponent: 3.4,
    lower: planGap,
    bare(work) {
      const corner = cornerAlong(work, seed);
      return {
        corner: (x) => corner(x) + melted(x),
        slope,
        floor: 0.9 * depth,
        crevice: 0.12 * depth,
        beyondCentre: 0.4,
      };
    },
    window: WINDOW,
  });
};
