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
const SEVERAL = { "111": 0.45, "135": 0.3, "136": 0.85, "141": 0.2 } as const;
/** From where to where across a run a track leads, in half widths: from the side inwards, as the metal froze. */
const ACROSS = { from: [0.58, 0.84], to: [0.06, 0.34] } as const;
/** Tubes of a herringbone: length, mm, and their middles' distance along the weld, in lengths. */
const TUBE = { least: 2, most: 5.5 } as const;
const SPACED = [0.55, 0.95] as const;
const MOST_TUBES = 9;

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
    const x = request.x + part * (length - own) + (isInner ? random.normal(0, 0.12 * own) + 0.5 * (own - along) : 0);
    side = random.chance(0.8) ? -side : side;
    const { low, high } = visibleRun(work, index, x + own / 2);
    const middle = request.y ?? (low + high) / 2;
    const half = Math.min(WIDEST_GROUP, (high - low) / 2);
    const outer = middle + side * half * (count === 1 ? random.uniform(0.15, 0.5) : random.uniform(...ACROSS.from));
    const inner = middle + side * half * random.uniform(...ACROSS.to);
    const [tail, head] = direction > 0 ? [x, x + along] : [x + along, x];
    return { tail: [tail, outer], head: [head, inner] };
  });
}

/** Stretches where the tube did not break through: none, one or two, the ends always open. */
function drawRoofs(random: RandomStream, length: number): [number, number][] {
  const count = random.integer(length > 5 ? 3 : 2);
  const first = random.uniform(0.14, 0.4);
  return Array.from({ length: count }, (_, n) => {
    const from = first + 0.42 * n;
    return [from, Math.min(0.86, from + random.uniform(0.5, 1.8) / length)];
  });
}

function drawTrack(work: FaceWork, { tail, head }: Way, width: number, random: RandomStream): GasTrack {
  const half = (width / 2) * random.uniform(0.8, 1.05);
  const seed = random.seed();
  const length = hypot(head[0] - tail[0], head[1] - tail[1]);
  const winding = Math.min(0.45, 0.09 * length) * random.uniform(0.6, 1.4);
  const bend = random.uniform(0.62, 1.2);
  const steps = Math.max(4, Math.round(length / STEP));
  const points = Array.from({ length: steps + 1 }, (_, n): Point => {
    const s = n / steps;
    const held = Math.min(1, 4 * s, 4 * (1 - s) + 0.2);
    const off = winding * held * (gradient1((s * length) / 1.9, seed) + 0.35 * gradient1((s * length) / 0.8, seed + 1));
    return [mix(tail[0], head[0], s), mix(tail[1], head[1], s ** bend) + off];
  });
  const deep = Math.max(SHALLOWEST + 0.08, width * random.uniform(0.3, 0.52));
  const hole = random.chance(0.35) ? random.uniform(0.1, 0.4) : 0;
  // a tube is widest before its middle or behind it, and runs out to both ends
  const belly = random.uniform(0.35, 0.8);
  const blunt = random.uniform(0.25, 0.65);
  const tapered = (s: number) => Math.min(mix(0.2, 1, ease(0, belly, s)), mix(blunt, 1, ease(1, belly, s)));
  return {
    points,
    halfWidth: (s) => half * clamp(0.88 + 0.55 * gradient1((s * length) / 1.5, seed + 2), 0.42, 1.1) * tapered(s),
    depth: (s) =>
      Math.max(SHALLOWEST, deep * (0.85 + 0.5 * gradient1((s * length) / 1.9, seed + 3)) * tapered(s)) +
      hole * width * ease(0.86, 0.96, s),
    widest: half * 1.1,
    roofs: drawRoofs(random, length),
    lean: random.uniform(-0.5, 0.5),
    gloss: clamp(random.normal(0.14, 0.14), 0, 0.5),
    slag: work.joint.process === "136" ? random.uniform(0.05, 0.45) : 0,
    seed,
  };
}

/**
 * Tubes of gas that broke the surface, from `x` over `length` mm (3.5 to 20), `severity` mm wide (0.38 to 1.2), pointing with
 * the ripples towards the travel, tapered, partly under their roof: variant "single" or "several" (a herringbone of up to 9
 * short ones from both sides), else by process. Truth:
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
