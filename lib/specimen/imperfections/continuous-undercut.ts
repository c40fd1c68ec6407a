import type { FeatureBuilder } from "../work";
import { toeUndercut } from "./toe-undercut";
import { drawEnds, unevenEnvelope } from "./uneven-ends";

/**
 * Continuous undercut: an unbroken, sharp-bottomed groove in the plate along one toe. `severity` = largest depth, mm.
 * Truth: `measureToeGroove` with threshold 0.1 mm and gaps up to 1.5 mm.
 */
export const buildContinuousUndercut: FeatureBuilder = (request, random) => {
  // the soft ends are shallower than the threshold: they are added outside the length asked
  const ends = drawEnds(random, request.length, [2, 4], [5, 10]);
  const range = { from: request.x - 0.25 * ends.first, to: request.x + request.length + 0.25 * ends.last };
  return toeUndercut(request, random, {
    type: "continuous-undercut",
    range,
    depth: request.severity,
    width: [1.4, 2],
    drawEnvelope: (draw) => unevenEnvelope(range.from, range.to, ends, 0.5, draw.seed()),
    measured: { threshold: 0.1, bridge: 1.5, beyond: 2 },
    isHarmless: false,
  });
};
