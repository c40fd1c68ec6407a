import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import type { Range } from "../measure";
import type { FeatureBuilder } from "../work";
import { toeUndercut } from "./toe-undercut";
import type { Envelope } from "./uneven-ends";

/** Longest sound toe between two bites of one chain, mm: what lies further apart is another imperfection. */
const LONGEST_GAP = 10;

/** One groove of the chain, mm. */
interface Link extends Range {
  readonly share: number;
  readonly ramp: number;
}

/** Parts a length into short grooves of 2.5 to 8 mm with 2.5 to 6 mm of sound toe between them; the chain fills the length. */
function drawLinks(random: RandomStream, from: number, to: number): Link[] {
  const links: Link[] = [];
  let x = from;
  while (x < to - 1.5) {
    const long = clamp(random.logNormal(4.4, 0.4), 2.5, 8);
    const rest = to - (x + long);
    // a rest too short for another link is given to this one
    const end = rest < 5 ? Math.min(to, x + 9) : x + long;
    const ramp = Math.min(random.uniform(1.1, 2.6), (end - x) / 2.6);
    // a short bite is a shallow one
    const share = random.uniform(0.6, 1) * clamp((end - x) / 5, 0.5, 1);
    links.push({ from: x, to: end, share, ramp });
    x = end + random.uniform(2.5, 6);
  }
  return links;
}

/** 1 within the links, 0 between them, each with its own depth and ends. */
const chainEnvelope =
  (links: readonly Link[]): Envelope =>
  (x) =>
    links.reduce((most, link) => {
      const inside = ease(link.from, link.from + link.ramp, x) * ease(link.to, link.to - 1.4 * link.ramp, x);
      return Math.max(most, link.share * inside);
    }, 0);

/**
 * Intermittent undercut: a chain of short grooves along one toe with sound toe between them. `severity` = largest depth,
 * mm. Truth: `measureToeGroove` with threshold 0.1 mm; the chain is one imperfection over gaps up to 10 mm.
 */
export const buildIntermittentUndercut: FeatureBuilder = (request, random) => {
  const range = { from: request.x, to: request.x + request.length };
  return toeUndercut(request, random, {
    type: "intermittent-undercut",
    range,
    depth: request.severity,
    width: [1.2, 1.8],
    drawEnvelope: (draw) => chainEnvelope(drawLinks(draw, range.from, range.to)),
    measured: { threshold: 0.1, bridge: LONGEST_GAP, beyond: 1 },
    isHarmless: false,
  });
};
