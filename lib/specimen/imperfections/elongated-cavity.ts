import { clamp, ease, mix } from "../../math";
import type { RandomStream } from "../../random";
import { gradient1 } from "../../surface";
import type { Point } from "../truth";
import type { FaceWork, FeatureBuilder, FeatureRequest } from "../work";
import type { GasTrack } from "./gas-track";
import { trackFeature } from "./track-feature";
import { runIndex, visibleRun } from "./visible-run";

/** A skin no longer than this may part the open hole, mm. */
const BRIDGE = 2.5;
/** mm */
const STEP = 0.4;
const DEEPEST = 1.4;
/** A narrow hole winds as much as one of this half width, mm. */
const WINDS = 0.42;

/** Middle line along the run, bent and a little aslant, half a width short of both ends. */
function middleLine(work: FaceWork, request: FeatureRequest, random: RandomStream, half: number): Point[] {
  const run = runIndex(work, request);
  const from = request.x + half;
  const to = Math.max(from + half, request.x + request.length - half);
  const place = random.uniform(0.28, 0.72);
  const { low, high } = visibleRun(work, run, (from + to) / 2);
  const middle = request.y ?? mix(low, high, place);
  const slope = random.normal(0, 0.08);
  const seed = random.seed();
  const steps = Math.max(2, Math.round((to - from) / STEP));
  return Array.from({ length: steps + 1 }, (_, n) => {
    const x = mix(from, to, n / steps);
    return [
      x,
      middle +
        slope * (x - (from + to) / 2) +
        Math.max(half, WINDS) * (0.8 * gradient1(x / 3.1, seed) + 0.14 * gradient1(x / 1.2, seed + 1)),
    ];
  });
}

function drawCavity(work: FaceWork, request: FeatureRequest, random: RandomStream): GasTrack {
  const width = Math.max(0.4, request.severity);
  const half = width / 2;
  const seed = random.seed();
  const long = Math.max(1, request.length);
  const ends = [random.uniform(0.6, 1), random.uniform(0.35, 0.85)];
  if (random.chance(0.5)) ends.reverse();
  const deep = Math.min(DEEPEST, 0.15 + width * random.uniform(0.14, 0.4));
  const deepAt = random.uniform(0.2, 0.8);
  const roofed = random.chance(0.3) ? random.uniform(0.1, 0.24) : 0;
  const swell = (s: number) =>
    0.78 + 0.6 * gradient1((s * long) / 2.6, seed + 1) + 0.16 * gradient1((s * long) / 1.1, seed + 4);
  return {
    points: middleLine(work, request, random, half),
    halfWidth: (s) =>
      half *
      clamp(mix(0.9, swell(s), ease(0.02, 0.16, Math.min(s, 1 - s))), 0.45, 1.1) *
      Math.min(1, mix(ends[0], 1.3, 3 * s), mix(ends[1], 1.3, 3 * (1 - s))),
    depth: (s) => deep * clamp(1 - 0.8 * Math.abs(s - deepAt) + 0.35 * gradient1((s * long) / 2.2, seed + 2), 0.5, 1.1),
    widest: half,
    roofs: roofed > 0 ? [random.chance(0.5) ? [0.04, roofed] : [1 - roofed, 0.96]] : [],
    lean: random.uniform(-0.9, 0.9),
    gloss: clamp(random.normal(0.4, 0.3), 0, 1) * ease(0.5, 1.4, width),
    soft: 0,
    mouth: () => 0,
    slag: work.joint.process === "111" || work.joint.process === "136" ? random.uniform(0, 0.35) : 0,
    seed,
  };
}

/**
 * One long hole along a run from `x` over `length` mm (2 to 12), `severity` mm wide (0.42 to 1.8), rounded at ends and
 * edges, one end sometimes under a skin. Truth: extent of what lies deeper than 0.12 mm; width = extent across; no size.
 */
export const buildElongatedCavity: FeatureBuilder = (request, random) =>
  trackFeature(request.id, "elongated-cavity", (work) => [drawCavity(work, request, random.child("cavity"))], BRIDGE);
