import { clamp } from "../../math";
import type { RandomStream } from "../../random";
import { gradient1 } from "../../surface";
import type { Point } from "../truth";
import type { Crater, Feature, FeatureBuilder } from "../work";
import { boxAround, openCrack, paintCracks } from "./crack-opening";
import { crackPath } from "./crack-path";
import { craterNear, leaveCraterOpen } from "./crater";
import { measuredCrack } from "./measured-mask";

/** Branches of a star crack: uneven lengths, longest along the weld, running into each other off the middle. */
function starBranches(random: RandomStream, crater: Crater, length: number): Point[][] {
  const count = 3 + random.integer(3);
  const first = random.uniform(0, 6.28);
  const x = crater.x + random.normal(0, 0.08) * crater.radiusX;
  const y = crater.y + random.normal(0, 0.08) * crater.radiusY;
  return Array.from({ length: count }, (_, n) => {
    const angle = first + ((n + random.normal(0, 0.16)) * 6.283) / count;
    const lengthwise = 0.55 + 0.45 * Math.abs(Math.cos(angle));
    const reach = clamp(
      0.62 * length * (n < 2 ? random.uniform(0.9, 1.15) : random.uniform(0.4, 0.9)) * lengthwise,
      0.8,
      0.85 * crater.radiusX,
    );
    const from = random.uniform(0, 0.25);
    return crackPath(
      random,
      [x + from * Math.cos(angle + 1), y + from * Math.sin(angle + 1)],
      [x + reach * Math.cos(angle), y + 0.85 * reach * Math.sin(angle)],
      0.16,
      0.42,
      0.4,
    );
  });
}

/**
 * Fine star of cracks in an open crater at `x`, about `severity` mm from tip to tip. Truth: extent of the visible
 * opening (coverage from 0.25 up), a point at its middle; width = extent across; no size.
 */
export const craterCrack: FeatureBuilder = (request, random): Feature => {
  let branches: Point[][] = [];
  return {
    id: request.id,
    plan: (work) => leaveCraterOpen(work, request, random.child("stop")),
    cut(work) {
      const crater = craterNear(work, request);
      if (!crater) return;
      branches = starBranches(random.child("branches"), crater, Math.max(request.severity, request.length, 2.5));
      branches.forEach((branch, n) => {
        const own = random.child(`branch/${n}`);
        const widest = own.uniform(0.1, 0.17);
        const seed = own.seed();
        const width = (t: number, length: number) =>
          widest * Math.max(0, 1 - t / length) ** 0.55 * (0.85 + 0.35 * gradient1(t / 0.8, seed));
        openCrack(work.strip, branch, width, 0.25);
      });
    },
    paint(work) {
      if (branches.length) paintCracks(work.strip, boxAround(branches, 0.4));
    },
    measure: (work) => (branches.length ? measuredCrack(work, request.id, "crater-crack", branches) : null),
  };
};
