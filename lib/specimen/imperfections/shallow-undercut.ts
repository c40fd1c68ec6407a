import type { FeatureBuilder } from "../work";
import { toeUndercut } from "./toe-undercut";
import { drawEnds, unevenEnvelope } from "./uneven-ends";

/** What is deeper than 0.25 mm is recorded: the decoy stays well short of that. */
const DEEPEST = 0.19;

/**
 * Harmless decoy: a toe washed out a little, at most 0.19 mm deep whatever `severity` asks, smoother and wider than a
 * real undercut. Truth: neutral, `measureToeGroove` with threshold 0.06 mm.
 */
export const buildShallowUndercut: FeatureBuilder = (request, random) => {
  const ends = drawEnds(random, request.length, [2, 4], [4, 9]);
  const range = { from: request.x, to: request.x + request.length };
  return toeUndercut(request, random, {
    type: "continuous-undercut",
    range,
    depth: Math.min(request.severity, DEEPEST),
    width: [1.1, 1.7],
    drawEnvelope: (draw) => unevenEnvelope(range.from, range.to, ends, 0.4, draw.seed()),
    measured: { threshold: 0.06, bridge: 1.5, beyond: 0 },
    isHarmless: true,
  });
};
