import { clamp } from "../../math";
import type { RandomStream } from "../../random";
import { gradient2 } from "../../surface";

/** One spot melted by an arc, mm and radians. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly stretch: number;
  readonly turn: number;
  readonly depth: number;
}

export interface StrayArc {
  /** About (0, 0). */
  readonly spots: readonly Spot[];
  readonly seed: number;
}

/** Two or three melted spots that overlap, then a trail of small ones where the electrode skidded off. */
export function drawArc(random: RandomStream, length: number, depth: number): StrayArc {
  const heading = random.uniform(-0.6, 0.6) + (random.chance(0.5) ? Math.PI : 0);
  const pools = 2 + random.integer(2);
  const trail = 2 + random.integer(4);
  const spots: Spot[] = [];
  let x = 0;
  let y = 0;
  for (let n = 0; n < pools + trail; n++) {
    const isPool = n < pools;
    const radius = isPool ? length * random.uniform(0.17, 0.25) * (1 - 0.16 * n) : random.uniform(0.16, 0.42);
    spots.push({
      x,
      y,
      radius,
      stretch: random.uniform(1.05, 1.6),
      turn: heading + random.normal(0, 0.4),
      depth: depth * (isPool ? random.uniform(0.75, 1.05) : random.uniform(0.4, 0.7)),
    });
    const step =
      isPool && n + 1 < pools ? radius * random.uniform(0.8, 1.3) : length * random.uniform(0.07, 0.15) + radius;
    x += step * Math.cos(heading) + random.normal(0, 0.18);
    y += step * Math.sin(heading) + random.normal(0, 0.18);
  }
  return { spots: fitted(spots, length), seed: random.seed() };
}

/** Scales distances along the weld so that the string of spots is as long as asked, its middle at 0. */
function fitted(spots: readonly Spot[], length: number): Spot[] {
  const low = Math.min(...spots.map((s) => s.x - s.radius));
  const high = Math.max(...spots.map((s) => s.x + s.radius));
  const stretch = clamp(length / (high - low), 0.7, 1.6);
  const middleY = spots.reduce((sum, s) => sum + s.y, 0) / spots.length;
  return spots.map((s) => ({ ...s, x: (s.x - (low + high) / 2) * stretch, y: s.y - middleY }));
}

/** Distance from a spot's middle in its radii, its outline uneven. */
export function spotDistance(spot: Spot, seed: number, x: number, y: number): number {
  const dx = x - spot.x;
  const dy = y - spot.y;
  const c = Math.cos(spot.turn);
  const s = Math.sin(spot.turn);
  const along = (dx * c + dy * s) / Math.sqrt(spot.stretch);
  const across = (-dx * s + dy * c) * Math.sqrt(spot.stretch);
  const coarse = 0.2 * gradient2(x / (0.9 * spot.radius), y / (0.9 * spot.radius), seed);
  return (Math.hypot(along, across) / spot.radius) * (1 + coarse + 0.1 * gradient2(x / 0.5, y / 0.5, seed + 1));
}
