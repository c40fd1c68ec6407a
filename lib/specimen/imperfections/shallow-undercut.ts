import { measureToeGroove } from "../measure";
import type { FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { drawBites, outerToe, SECTIONS, type UndercutShape, undercutFeature } from "./undercut";
import { drawEnds, unevenEnvelope } from "./uneven-ends";

/** What is deeper than 0.25 mm is recorded: the decoy stays well short of that. */
const DEEPEST = 0.19;
const THRESHOLD = 0.06;
const BRIDGE = 1.5;

/**
 * Harmless decoy: a toe washed out a little, at most 0.19 mm deep whatever `severity` asks, smoother and wider than a
 * real undercut. Truth: neutral, `measureToeGroove` with threshold 0.06 mm.
 */
export const buildShallowUndercut: FeatureBuilder = (request, random) => {
  const ends = drawEnds(random, request.length, [2, 4], [4, 9]);
  const range = { from: request.x, to: request.x + request.length };
  const shape: UndercutShape = {
    edge: outerToe(request.side),
    range,
    depth: Math.min(request.severity, DEEPEST),
    width: random.uniform(1.1, 1.7),
    bites: drawBites(random, range),
    envelope: unevenEnvelope(range.from, range.to, ends, 0.4, random.seed()),
    seed: random.seed(),
    section: SECTIONS.plate,
  };
  return undercutFeature(request.id, shape, (work) => {
    const search = { side: request.side, range, threshold: THRESHOLD, bridge: BRIDGE };
    const found = measureToeGroove(work, search);
    return found && truthItem(work, request.id, "continuous-undercut", { ...found, harmless: true });
  });
};
