import type { Heights } from "../../../lib/gauges";
import { middleOf, stepsFrom } from "./hand";

/** What an eye tells of a surface: where to hold a gauge, never how much. Plain loops, no code of the generator. */

/** A toe is seen where the metal rises so far over the plate within so much, mm. */
const RISES = [
  { within: 0.4, by: 0.12 },
  { within: 0.8, by: 0.25 },
] as const;
const ROW = 0.2;
const FURTHEST = 21.5;

const inside = ({ extent }: Heights, x: number): number => Math.min(extent.x1 - 0.1, Math.max(extent.x0 + 0.1, x));

/** Across (y mm) where the weld leaves the plate on one side at x: coming in, the first rise that goes on. */
function toeIn(heights: Heights, x: number, side: 1 | -1): number {
  const at = (y: number) => middleOf([-0.6, 0, 0.6].map((dx) => heights.heightAt(inside(heights, x + dx), side * y)));
  const rows = stepsFrom(0, 31, ROW).map(at);
  const row = (y: number) => rows[Math.round(y / ROW)];
  const levelAt = (y: number) => middleOf(stepsFrom(y - 0.75, y + 0.75, 0.3).map(row));
  for (let y = FURTHEST; y > 1; y -= ROW) {
    const [near, far] = [levelAt(y + 2.25), levelAt(y + 8.25)];
    const plate = (place: number) => near + ((far - near) * (place - y - 2.25)) / 6;
    if (RISES.every(({ within, by }) => row(y - within) - plate(y - within) > by)) return side * y;
  }
  return side * 1.5;
}

/** The same, the middle one of five places within a millimetre. */
export const toeSeen = (heights: Heights, x: number, side: 1 | -1): number =>
  middleOf([-1, -0.5, 0, 0.5, 1].map((dx) => toeIn(heights, x + dx, side)));

/** Both toes at x, quickly: for where to put a gauge's feet. */
export const toesNear = (heights: Heights, x: number): readonly [low: number, high: number] => [
  toeIn(heights, x, -1),
  toeIn(heights, x, 1),
];

/** About where across the weld stands highest at x. */
export function crestSeen(heights: Heights, x: number, low: number, high: number): number {
  const at = (y: number) => middleOf([-0.5, 0, 0.5].map((dx) => heights.heightAt(inside(heights, x + dx), y)));
  return stepsFrom(low, high, 0.5).reduce((best, y) => (at(y) > at(best) ? y : best), low);
}

const DIRECTIONS = stepsFrom(0, 337.5, 22.5).map((turn) => (turn * Math.PI) / 180);
/** The widest mouth that is looked for, mm of radius, and the share of its depth at which a mouth is seen to begin. */
const WIDEST = 3;
const DARK_FROM = 0.35;

/** Width of the hole round a place as an eye takes it: the breadth of what lies in the dark, inside the metal round it. */
export function mouthSeen(heights: Heights, x: number, y: number): number {
  const at = (px: number, py: number) => heights.heightAt(inside(heights, px), py);
  const round = (r: number) =>
    middleOf(DIRECTIONS.map((angle) => at(x + r * Math.cos(angle), y + r * Math.sin(angle))));
  // its wall is where the metal round the middle rises most from ring to ring
  const rings = stepsFrom(0.1, WIDEST, 0.1);
  const levels = rings.map(round);
  const rises = levels.map((level, n) => (n + 2 < levels.length ? levels[n + 2] - level : 0));
  const radius = rings[rises.indexOf(Math.max(...rises))] + 0.1;
  const rim = round(1.6 * radius);
  const reach = stepsFrom(-1.4 * radius, 1.4 * radius, 0.05);
  const places = reach.flatMap((dx) => reach.map((dy) => [dx, dy] as const));
  const depths = places
    .filter(([dx, dy]) => Math.hypot(dx, dy) < 1.4 * radius)
    .map(([dx, dy]) => rim - at(x + dx, y + dy));
  const dark = depths.filter((depth) => depth > DARK_FROM * Math.max(...depths));
  return 2 * Math.sqrt((dark.length * 0.05 ** 2) / Math.PI);
}
