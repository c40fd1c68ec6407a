import { measureToeGroove } from "../measure";
import type { FeatureBuilder } from "../work";
import { truthItem } from "./found";
import { drawBites, outerToe, SECTIONS, type UndercutShape, undercutFeature } from "./undercut";
import { drawEnds, unevenEnvelope } from "./uneven-ends";

/** Deeper than this counts as undercut, mm; sound stretches up to `BRIDGE` mm do not end it. */
const THRESHOLD = 0.1;
const BRIDGE = 1.5;

/**
 * Continuous undercut: an unbroken, sharp-bottomed groove in the plate along one toe. `severity` = largest depth, mm.
 * Truth: `measureToeGroove` with threshold 0.1 mm and gaps up to 1.5 mm.
 */
export const buildContinuousUndercut: FeatureBuilder = (request, random) => {
  // the soft ends are shallower than the threshold: they are added outside the length asked
  const ends = drawEnds(random, request.length, [2, 4], [5, 10]);
  const range = { from: request.x - 0.25 * ends.first, to: request.x + request.length + 0.25 * ends.last };
  const shape: UndercutShape = {
    edge: outerToe(request.side),
    range,
    depth: request.severity,
    width: random.uniform(1.4, 2),
    bites: drawBites(random, range),
    envelope: unevenEnvelope(range.from, range.to, ends, 0.5, random.seed()),
    seed: random.seed(),
    section: SECTIONS.plate,
  };
  return undercutFeature(request.id, shape, (work) => {
    const search = {
      side: request.side,
      range: { from: range.from - 2, to: range.to + 2 },
      threshold: THRESHOLD,
      bridge: BRIDGE,
    };
    const found = measureToeGroove(work, search);
    return found && truthItem(work, request.id, "continuous-undercut", found);
  });
};
