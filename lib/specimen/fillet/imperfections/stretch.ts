import type { RandomStream } from "../../../random";
import { gradient1 } from "../../../surface";
import { drawEnds, largestAlong, unevenEnvelope } from "../../imperfections/uneven-ends";
import type { FeatureRequest } from "../../work";

/** A stretch of weld whose shape comes and goes with the hand: share 0..1 of what is asked, from place to place, mm. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly share: (x: number) => number;
}

/** A stretch about as long as asked, uneven, with a short end and a long one. */
export function drawStretch({ x, length }: FeatureRequest, random: RandomStream): Stretch {
  const ends = drawEnds(random, length, [7, 11], [11, 17]);
  const from = x - 0.6 * ends.first;
  const to = x + length + 0.6 * ends.last;
  const seed = random.seed();
  const envelope = unevenEnvelope(from, to, ends, 0.6, seed + 10);
  const uneven = (at: number) =>
    envelope(at) * (1 + 0.1 * gradient1(at / 9, seed) + 0.04 * gradient1(at / 3.1, seed + 1));
  const most = largestAlong(from, to, uneven);
  return { from, to, share: (at) => uneven(at) / most };
}
