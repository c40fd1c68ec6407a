import { clamp, ease, mix } from "../../math";
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
const SEVERAL = { "111": 0.3, "135": 0.2, "136": 0.85, "141": 0.1 } as const;
/** From where to where across a run a track leads, in half widths: from the side inwards, as the metal froze. */
const ACROSS = { from: [0.5, 0.82], to: [0.02, 0.3] } as const;

/** Half width over which the tracks of a group spread at most, mm. */
const WIDEST_GROUP = 4.2;

interface Way {
  readonly tail: Point;
  readonly head: Point;
}

/** Ways of the tracks: each from the side towards the middle and on with the travel, side by side over the length. */
function drawWays(work: FaceWork, request: FeatureRequest, random: RandomStream): Way[] {
  const index = runIndex(work, request);
  const { direction } = work.plan.runs[index];
  const length = Math.max(4, request.length);
  const isGroup =
    request.variant === "several" || (request.variant !== "single" && random.chance(SEVERAL[work.joint.process]));
  const count = isGroup && length > 5 ? 2 + random.integer(length > 9 ? 3 : 2) : 1;
  const own = count === 1 ? length : clamp(length * random.uniform(0.35, 0.55), 3, 8);
  let side = random.pick([-1, 1]);
  return Array.from({ length: count }, (_, n) => {
    const part = count === 1 ? 0 : n / (count - 1);
    const isInner = n > 0 && n < count - 1;
    const x = request.x + part * (length - own) + (isInner ? random.normal(0, 0.5) : 0);
    const along = own * (isInner ? random.uniform(0.6, 1) : 1);
    side = random.chance(0.75) ? -side : side;
    const { low, high } = visibleRun(work, index, x + own / 2);
    const middle = request.y ?? (low + high) / 2;
    const half = Math.min(WIDEST_GROUP, (high - low) / 2);
    const outer = middle + side * half * (count === 1 ? random.uniform(0.15, 0.5) : random.uniform(...ACROSS.from));
    const inner = middle + side * half * random.uniform(...ACROSS.to);
    const [tail, head] = direction > 0 ? [x, x + along] : [x + along, x];
    return { tail: [tail, outer], head: [head, inner] };
  });
}

function drawTrack(work: FaceWork, { tail, head }: Way, width: number, random: RandomStream): GasTrack {
  const half = (width / 2) * random.uniform(0.8, 1.05);
  const seed = random.seed();
  const length = Math.hypot(head[0] - tail[0], head[1] - tail[1]);
  const winding = Math.min(0.5, 0.09 * length) * random.uniform(0.6, 1.3);
  const bend = random.uniform(0.6, 0.9);
  const steps = Math.max(4, Math.round(length / STEP));
  const points = Array.from({ length: steps + 1 }, (_, n): Point => {
    const s = n / steps;
    const held = Math.min(1, 4 * s, 4 * (1 - s) + 0.2);
    const off = winding * held * (gradient1((s * length) / 2.1, seed) + 0.5 * gradient1((s * length) / 0.9, seed + 1));
    return [mix(tail[0], head[0], s), mix(tail[1], head[1], s ** bend) + off];
  });
  const deep = Math.max(SHALLOWEST + 0.08, width * random.uniform(0.2, 0.38));
  const hole = random.uniform(0.15, 0.6);
  const from = random.uniform(0.3, 0.55);
  const isRoofed = random.chance(0.4) && length > 4;
  return {
    points,
    halfWidth: (s) =>
      half *
      clamp(0.75 + 0.35 * gradient1((s * length) / 1.7, seed + 2) + 0.3 * ease(0.8, 0.97, s), 0.4, 1.1) *
      mix(0.35, 1, ease(0, 0.4, s)),
    depth: (s) =>
      Math.max(SHALLOWEST, deep * (0.75 + 0.4 * gradient1((s * length) / 2.3, seed + 3)) * ease(-0.25, 0.2, s)) +
      hole * width * ease(0.86, 0.96, s),
    widest: half * 1.1,
    roofs: isRoofed ? [[from, Math.min(0.85, from + random.uniform(0.8, 2.4) / length)]] : [],
    lean: random.uniform(-0.5, 0.5),
    gloss: clamp(random.normal(0.45, 0.25), 0, 1) * ease(0.3, 0.9, width),
    slag: work.joint.process === "136" ? random.uniform(0.05, 0.45) : 0,
    seed,
  };
}

/**
 * Winding tracks of gas from `x` over `length` mm (3.5 to 20), `severity` mm wide (0.38 to 1.2), pointing with the ripples
 * towards the travel, each ending in a hole: variant "single" or "several" (2 to 4 side by side), else by process. Truth:
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
