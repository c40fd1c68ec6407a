import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { columnX, forEachPixel, gradient1, gradient2, nearestColumn } from "../../surface";
import { type Field, mixMaterial } from "../field";
import type { RunPlan } from "../plan";
import type { FaceWork, Feature, FeatureBuilder } from "../work";
import { measuredSponge } from "./measured-sponge";
import { between, scaled, TONES } from "./tones";

interface Cell {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly depth: number;
  readonly stretch: number;
  readonly turn: number;
}

const CELLS_PER_MM2 = 2.1;
const WALL = 0.82;

/** Packed cells of several sizes with thin walls between, few and small towards the ends. */
function drawCells(random: RandomStream, work: FaceWork, x0: number, length: number, largest: number): Cell[] {
  const run = work.plan.runs[0];
  const { grid } = work.strip;
  const cells: Cell[] = [];
  const middle = x0 + length / 2;
  const halfWidth = run.halfWidth[nearestColumn(grid, middle)];
  const want = Math.round(CELLS_PER_MM2 * length * halfWidth);
  for (let attempt = 0; attempt < 14 * want && cells.length < want; attempt++) {
    const share = random.chance(0.75) ? random.normal(0, 0.24) : random.uniform(-0.5, 0.5);
    const size = random.logNormal(0.26, 0.5) * (cells.length < 3 ? 2 : 1);
    const radius = clamp(size, 0.13, largest / 2) * (Math.abs(share) > 0.36 ? 0.7 : 1);
    const x = middle + share * length;
    if (x - radius < x0 || x + radius > x0 + length) continue;
    const i = nearestColumn(grid, x);
    const y = run.centre[i] + run.halfWidth[i] * clamp(random.normal(0, 0.36), -0.8, 0.8);
    if (cells.some((c) => Math.hypot(c.x - x, c.y - y) < WALL * (c.radius + radius))) continue;
    cells.push({
      x,
      y,
      radius,
      depth: radius * random.uniform(0.7, 1.7),
      stretch: random.uniform(1, 1.7),
      turn: random.uniform(0, Math.PI),
    });
  }
  return cells;
}

/** Cuts one ragged cell with a crumbled wall. */
function cutCell(field: Field, cell: Cell, seed: number, mark: (k: number, depth: number) => void): void {
  const reach = cell.radius * 2.2;
  const c = Math.cos(cell.turn);
  const s = Math.sin(cell.turn);
  forEachPixel(
    field.grid,
    { x0: cell.x - reach, x1: cell.x + reach, y0: cell.y - reach, y1: cell.y + reach },
    (k, x, y) => {
      const dx = x - cell.x + 0.1 * gradient2(x / 0.5, y / 0.5, seed);
      const dy = y - cell.y + 0.1 * gradient2(x / 0.5, y / 0.5, seed + 1);
      const along = (dx * c + dy * s) / Math.sqrt(cell.stretch);
      const across = (-dx * s + dy * c) * Math.sqrt(cell.stretch);
      const d = Math.hypot(along, across) / cell.radius;
      if (d < 1) {
        const bowl = (1 - d * d) ** 0.85;
        field.z[k] -= cell.depth * bowl;
        mark(k, bowl);
      } else if (d < 1.5) {
        const crust = clamp(0.5 + gradient2(x / 0.7, y / 0.7, seed + 2), 0, 1);
        field.z[k] += 0.07 * crust * Math.exp(-(((d - 1.14) / 0.15) ** 2));
      }
    },
  );
}

/** How spongy the root is at a place, 0..1, with a ragged border. */
function spongeShare(
  run: RunPlan,
  i: number,
  x: number,
  y: number,
  middle: number,
  half: number,
  seed: number,
): number {
  const across = (y - run.centre[i]) / (1.15 * run.halfWidth[i]);
  return ease(1.18, 0.62, Math.hypot((x - middle) / half, across) + 0.3 * gradient2(x / 1.6, y / 1.3, seed));
}

/**
 * Root turned to sponge from `x` over `length` mm, the largest cells `severity` mm across (0.6 to 1.4): crusty, swollen,
 * hardly rippled, full of packed ragged cells. Truth: from the first to the last cell that is 0.15 mm or more deep; width
 * = extent across; no size.
 */
export const rootPorosity: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("shape");
  const seed = draw.seed();
  const swelling = draw.uniform(0.1, 0.35);
  const length = Math.max(4, request.length);
  const middle = request.x + length / 2;
  const half = 0.56 * length;
  let cells: Cell[] = [];
  const hollow = new Map<number, number>();
  const crust = new Map<number, number>();
  return {
    id: request.id,
    plan(work) {
      const run = work.plan.runs[0];
      for (let i = 0; i < work.strip.grid.columns; i++) {
        const x = columnX(work.strip.grid, i);
        const share = ease(1.2, 0.6, Math.abs(x - middle) / half + 0.2 * gradient1(x / 1.7, seed + 50));
        if (share <= 0) continue;
        run.ripple[i] *= 1 - 0.75 * share;
        run.height[i] += share * (swelling + 0.25 * gradient1(x / 1.9, seed + 51));
        run.halfWidth[i] *= 1 + 0.1 * share * gradient1(x / 2.3, seed + 52);
      }
    },
    cut(work) {
      const { strip } = work;
      const run = work.plan.runs[0];
      cells = drawCells(random.child("cells"), work, request.x, length, request.severity || 1);
      const box = { x0: middle - 1.3 * half, x1: middle + 1.3 * half, y0: -6, y1: 6 };
      forEachPixel(strip.grid, box, (k, x, y, i) => {
        if (strip.bead[k] < 0.3) return;
        const share = spongeShare(run, i, x, y, middle, half, seed + 3);
        if (share <= 0) return;
        strip.z[k] +=
          share * (0.045 * gradient2(x / 0.8, y / 0.7, seed + 4) + 0.03 * gradient2(x / 0.35, y / 0.35, seed + 5));
        crust.set(k, share);
        strip.clean[k] = Math.max(strip.clean[k], share);
      });
      for (const cell of cells)
        cutCell(strip, cell, seed, (k, depth) => {
          hollow.set(k, Math.max(depth, hollow.get(k) ?? 0));
          strip.clean[k] = 1;
        });
    },
    paint({ strip }) {
      const { columns } = strip.grid;
      for (const [k, share] of crust) {
        const i = k % columns;
        const j = (k - i) / columns;
        const patch = gradient2(i / 11, j / 9, seed + 6);
        const tone = clamp(0.45 + 0.5 * patch + 0.5 * gradient2(i / 3, j / 3, seed + 7), 0, 1);
        mixMaterial(strip, k, between(TONES.oxide, scaled(TONES.wall, 1.2), tone), 0.78, 0.15, 0.8 * share);
        mixMaterial(strip, k, TONES.rust, 0.85, 0.05, 0.22 * share * ease(0.1, 0.6, patch));
      }
      for (const [k, depth] of hollow) mixMaterial(strip, k, TONES.shade, 0.7, 0.1, 0.5 * ease(0.35, 0.95, depth));
    },
    measure: (work) => measuredSponge(work, request.id, cells),
  };
};
