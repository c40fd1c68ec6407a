import { clamp } from "../../math";
import { measureValley } from "../measure";
import type { FaceWork, Feature, FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { laterRun, runBorder } from "./run-border";
import { undercutFeature } from "./undercut";
import { drawUndercut, type MeltedEdge, SECTIONS } from "./undercut-shape";
import { drawEnds, unevenEnvelope } from "./uneven-ends";
import { alongColumns } from "./weld-border";

/** Deeper than this below the sound valley counts, mm; sound stretches up to `BRIDGE` mm do not end it. */
const THRESHOLD = 0.22;
const BRIDGE = 2;
/** Share of an end that lies before the threshold. */
const BEFORE = { least: 0.1, share: 0.6, most: 0.55 };

/** Edge of a run on the run before it. */
const edgeOf = (run: number): MeltedEdge => ({
  side: -1,
  run: (work) => work.plan.runs[run],
  border: (work) => runBorder(work, run),
});

/**
 * Inter-run undercut: a groove melted into the earlier run along the edge of the later one (`run`, the last one if
 * absent), a washed trough whose bites flow together. `severity` = largest depth below the sound valley, mm. Nothing with a single
 * run. Truth: `measureValley` with threshold 0.22 mm and gaps up to 2 mm.
 */
export const buildInterRunUndercut: FeatureBuilder = (request, random): Feature => {
  const ends = drawEnds(random, request.length, [3, 6], [7, 13]);
  // where it has grown to the threshold it counts: the fainter it is, the farther in its ends
  const before = clamp(BEFORE.least + BEFORE.share * (THRESHOLD / request.severity), 0, BEFORE.most);
  const range = { from: request.x - before * ends.first, to: request.x + request.length + before * ends.last };
  const drawn = drawUndercut(random, {
    range,
    depth: request.severity,
    width: [1.2, 1.6],
    section: SECTIONS.run,
    drawEnvelope: (draw) => unevenEnvelope(range.from, range.to, ends, 0.5, draw.seed()),
  });
  let made: Feature | null = null;

  function measure(work: FaceWork) {
    const run = laterRun(work, request);
    if (run === null) return null;
    const border = runBorder(work, run);
    const found = measureValley(work.strip, {
      edge: (x) => alongColumns(work, border, x),
      side: -1,
      range: { from: range.from - 1, to: range.to + 1 },
      threshold: THRESHOLD,
      bridge: BRIDGE,
    });
    return found && truthItem(work, request.id, "inter-run-undercut", found);
  }

  return {
    id: request.id,
    plan(work) {
      const run = laterRun(work, request);
      if (run !== null) made = undercutFeature(request.id, { ...drawn, edge: edgeOf(run) }, measure);
      made?.plan?.(work);
    },
    cut: (work) => made?.cut?.(work),
    paint: (work) => made?.paint?.(work),
    measure,
  };
};
