import { clamp } from "../../math";
import type { RandomStream } from "../../random";
import type { Point } from "../truth";
import type { Crater, FeatureBuilder } from "../work";
import { type CrackLine, crackFeature } from "./crack-feature";
import { taperingOpening, unevenOpening } from "./crack-opening";
import { crackPath, forkFrom, settleIntoCreases } from "./crack-path";
import { craterNear, leaveCraterOpen } from "./crater";

const NOTCH = 0.22;
/** Tips too fine to be seen, mm at each end. */
const HIDDEN_TIP = 0.3;
/** A crack across a crater may run out of it to its run's toe: so many crater radii. */
const OUT_OF_CRATER = 1.15;

/** Branches of a star crack: uneven lengths, longest along the weld, running into each other off the middle. */
function starBranches(random: RandomStream, crater: Crater, length: number): Point[][] {
  const count = 3 + random.integer(3);
  const first = random.uniform(0, 6.28);
  const x = crater.x + random.normal(0, 0.14) * crater.radiusX;
  const y = crater.y + random.normal(0, 0.14) * crater.radiusY;
  return Array.from({ length: count }, (_, n) => {
    const angle = first + ((n + random.normal(0, 0.2)) * 6.283) / count;
    const lengthwise = 0.7 + 0.3 * Math.abs(Math.cos(angle));
    const share = n < 2 ? random.uniform(0.95, 1.15) : random.uniform(0.35, 0.9);
    const reach = clamp(0.66 * length * share * lengthwise, 0.5, OUT_OF_CRATER * crater.radiusX);
    const from = random.uniform(0, 0.04) * length;
    return crackPath(
      random,
      [x + from * Math.cos(angle + 1), y + from * Math.sin(angle + 1)],
      [x + reach * Math.cos(angle), y + 0.9 * reach * Math.sin(angle)],
      0.07 * length,
      0.34,
      0.45,
    );
  });
}

/** One line through the crater, along or across the weld, off the middle and aslant; sometimes forked. */
function throughCrater(random: RandomStream, crater: Crater, length: number, isAlong: boolean): Point[][] {
  const most = OUT_OF_CRATER * 2 * (isAlong ? crater.radiusX : crater.radiusY);
  const half = 0.5 * Math.min(length, most) + HIDDEN_TIP;
  const angle = (isAlong ? 0 : Math.PI / 2) + random.normal(0, 0.2);
  const x = crater.x + random.normal(0, 0.15) * crater.radiusX;
  const y = crater.y + random.normal(0, 0.15) * crater.radiusY;
  const dx = half * Math.cos(angle);
  const dy = half * Math.sin(angle);
  const line = crackPath(random, [x - dx, y - dy], [x + dx, y + dy], 0.06 * length, 0.45, 0.32);
  if (length < 3.5 || random.chance(0.6)) return [line];
  return [line, forkFrom(random, line, random.uniform(0.3, 0.7), random.pick([-0.7, 0.7]), 0.3 * length)];
}

function shapeOf(variant: string | undefined, random: RandomStream, crater: Crater, length: number): Point[][] {
  if (variant === "along" || variant === "across") return throughCrater(random, crater, length, variant === "along");
  return starBranches(random, crater, length);
}

/**
 * Fine cracks in an open crater at `x`, about `severity` mm from tip to tip (1.5 to 6.5): variant "star" (default), "along"
 * or "across" the weld. Truth: a point at the middle of the visible opening (coverage from 0.25 up); width = the larger
 * of its extents; no size.
 */
export const craterCrack: FeatureBuilder = (request, random) => {
  const length = Math.max(request.severity, 1.5);
  const feature = crackFeature(request.id, "crater-crack", random, (work): CrackLine[] => {
    const crater = craterNear(work, request);
    if (!crater) return [];
    const draw = random.child("branches");
    const isStar = request.variant !== "along" && request.variant !== "across";
    return shapeOf(request.variant, draw, crater, length).map((line, n) => {
      const widest = draw.uniform(0.045, 0.07) + 0.013 * length;
      const width = isStar || n > 0 ? taperingOpening(draw, widest) : unevenOpening(draw, 1.1 * widest);
      return { points: settleIntoCreases(work.strip, line, 0.2), width, depth: NOTCH };
    });
  });
  return { ...feature, plan: (work) => leaveCraterOpen(work, request, random.child("stop")) };
};
