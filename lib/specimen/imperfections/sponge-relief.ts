import { clamp, ease, hypot, mix } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient2 } from "../../surface";
import type { Field } from "../field";

/** One cell of a sponge, mm; `stretch` = long over short axis, `turn` in radians. */
export interface Cell {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly depth: number;
  readonly stretch: number;
  readonly turn: number;
}

/** Depth of the fine pits between the cells, mm: less than what makes a cell. */
const PITTED = 0.12;

/** Cuts one ragged cell: a crumbled outline, a wall now steep, now broken down to a neighbour, a floor of grit. */
export function cutCell(field: Field, cell: Cell, seed: number, mark: (k: number, depth: number) => void): void {
  const reach = cell.radius * 2.4 + 0.1;
  const c = Math.cos(cell.turn);
  const s = Math.sin(cell.turn);
  const crumbled = (x: number, y: number, at: number) =>
    (0.06 + 0.3 * cell.radius) * gradient2(x / 0.62, y / 0.62, seed + at) +
    0.11 * gradient2(x / 0.27, y / 0.27, seed + at + 40);
  forEachPixel(
    field.grid,
    { x0: cell.x - reach, x1: cell.x + reach, y0: cell.y - reach, y1: cell.y + reach },
    (k, x, y) => {
      const dx = x - cell.x + crumbled(x, y, 0);
      const dy = y - cell.y + crumbled(x, y, 1);
      const along = (dx * c + dy * s) / Math.sqrt(cell.stretch);
      const across = (-dx * s + dy * c) * Math.sqrt(cell.stretch);
      const d = hypot(along, across) / cell.radius;
      if (d >= 1) return;
      const steep = clamp(0.5 + gradient2(x / 0.9, y / 0.9, seed + 9), 0, 1);
      const grit = 1 + 0.28 * gradient2(x / 0.3, y / 0.3, seed + 10);
      const bowl = (1 - d * d) ** mix(0.7, 1.5, steep);
      field.z[k] -= cell.depth * bowl * mix(1, grit, ease(0.9, 0.5, d));
      mark(k, bowl);
    },
  );
}

/** Skin that gas lifted before it froze, mm. */
interface Blister {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly height: number;
  /** The skin of this one tore and fell in. */
  readonly isTorn: boolean;
}

/** Blisters over some of the cells, larger where the largest cell is (mm). */
export function drawBlisters(random: RandomStream, cells: readonly Cell[], largest: number): Blister[] {
  const count = Math.min(cells.length, 1 + random.integer(3 + Math.round(cells.length / 14)));
  return Array.from({ length: count }, () => {
    const cell = random.pick(cells);
    const radius = random.uniform(0.35, 0.75) * (0.5 + 0.6 * largest);
    return {
      x: cell.x + random.normal(0, 0.5),
      y: cell.y + random.normal(0, 0.4),
      radius,
      height: radius * random.uniform(0.18, 0.42),
      isTorn: random.chance(0.45),
    };
  });
}

/** Raises a wrinkled dome, or what is left of it where it tore. */
export function raiseBlister(field: Field, { x, y, radius, height, isTorn }: Blister, seed: number): void {
  const reach = 1.5 * radius;
  forEachPixel(field.grid, { x0: x - reach, x1: x + reach, y0: y - reach, y1: y + reach }, (k, px, py) => {
    if (field.bead[k] < 0.5) return;
    const uneven =
      1 + 0.5 * gradient2(px / 0.8, py / 0.8, seed + 60) + 0.2 * gradient2(px / 0.35, py / 0.35, seed + 61);
    const d = (hypot(px - x, py - y) / radius) * uneven;
    if (d >= 1) return;
    const dome = (1 - d * d) ** 0.8;
    const wrinkled = 1 + 0.3 * gradient2(px / 0.3, py / 0.3, seed + 62);
    const torn = isTorn ? ease(0.62, 0.5, d + 0.3 * gradient2(px / 0.4, py / 0.4, seed + 63)) : 0;
    field.z[k] += height * dome * wrinkled * (1 - torn) - 0.5 * height * torn;
  });
}

/** Height of the crust, mm: sugary grains, and pits too fine to be cells that run into each other. */
export function crustRelief(x: number, y: number, seed: number): number {
  const grains =
    Math.abs(gradient2(x / 0.34, y / 0.32, seed + 4)) + 0.6 * Math.abs(gradient2(x / 0.17, y / 0.17, seed + 30));
  const pits = ease(
    0.05,
    0.42,
    gradient2(x / 0.5, y / 0.44, seed + 31) + 0.35 * gradient2(x / 0.24, y / 0.24, seed + 32),
  );
  return 0.09 * grains + 0.06 * gradient2(x / 1.2, y / 0.9, seed + 5) - PITTED * pits;
}
