import { clamp, ease, hypot, mix } from "../../math";
import type { RandomStream } from "../../random";
import { gradient2 } from "../../surface";
import type { FaceWork, FeatureBuilder, FeatureRequest } from "../work";
import { type PoreSpot, poreGroup } from "./pore-group";
import { runIndex, visibleRun } from "./visible-run";

const SMALLEST = 0.24;
const NECK = 0.25;
/** Pores per mm of length on a run of usual width (mm); a wider run has more. */
const DENSITY = [0.3, 0.7] as const;
/** Where the largest is this small there are so many of the usual, mm. */
const FEW = { share: 0.55, from: 0.5, to: 1.1 };
const USUAL_WIDTH = 8;
const MOST = 70;
const TRIES = 25;
/** Half width over which they come up at most, mm. */
const WIDEST = 8;
/** Share of a run's half width over which pores come up. */
const SPREAD = 0.86;

/**
 * Places over a stretch, thick and thin by a slow noise, none touching another; the first and the last two stand at its
 * ends.
 */
function scatter(work: FaceWork, request: FeatureRequest, random: RandomStream): PoreSpot[] {
  const length = Math.max(8, request.length);
  const run = runIndex(work, request);
  const seed = random.seed();
  const seen = visibleRun(work, run, request.x + length / 2);
  const wide = clamp((seen.high - seen.low) / USUAL_WIDTH, 0.7, 1.8);
  const few = mix(FEW.share, 1, ease(FEW.from, FEW.to, request.severity));
  const count = clamp(Math.round(random.uniform(...DENSITY) * length * wide * few), 8, MOST);
  const spots: PoreSpot[] = [];
  for (let n = 0; n < count; n++) {
    const diameter =
      n === 0
        ? request.severity
        : clamp(random.logNormal(0.48 * request.severity, 0.42), SMALLEST, 0.92 * request.severity);
    for (let attempt = 0; attempt < TRIES; attempt++) {
      const share = n === 1 ? 0 : n === 2 ? 1 : random.uniform(0, 1);
      const x = request.x + mix(diameter / 2, length - diameter / 2, share);
      const { low, high } = visibleRun(work, run, x);
      const half = Math.min(WIDEST, 0.5 * (high - low));
      const y = 0.5 * (low + high) + SPREAD * Math.max(0, half - diameter / 2) * random.uniform(-1, 1);
      const isThin = n > 2 && gradient2(x / 6, y / 4, seed) < random.uniform(-1.2, 0.2);
      if (isThin || spots.some((s) => hypot(s.x - x, s.y - y) < 0.6 * (s.diameter + diameter) + NECK)) continue;
      spots.push({ x, y, diameter, open: n === 0 });
      break;
    }
  }
  return spots;
}

/**
 * Many pores scattered over a run from `x` over `length` mm (14 to 60), without a centre, the largest mouth `severity`
 * mm across (0.36 to 1.5). Truth: size = largest mouth; start and end = outermost mouth edges.
 */
export const buildSurfacePorosity: FeatureBuilder = (request, random) =>
  poreGroup(request.id, "surface-porosity", random, (work) => scatter(work, request, random.child("scatter")));
