import { clamp, hypot } from "../../math";
import type { RandomStream } from "../../random";
import type { Point } from "../truth";
import type { FaceWork, FeatureBuilder, FeatureRequest } from "../work";
import { type CrackLine, crackFeature } from "./crack-feature";
import { lensOpening } from "./crack-opening";
import { crackPath, settleIntoCreases } from "./crack-path";
import { runIndex, visibleRun } from "./visible-run";

const NOTCH = 0.18;
/** Cracks of a group keep at least this far apart, and for one group at most about `BRIDGE`, mm. */
const APART = 0.9;
const BRIDGE = 6;
const TRIES = 30;
/** Each finds the creases of the ripples that lie within this, mm. */
const CREASE_REACH = 0.45;
const WIDEST_GROUP = 3;

const isApart = (points: readonly Point[], others: readonly (readonly Point[])[]): boolean =>
  others.every((other) => other.every(([ox, oy]) => points.every(([x, y]) => hypot(x - ox, y - oy) > APART)));

/** One short crack about (x, y): along, across or aslant, never outside the ends of the group. */
function shortCrack(random: RandomStream, x: number, y: number, ends: readonly [number, number]): Point[] {
  const angle = random.chance(0.4) ? random.normal(0, 0.35) : random.uniform(0, Math.PI);
  const half = 0.5 * clamp(random.logNormal(2.4, 0.4), 1.2, 5);
  const dx = half * Math.cos(angle);
  const dy = half * Math.sin(angle);
  const middle = clamp(x, ends[0] + Math.abs(dx), ends[1] - Math.abs(dx));
  return crackPath(random, [middle - dx, y - dy], [middle + dx, y + dy], 0.22, 0.34, 0.42);
}

function drawGroup(work: FaceWork, request: FeatureRequest, random: RandomStream): CrackLine[] {
  const length = Math.max(6, request.length);
  const count = clamp(Math.round(length / random.uniform(2.2, 3)), 4, 11);
  const ends = [request.x, request.x + length] as const;
  const drawn: Point[][] = [];
  const drift = random.normal(0, 0.15);
  for (let n = 0; n < count; n++) {
    for (let attempt = 0; attempt < TRIES; attempt++) {
      const x = request.x + ((n + 0.5 + random.normal(0, 0.25)) * length) / count;
      const { low, high } = visibleRun(work, runIndex(work, request), x);
      const spread = Math.min(WIDEST_GROUP, 0.3 * (high - low));
      const middle = request.y ?? 0.5 * (low + high) + drift * (high - low);
      const isEnd = n === 0 || n === count - 1;
      const y = middle + spread * random.uniform(-1, 1) * (isEnd ? 0.6 : 1);
      const crack = settleIntoCreases(work.strip, shortCrack(random, x, y, ends), CREASE_REACH);
      if (!isApart(crack, drawn)) continue;
      drawn.push(crack);
      break;
    }
  }
  const widest = (request.severity > 0 ? request.severity : 0.14) * clamp(0.5 + length / 28, 0.65, 1.1);
  return drawn.map((points, n) => {
    const weight = n === 0 || n === count - 1 ? 1 : random.uniform(0.55, 1.15);
    return { points, width: lensOpening(random, widest * weight), depth: NOTCH };
  });
}

/**
 * Four to eleven short cracks from `x` over `length` mm on one run, in different directions, none meeting another;
 * `severity` = mm that the widest gapes (0.08 to 0.18). Truth: extent of their visible openings; no size.
 */
export const buildDisconnectedCracks: FeatureBuilder = (request, random) =>
  crackFeature(
    request.id,
    "disconnected-cracks",
    random,
    (work) => drawGroup(work, request, random.child("group")),
    BRIDGE,
  );
