import { describe } from "vitest";
import { heightAt, type Surface } from "@/lib/surface";
import { extent, groups } from "./support/pixel-groups";
import { median, PIXEL, plate } from "./support/plain-loops";
import {
  type Box,
  boxOf,
  type Case,
  compareWithSecondOpinion,
  type Opinion,
  type Pixel,
  pixels,
  point,
  type Second,
} from "./support/second-opinion";

/** The truth of holes against a second opinion: mouths, depths and places worked out again by plain loops over the finished pixels. */

/**
 * Ground round a hole, square to which it is read: level by the median of the means of opposite pixels of a ring, in which
 * every slope cancels; slopes by the medians of the ring's four quarters.
 */
function groundRound(ring: readonly Pixel[], x: number, y: number): (p: Pixel) => number {
  const quarter = (keep: (dx: number, dy: number) => boolean) => ring.filter((p) => keep(p.x - x, p.y - y));
  const right = quarter((dx, dy) => dx > Math.abs(dy));
  const left = quarter((dx, dy) => -dx > Math.abs(dy));
  const high = quarter((dx, dy) => dy > Math.abs(dx));
  const low = quarter((dx, dy) => -dy > Math.abs(dx));
  const slope = (a: readonly Pixel[], b: readonly Pixel[], of: (p: Pixel) => number) =>
    (median(a.map((p) => p.z)) - median(b.map((p) => p.z))) / (median(a.map(of)) - median(b.map(of)));
  const slopeX = slope(right, left, (p) => p.x);
  const slopeY = slope(high, low, (p) => p.y);
  const opposite = (p: Pixel) =>
    ring.reduce((best, q) =>
      Math.hypot(q.x + p.x - 2 * x, q.y + p.y - 2 * y) < Math.hypot(best.x + p.x - 2 * x, best.y + p.y - 2 * y)
        ? q
        : best,
    );
  const level = median(ring.map((p) => (p.z + opposite(p).z) / 2));
  return (p) => level + slopeX * (p.x - x) + slopeY * (p.y - y);
}

/** One hole: pixels deeper than 35 % of its depth below the ground round it, joined from its bottom. */
function hole(surface: Surface, x: number, y: number, diameter: number): Opinion {
  const reach = 0.95 * diameter;
  const near = pixels(surface, { x0: x - reach, x1: x + reach, y0: y - reach, y1: y + reach });
  const away = (p: Pixel) => Math.hypot(p.x - x, p.y - y);
  const ground = groundRound(
    near.filter((p) => away(p) > 0.8 * diameter && away(p) < 0.95 * diameter),
    x,
    y,
  );
  const below = (p: Pixel) => ground(p) - p.z;
  const bottom = near.filter((p) => away(p) < 0.55 * diameter).reduce((a, b) => (below(b) > below(a) ? b : a));
  const mouth = groups(
    near.filter((p) => below(p) > 0.35 * below(bottom) && away(p) < 0.75 * diameter),
    1.5 * PIXEL,
  ).find((group) => group.includes(bottom)) as Pixel[];
  const area = mouth.length * PIXEL * PIXEL;
  return { ...extent(mouth), size: 2 * Math.sqrt(area / Math.PI) };
}

const single: Second = (surface, item) => point(hole(surface, item.worst[0], item.worst[1], item.size as number));

const DIRECTIONS = Array.from({ length: 8 }, (_, n) => (n * Math.PI) / 8);

/** How far a place lies below the chords over it in every direction: deep in a hole, nothing in a crease or on a flank. */
function hollowness(surface: Surface, p: Pixel): number {
  const over = (reach: number) =>
    Math.min(
      ...DIRECTIONS.map((angle) => {
        const dx = reach * Math.cos(angle);
        const dy = reach * Math.sin(angle);
        return (heightAt(surface, p.x + dx, p.y + dy) + heightAt(surface, p.x - dx, p.y - dy)) / 2 - p.z;
      }),
    );
  return Math.max(over(0.45), over(0.8), over(1.2));
}

