import { ease, mix } from "../../math";
import { forColumns, outerRun } from "../runs/edit";
import type { FaceWork, FeatureBuilder } from "../work";
import { cornerAlong, drawMissedEdge } from "./missed-edge";
import { missedEdgeFeature } from "./missed-edge-feature";

/** The washed shoulder of the face takes so much from the depth. */
const DEEPENED = 1.1;
/** Sounded from this far inside the corner of the bevel to this far outside it, mm. */
const WINDOW = { inside: 1.6, outside: 0.1 };

/**
 * Lack of side-wall fusion open to the surface: the outer run stops short of the bevel, whose face stays visible along a
 * broken slot. `severity` = largest depth, mm. Truth: see `missedEdgeFeature`, from 1.6 mm inside the groove's edge to 0.1 mm
 * outside it.
 */
export const buildSidewallFusion: FeatureBuilder = (request, random) => {
  const depth = DEEPENED * request.severity;
  const edge = drawMissedEdge(random, request, 0.75 * depth * random.uniform(0.9, 1.2));
  const { range } = edge;

  /** The layer below has to lie as deep as the slot; it sinks over a longer way than the toe, or every run would step. */
  function lowerLayerBelow(work: FaceWork): void {
    const { plan, strip } = work;
    forColumns(strip.grid, range.from - 9, range.to + 9, (i, x) => {
      const share = ease(range.from - 9, range.from, x) * ease(range.to + 9, range.to, x);
      const before = plan.fill[i];
      plan.fill[i] = mix(before, -0.92 * depth, share);
      for (const run of plan.runs) run.height[i] += 0.35 * Math.max(0, before - plan.fill[i]);
    });
    const run = outerRun(plan, request.side);
    forColumns(strip.grid, range.from, range.to, (i, x) => {
      run.height[i] += 0.1 * depth * edge.envelope(x);
    });
  }

  return missedEdgeFeature(request.id, {
    type: "sidewall-fusion",
    edge,
    exponent: 3.8,
    lower: lowerLayerBelow,
    bare: (work) => ({
      corner: cornerAlong(work, edge.seed),
      slope: work.plan.wallSlope,
      floor: 0.92 * depth,
      crevice: 0.14 * depth,
      beyondCentre: 0,
    }),
    window: WINDOW,
  });
};
