import { clamp } from "../../math";
import type { RandomStream } from "../../random";
import { toeAt } from "../runs/edit";
import type { Point } from "../truth";
import type { FaceWork, FeatureBuilder, FeatureRequest } from "../work";
import { type CrackLine, crackFeature } from "./crack-feature";
import { taperingOpening } from "./crack-opening";
import { crackPath, cutOff, forkFrom, settleIntoCreases } from "./crack-path";
import { placeOnRun, runIndex } from "./visible-run";

const NOTCH = 0.2;
/** Cracks may run this far beyond a toe into the plate, mm. */
const INTO_PLATE = 0.8;

/** Angles of the arms: a long pair that nearly goes on through the middle, the others wherever stress let go. */
function armAngles(random: RandomStream, count: number): number[] {
  const first = random.uniform(0, 6.283);
  const others = Array.from({ length: count - 2 }, (_, n) => {
    const half = n % 2 === 0 ? 0 : Math.PI;
    return first + half + random.uniform(0.5, 2.6);
  });
  return [first, first + Math.PI + random.normal(0, 0.35), ...others];
}

function drawArms(work: FaceWork, request: FeatureRequest, random: RandomStream): CrackLine[] {
  const size = Math.max(1.5, request.severity);
  const y = request.y ?? placeOnRun(work, runIndex(work, request), request.x, random, 0.4);
  const low = toeAt(work, -1, request.x, 2) - INTO_PLATE;
  const high = toeAt(work, 1, request.x, 2) + INTO_PLATE;
  const widest = random.uniform(0.05, 0.075) + 0.009 * size;
  const count = clamp(3 + random.integer(3) + (size > 7 ? 1 : 0), 3, 6);
  return armAngles(random, count).flatMap((angle, n) => {
    const reach = 0.56 * size * (n < 2 ? random.uniform(0.92, 1.08) : random.uniform(0.3, 0.85));
    const off = random.uniform(0, 0.05) * size;
    const away = angle + random.uniform(-1.2, 1.2);
    const from: Point = [request.x + off * Math.cos(away), y + off * Math.sin(away)];
    const to: Point = [request.x + reach * Math.cos(angle), y + reach * Math.sin(angle)];
    const path = crackPath(random, from, to, 0.05 * reach, 0.45, 0.34);
    const arm = cutOff(settleIntoCreases(work.strip, path, 0.4), low, high);
    const weight = n < 2 ? 1 : random.uniform(0.45, 0.85);
    const lines = [{ points: arm, width: taperingOpening(random, widest * weight), depth: NOTCH }];
    if (arm.length < 6 || !random.chance(0.35)) return lines;
    const turn = random.pick([-1, 1]) * random.uniform(0.5, 0.9);
    const fork = cutOff(forkFrom(random, arm, random.uniform(0.35, 0.65), turn, 0.4 * reach), low, high);
    return [...lines, { points: fork, width: taperingOpening(random, 0.6 * widest * weight), depth: 0.7 * NOTCH }];
  });
}

/**
 * Three to six cracks that run out from one point of a run at `x` (or `y`), away from craters; `severity` = mm from tip
 * to tip (2.4 to 11). Truth: a point in the middle of the visible opening; width = the larger of its extents; no size.
 */
export const buildRadiatingCracks: FeatureBuilder = (request, random) =>
  crackFeature(request.id, "radiating-cracks", random, (work) => drawArms(work, request, random.child("arms")));
