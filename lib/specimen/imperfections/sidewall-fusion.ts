import { ease, mix } from "../../math";
import { measureAlongEdge } from "../measure";
import { forColumns, outerRun } from "../runs/edit";
import type { FaceWork, FeatureBuilder } from "../work";
import { cutExposedFace, type ExposedFace, type ExposedTrace, paintExposedFace } from "./exposed-face";
import { truthItem } from "./found";
import { cornerAlong, drawMissedEdge, planMissedEdge, setBackAlong } from "./missed-edge";

/** A worn corner alone is shallower, mm. */
const THRESHOLD = 0.2;
const BRIDGE = 4;
/** The washed shoulder of the face takes so much from the depth. */
const DEEPENED = 1.1;
/** Sounded from this far inside the corner of the bevel to this far outside it, mm. */
const WINDOW = { inside: 1.6, outside: 0.1 };

/**
 * Lack of side-wall fusion open to the surface: the outer run stops short of the bevel, whose face stays visible along a
 * broken slot. `severity` = largest depth, mm. Truth: `measureAlongEdge` at the groove's edge, from 1.6 mm inside to
 * 0.1 mm outside it, threshold 0.2 mm, fused bridges up to 4 mm.
 */
export const buildSidewallFusion: FeatureBuilder = (request, random) => {
  const depth = DEEPENED * request.severity;
  const edge = drawMissedEdge(random, request, 0.75 * depth * random.uniform(0.9, 1.2));
  const { range } = edge;
  let face: ExposedFace | null = null;
  let trace: ExposedTrace = [];

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

  return {
    id: request.id,
    plan(work) {
      lowerLayerBelow(work);
      planMissedEdge(work, edge, 3.8);
    },
    cut(work) {
      const setBack = setBackAlong(edge);
      face = {
        side: request.side,
        range,
        preparation: edge.preparation,
        corner: cornerAlong(work, edge.seed),
        shown: (x) => ease(-0.1, 0.2, setBack(x)),
        slope: work.plan.wallSlope,
        floor: 0.92 * depth,
        crevice: 0.14 * depth,
        gaping: 0.12,
        beyondCentre: 0,
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
      return found && truthItem(work, request.id, "sidewall-fusion", found);
    },
  };
};
