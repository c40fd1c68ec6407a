import { clamp } from "../../math";
import type { RandomStream } from "../../random";
import type { Feature, FeatureBuilder, FeatureRequest } from "../work";
import { cutGasHole, drawGasHole, type GasHole, type HoleTrace, paintGasHole } from "./gas-hole";
import { measuredHoles } from "./measured-hole";
import { placeOnRun, runIndex } from "./visible-run";

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}

const SMALLEST = 0.34;
const FLATTENING = 0.68;
const NECK = 0.1;

/** Mouth diameters of a cluster, largest first: one as asked, one or two large ones, the rest log-normal and small. */
function diameters(random: RandomStream, count: number, largest: number): number[] {
  const large = count > 8 ? 2 : 1;
  const rest = Array.from({ length: count - 1 }, (_, n) =>
    n < large
      ? largest * random.uniform(0.62, 0.88)
      : clamp(random.logNormal(0.36 * largest, 0.5), SMALLEST, 0.8 * largest),
  );
  return [largest, ...rest.sort((a, b) => b - a)];
}

/** Places of a cluster about (0, 0): one to three centres, some strays; a few holes may touch. */
export function clusterSpots(random: RandomStream, length: number, largest: number): Spot[] {
  const count = clamp(Math.round(random.uniform(0.9, 1.35) * length), 5, 22);
  const centres = Array.from({ length: 1 + random.integer(3) }, () => ({
    x: random.normal(0, 0.15) * length,
    y: random.normal(0, 0.12) * length,
    sigma: random.uniform(0.1, 0.22) * length,
  }));
  const skew = random.uniform(-0.5, 0.5);
  const spots: Spot[] = [];
  for (const diameter of diameters(random, count, largest)) {
    for (let attempt = 0; attempt < 40; attempt++) {
      let x: number;
      let y: number;
      if (random.chance(0.2)) {
        const angle = random.uniform(0, 6.283);
        const away = random.uniform(0.34, 0.5) * length;
        x = away * Math.cos(angle);
        y = FLATTENING * away * Math.sin(angle);
      } else {
        const centre = random.pick(centres);
        const along = random.normal(0, centre.sigma);
        const across = random.normal(0, 0.7 * centre.sigma);
        x = centre.x + along - across * skew;
        y = FLATTENING * (centre.y + across + along * skew);
      }
      const apart = random.chance(0.12) ? 0.38 : 0.62;
      const inside = Math.abs(x) + diameter / 2 < 0.54 * length;
      const free = spots.every((s) => Math.hypot(s.x - x, s.y - y) > apart * (s.diameter + diameter) + NECK);
      if (inside && free) {
        spots.push({ x, y, diameter });
        break;
      }
    }
  }
  return withExtent(spots, length);
}

/** Spreads the spots along x so that the group is as long as asked. */
function withExtent(spots: readonly Spot[], length: number): Spot[] {
  const low = Math.min(...spots.map((s) => s.x - s.diameter / 2));
  const high = Math.max(...spots.map((s) => s.x + s.diameter / 2));
  const stretch = clamp(length / Math.max(0.1, high - low), 0.8, 1.5);
  const middle = (low + high) / 2;
  return spots.map((s) => ({ ...s, x: (s.x - middle) * stretch }));
}

/**
 * A group of pores from `x` over `length` mm, the largest mouth `severity` mm across, in sound rippled metal about the
 * middle of a run (or about `y`). Truth: size = largest mouth; start and end = outermost mouth edges.
 */
export const clusteredPorosity: FeatureBuilder = (request: FeatureRequest, random): Feature => {
  const holes: { hole: GasHole; trace: HoleTrace }[] = [];
  return {
    id: request.id,
    cut(work) {
      const length = Math.max(request.length, 2 * request.severity);
      const middle = request.x + length / 2;
      const y = request.y ?? placeOnRun(work, runIndex(work, request), middle, random.child("place"), 0.35);
      clusterSpots(random.child("spots"), length, request.severity).forEach((spot, n) => {
        const hole = drawGasHole(random.child(`hole/${n}`), middle + spot.x, y + spot.y, spot.diameter, {
          open: n === 0,
        });
        holes.push({ hole, trace: cutGasHole(work.strip, hole) });
      });
    },
    paint(work) {
      for (const { hole, trace } of holes) paintGasHole(work.strip, hole, trace);
    },
    measure: (work) =>
      measuredHoles(
        work,
        request.id,
        "clustered-porosity",
        holes.map((h) => h.hole),
      ),
  };
};