/** All holes in a box: groups of hollow pixels. */
function holesIn(surface: Surface, box: Box, least: number, pixelsAtLeast: number): Opinion[] {
  const deep = pixels(surface, box).filter((p) => hollowness(surface, p) > least);
  return groups(deep, 1.5 * PIXEL)
    .filter((group) => group.length >= pixelsAtLeast)
    .map(extent);
}

const many =
  (least: number, pixelsAtLeast: number): Second =>
  (surface, item) => {
    const box = boxOf(item, 0);
    // hardly further across: the crease at a curved toe is as hollow as a hole
    const searched = { ...boxOf(item, 1.2), y0: box.y0 - 0.25, y1: box.y1 + 0.25 };
    const found = holesIn(surface, searched, least, pixelsAtLeast);
    const start = Math.min(...found.map((h) => h.start));
    const end = Math.max(...found.map((h) => h.end));
    const largest = item.size === null ? undefined : hole(surface, item.worst[0], item.worst[1], item.size).size;
    return { start, end, across: (box.y0 + box.y1) / 2, size: largest };
  };

const burnt: Second = (surface, item) => {
  const box = boxOf(item, 1);
  const x = item.start;
  const low = plate(surface, -1, x, -4);
  const high = plate(surface, 1, x, 4);
  const chord = (y: number) => low(-6) + ((high(6) - low(-6)) * (y + 6)) / 12;
  const deep = pixels(surface, box).filter((p) => chord(p.y) - p.z > 0.6);
  return point(extent(groups(deep, 0.3)[0]));
};

const SECOND: Readonly<Record<string, Second>> = {
  "surface-pore": single,
  "crater-pipe": single,
  "clustered-porosity": many(0.12, 3),
  "root-porosity": many(0.13, 6),
  "burn-through": burnt,
};

/**
 * A mouth is read at 35 % of the depth below the ground; the two grounds are read on other rings, and one pixel more or
 * less all round the mouth is 0.125 mm.
 */
const MOUTH = 0.13;
const SIZE_TOLERANCE: Readonly<Record<string, number>> = {
  "surface-pore": MOUTH,
  "crater-pipe": MOUTH,
  "clustered-porosity": MOUTH,
};
// whether a dimple at the ragged border is a cell hangs on 0.02 mm of its depth
const WIDER_TOLERANCE = { "root-porosity": 1 };

const CASES: readonly Case[] = [
  {
    seed: "second opinion a",
    face: "cap",
    asked: [
      { type: "surface-pore", x: 22, length: 0, severity: 1 },
      { type: "surface-pore", x: 45, length: 0, severity: 2.3 },
      { type: "clustered-porosity", x: 65, length: 9, severity: 1.1 },
      { type: "clustered-porosity", x: 95, length: 16, severity: 1.8 },
      { type: "crater-pipe", x: 150, length: 0, severity: 1.2 },
      { type: "crater-pipe", x: 205, length: 0, severity: 1.9 },
    ],
  },
  {
    seed: "second opinion e",
    face: "root",
    asked: [
      { type: "burn-through", x: 30, length: 0, severity: 5 },
      { type: "burn-through", x: 62, length: 0, severity: 7.5 },
      { type: "root-porosity", x: 85, length: 10, severity: 0.8 },
      { type: "root-porosity", x: 115, length: 20, severity: 1.2 },
    ],
  },
  {
    seed: "second opinion f",
    face: "root",
    asked: [
      { type: "surface-pore", x: 25, length: 0, severity: 1.4 },
      { type: "root-porosity", x: 160, length: 20, severity: 1.2 },
    ],
  },
];

describe.each(CASES)("truth of holes on the $face face of seed $seed", (one) => {
  compareWithSecondOpinion(one, { second: SECOND, sizeTolerance: SIZE_TOLERANCE, widerTolerance: WIDER_TOLERANCE });
});
