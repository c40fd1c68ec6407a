import { clamp, hypot } from "../../math";
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
  readonly touch: Touch;
  /** About (0, 0). */
  readonly spots: readonly Spot[];
  readonly seed: number;
}

/** What the electrode did: stuck and pulled off, skidded along, touched once, or hopped. */
const TOUCHES = ["pool", "pool", "streak", "streak", "pit", "string", "string"] as const;
export type Touch = (typeof TOUCHES)[number];

/** A touch of an electrode on the plate as long as asked: short ones are single pits more often than long ones. */
export function drawArc(random: RandomStream, length: number, depth: number): StrayArc {
  const touch = length < 5 && random.chance(0.45) ? "pit" : random.pick(TOUCHES);
  const heading = random.uniform(-0.6, 0.6) + (random.chance(0.5) ? Math.PI : 0);
  const drawn = drawTouch(touch, random, length, depth, heading);
  return { touch, spots: touch === "pit" ? drawn : fitted(drawn, length), seed: random.seed() };
}

function drawTouch(touch: Touch, random: RandomStream, length: number, depth: number, heading: number): Spot[] {
  switch (touch) {
    case "pool":
      return drawPool(random, length, depth, heading);
    case "streak":
      return drawStreak(random, length, depth, heading);
    case "pit":
      return [
        {
          x: 0,
          y: 0,
          radius: clamp(length * random.uniform(0.22, 0.42), 0.7, 2.4),
          stretch: random.uniform(1, 1.5),
          turn: heading,
          depth: depth * random.uniform(0.95, 1.05),
        },
      ];
    case "string":
      return drawString(random, length, depth, heading);
  }
}

/** Two or three melted spots that overlap, then a trail of small ones where the electrode skidded off. */
function drawPool(random: RandomStream, length: number, depth: number, heading: number): Spot[] {
  const pools = 2 + random.integer(2);
  const trail = random.integer(6);
  const spots: Spot[] = [];
  let x = 0;
  let y = 0;
  for (let n = 0; n < pools + trail; n++) {
    const isPool = n < pools;
    const radius = isPool
      ? Math.min(2.4, length * random.uniform(0.14, 0.25)) * (1 - 0.16 * n)
      : random.uniform(0.16, 0.42);
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
  return spots;
}

/** A narrow track of long spots that run into one another, deepest where it was struck, thinning out. */
function drawStreak(random: RandomStream, length: number, depth: number, heading: number): Spot[] {
  const spots: Spot[] = [];
  const wide = random.uniform(0.4, 0.8);
  const bend = random.normal(0, 0.5 / length);
  let along = 0;
  while (along < length) {
    const left = 1 - along / length;
    const turn = heading + bend * along;
    const radius = Math.max(0.2, wide * (0.35 + 0.75 * left ** 0.6) * random.uniform(0.75, 1.2));
    spots.push({
      x: along * Math.cos(turn),
      y: along * Math.sin(turn) + random.normal(0, 0.12),
      radius,
      stretch: random.uniform(1.6, 3),
      turn,
      depth: depth * (0.4 + 0.35 * left) * random.uniform(0.7, 1.1),
    });
    along += radius * random.uniform(0.9, 1.5) + (random.chance(0.16) ? random.uniform(0.3, 1) : 0);
  }
  return spots;
}

/** Separate small spots where the electrode hopped over the plate. */
function drawString(random: RandomStream, length: number, depth: number, heading: number): Spot[] {
  const spots: Spot[] = [];
  let x = 0;
  let y = 0;
  let turn = heading;
  for (let along = 0; along < length || spots.length < 3; ) {
    const radius = clamp(random.logNormal(0.42, 0.45), 0.2, 1.1);
    spots.push({
      x,
      y,
      radius,
      stretch: random.uniform(1, 1.7),
      turn,
      depth: depth * random.uniform(0.55, 1) * Math.min(1, 0.5 + radius),
    });
    turn += random.normal(0, 0.4);
    turn = heading + clamp(turn - heading, -0.7, 0.7);
    const step = radius + random.uniform(0.4, 1.9);
    along += step;
    x += step * Math.cos(turn);
    y += step * Math.sin(turn);
  }
  return spots;
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
  const lobes = 0.22 * gradient2(x / (1.3 * spot.radius), y / (1.3 * spot.radius), seed);
  return (hypot(along, across) / spot.radius) * (1 + lobes + 0.07 * gradient2(x / 0.5, y / 0.5, seed + 1));
}
