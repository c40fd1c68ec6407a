import { clamp, ease, hypot, mix } from "../../math";
import type { RandomStream } from "../../random";
import { gradient1 } from "../../surface";
import type { Point } from "../truth";
import type { FaceWork, FeatureBuilder, FeatureRequest } from "../work";
import type { GasTrack } from "./gas-track";
import { trackFeature } from "./track-feature";
import { runIndex, visibleRun } from "./visible-run";

/** Tracks of one group, and open parts of one track, lie at most this far apart, mm. */
const BRIDGE = 5;
const STEP = 0.35;
const SHALLOWEST = 0.14;
/** How often there are several tracks, by process: gas caught under the slag of a cored wire leaves many. */
const SEVERAL = { "111": 0.65, "135": 0.55, "136": 0.9, "141": 0.4 } as const;
/** From where to where across a run a track leads, in half widths: from the side inwards, as the metal froze. */
const ACROSS = { from: [0.55, 0.8], to: [0.02, 0.28] } as const;
/** Tubes of a herringbone: length, mm, and their middles' distance along the weld, in lengths. */
const TUBE = { least: 1.8, most: 4.4 } as const;
const SPACED = [0.55, 0.95] as const;
const MOST_TUBES = 9;
/** A track swings out about so far, once to and fro over so much of its way, mm. */
const WINDING = 0.8;
const TURN = [4.5, 9] as const;

/** Tracks end so much short of what was asked, both ends together: their rounded ends reach on, mm. */
const ENDS = 0.55;
/** Half width over which the tracks of a group spread at most, mm. */
const WIDEST_GROUP = 4.2;

interface Way {
  readonly tail: Point;
  readonly head: Point;
  /** How likely the gas left a hole at its head. */
  readonly opens: number;
}

/** Ways of the tracks: each from the side towards the middle and on with the travel, side by side over the length. */
function drawWays(work: FaceWork, request: FeatureRequest, random: RandomStream): Way[] {
  const index = runIndex(work, request);
  const { direction } = work.plan.runs[index];
  const length = Math.max(3.4, request.length - ENDS);
  const isGroup =
    request.variant === "several" || (request.variant !== "single" && random.chance(SEVERAL[work.joint.process]));
  const tube = clamp(length * random.uniform(0.3, 0.5), TUBE.least, TUBE.most);
  const count =
    isGroup && length > 4.5
      ? clamp(Math.round((length - tube) / (tube * random.uniform(...SPACED))) + 1, 2, MOST_TUBES)
      : 1;
  const own = count === 1 ? length : tube;
  let side = random.pick([-1, 1]);
  return Array.from({ length: count }, (_, n) => {
    const part = count === 1 ? 0 : n / (count - 1);
    const isInner = n > 0 && n < count - 1;
    const along = own * (isInner ? random.uniform(0.45, 1) : 1);
    const x =
      request.x + ENDS / 2 + part * (length - own) + (isInner ? random.normal(0, 0.12 * own) + 0.5 * (own - along) : 0);
    side = random.chance(0.8) ? -side : side;
    const { low, high } = visibleRun(work, index, x + own / 2);
    const middle = request.y ?? (low + high) / 2;
    const half = Math.min(WIDEST_GROUP, (high - low) / 2);
    const outer = middle + side * half * (count === 1 ? random.uniform(0.15, 0.5) : random.uniform(...ACROSS.from));
    const inner = middle + side * half * random.uniform(...ACROSS.to);
    const [tail, head] = direction > 0 ? [x, x + along] : [x + along, x];
    return { tail: [tail, outer], head: [head, inner], opens: count === 1 ? 0.9 : 0.65 };
  });
}

function drawTrack(work: FaceWork, { tail, head, opens }: Way, width: number, random: RandomStream): GasTrack {
  const half = (width / 2) * random.uniform(1.1, 1.45);
  const seed = random.seed();
  const length = hypot(head[0] - tail[0], head[1] - tail[1]);
  const winding = Math.min(WINDING, 0.13 * length) * random.uniform(0.6, 1.3);
  const bend = random.uniform(0.62, 1.2);
  const turns = length / random.uniform(...TURN);
  const phase = random.uniform(0, 6.28);
  const steps = Math.max(6, Math.round(length / STEP));
  const points = Array.from({ length: steps + 1 }, (_, n): Point => {
    const s = n / steps;
    const held = Math.min(1, 3 * s, 3 * (1 - s) + 0.2);
    const swing = Math.sin(phase + 6.28 * turns * s + 1.4 * gradient1((s * length) / 3.7, seed + 1));
    const off = winding * held * (0.7 * swing + 0.45 * gradient1((s * length) / 2.3, seed));
    return [mix(tail[0], head[0], s), mix(tail[1], head[1], s ** bend) + off];
  });
  const deep = Math.max(SHALLOWEST + 0.12, width * random.uniform(0.32, 0.48));
  // where the gas broke out it left a hole, unless the metal closed over it again
  const out = random.chance(opens) ? random.uniform(0.3, 0.8) : 0;
  const wide = random.uniform(0.85, 1.2);
  const mouthFrom = 1 - (wide * 1.3 * half) / length;
  const mouth = (s: number) => (out > 0 ? ease(mouthFrom - 0.35 / length, mouthFrom + 0.5 / length, s) : 0);
  // a tube is widest before its middle or behind it, and runs out to both ends
  const belly = random.uniform(0.45, 0.85);
  const blunt = random.uniform(0.35, 0.65);
  const tapered = (s: number) => Math.min(mix(0.3, 1, ease(0, belly, s)), mix(blunt, 1, ease(1, belly, s)));
  // where the skin over it held longest it is a saddle, not a furrow
  const saddle = {
    at: random.uniform(0.25, 0.7),
    half: random.uniform(0.5, 1.1) / length,
    high: random.uniform(0, 0.75),
  };
  const sunk = (s: number) => 1 - saddle.high * Math.max(0, 1 - ((s - saddle.at) / saddle.half) ** 2);
  return {
    points,
    halfWidth: (s) =>
      half *
      mix(clamp(0.9 + 0.4 * gradient1((s * length) / 2.1, seed + 2), 0.5, 1.1) * tapered(s), 0.75 * wide, mouth(s)),
    depth: (s) =>
      Math.max(SHALLOWEST, deep * (0.9 + 0.4 * gradient1((s * length) / 1.9, seed + 3)) * tapered(s) * sunk(s)) +
      out * width * mouth(s),
    widest: half * 1.1,
    roofs: [],
    lean: random.uniform(-0.5, 0.5),
    gloss: clamp(random.normal(0.3, 0.16), 0, 0.6),
    slag: work.joint.process === "136" ? random.uniform(0.05, 0.35) : 0,
    soft: 1,
    mouth,
    seed,
  };
}

/**
 * Tubes of gas that broke the surface, from `x` over `length` mm (3.5 to 20), `severity` mm wide (0.38 to 1.2), pointing with
 * the ripples towards the travel: smooth winding furrows, tapered, in places a mere saddle: variant "single" or "several" (a herringbone of up to 9
 * short ones from both sides), else by process; most end in the round mouth that the gas left by. Truth:
 * extent of what lies open, tracks up to 5 mm apart taken together; width = extent across; no size.
 */
export const buildWormHole: FeatureBuilder = (request, random) =>
  trackFeature(
    request.id,
    "worm-hole",
    (work) =>
      drawWays(work, request, random.child("ways")).map((way, n) =>
        drawTrack(work, way, Math.max(0.35, request.severity), random.child(`track/${n}`)),
      ),
    BRIDGE,
  );
