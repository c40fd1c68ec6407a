import { clamp, ease, hypot, mix } from "../../math";
import type { RandomStream } from "../../random";
import { toeAt } from "../runs/edit";
import type { FeatureBuilder } from "../work";
import { poreGroup } from "./pore-group";
import { placeOnRun, runIndex } from "./visible-run";

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}

const SMALLEST = 0.22;
const FLATTENING = 0.75;
const NECK = 0.08;
/** Distance of middles from the largest hole's, as a share of both diameters: its rim stands free, so that it can be measured. */
const ROUND_LARGEST = 0.78;
/** Holes keep off the toes by this much, mm. */
const OFF_TOE = 0.8;

/** Mouth diameters of a cluster, largest first: one as asked, perhaps a second large one, the rest log-normal and small. */
function diameters(random: RandomStream, count: number, largest: number): number[] {
  const second = random.chance(0.6) ? 1 : 0;
  const rest = Array.from({ length: count - 1 }, (_, n) =>
    n < second
      ? largest * random.uniform(0.6, 0.9)
      : clamp(random.logNormal(0.36 * largest, 0.45), SMALLEST, Math.max(SMALLEST, 0.75 * largest)),
  );
  return [largest, ...rest.sort((a, b) => b - a)];
}

/**
 * Places of a cluster about (0, 0): thick about one to three centres of unequal weight, thinning out to strays on one
 * side; the largest hole lies anywhere in it; a few holes run into each other.
 */
function clusterSpots(random: RandomStream, length: number, largest: number): Spot[] {
  const few = mix(0.55, 1, ease(0.5, 1.2, largest));
  const count = clamp(Math.round(random.uniform(0.6, 1.4) * few * length), 4, 24);
  const centres = Array.from({ length: 1 + random.integer(3) }, (_, n) => ({
    x: random.normal(0, 0.2) * length,
    y: random.normal(0, 0.12) * length,
    sigma: random.uniform(0.11, 0.26) * length * (n === 0 ? 0.8 : 1),
  }));
  const skew = random.uniform(-0.6, 0.6);
  const straysTo = random.uniform(0, 6.283);
  const spots: Spot[] = [];
  for (const diameter of diameters(random, count, largest)) {
    for (let attempt = 0; attempt < 40; attempt++) {
      let x: number;
      let y: number;
      if (random.chance(0.32)) {
        const angle = straysTo + random.normal(0, 1.1);
        const away = random.uniform(0.25, 0.52) * length;
        x = away * Math.cos(angle);
        y = FLATTENING * away * Math.sin(angle);
      } else {
        const centre = centres[Math.floor(centres.length * random.uniform(0, 1) ** 2)];
        const along = random.normal(0, centre.sigma);
        const across = random.normal(0, 0.75 * centre.sigma);
        x = centre.x + along - across * skew;
        y = FLATTENING * (centre.y + across + along * skew);
      }
      const apart = random.chance(0.16) ? 0.34 : 0.6;
      const inside = Math.abs(x) + diameter / 2 < 0.54 * length;
      const free = spots.every((s, n) => {
        const clear = n === 0 ? ROUND_LARGEST : apart;
        return hypot(s.x - x, s.y - y) > clear * (s.diameter + diameter) + NECK;
      });
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
export const clusteredPorosity: FeatureBuilder = (request, random) =>
  poreGroup(request.id, "clustered-porosity", random, (work) => {
    const length = Math.max(request.length, 2 * request.severity);
    const middle = request.x + length / 2;
    const spots = clusterSpots(random.child("spots"), length, request.severity);
    const reach = Math.max(...spots.map((spot) => Math.abs(spot.y) + spot.diameter / 2));
    const low = toeAt(work, -1, middle, length / 2) + OFF_TOE;
    const high = toeAt(work, 1, middle, length / 2) - OFF_TOE;
    const squeezed = Math.min(1, (high - low) / (2 * reach));
    const wanted = placeOnRun(work, runIndex(work, request), middle, random.child("place"), 0.35);
    const y = request.y ?? clamp(wanted, low + squeezed * reach, high - squeezed * reach);
    return spots.map((spot, n) => ({
      x: middle + spot.x,
      y: y + squeezed * spot.y,
      diameter: spot.diameter,
      open: n === 0,
    }));
  });
