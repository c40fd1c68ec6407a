import { clamp, ease, mix } from "../../math";
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

/** Cells per mm2 where they lie thickest. */
const DENSITY: readonly [number, number] = [0.7, 2];
const WALL = 0.82;

/** Where the gas came up: a place along (share of the length from the middle) and across (share of the half width). */
interface Swarm {
  readonly along: number;
  readonly across: number;
  readonly spreadAlong: number;
  readonly spreadAcross: number;
}

const drawSwarms = (random: RandomStream): Swarm[] =>
  Array.from({ length: 1 + random.integer(3) }, () => ({
    along: random.uniform(-0.38, 0.38),
    across: random.normal(0, 0.28),
    spreadAlong: random.uniform(0.07, 0.24),
    spreadAcross: random.uniform(0.16, 0.42),
  }));

/** How thick the cells lie at a place, 0..1. */
const swarming = (swarms: readonly Swarm[], along: number, across: number): number =>
  swarms.reduce((most, swarm) => {
    const a = (along - swarm.along) / (1.7 * swarm.spreadAlong);
    const b = (across - swarm.across) / (1.9 * swarm.spreadAcross);
    return Math.max(most, Math.exp(-(a * a) - b * b));
  }, 0);

/** Packed cells of several sizes in uneven swarms with strays between them; one near either end. */
function drawCells(
  random: RandomStream,
  work: FaceWork,
  swarms: readonly Swarm[],
  x0: number,
  length: number,
  largest: number,
): Cell[] {
  const run = work.plan.runs[0];
  const { grid } = work.strip;
  const cells: Cell[] = [];
  const middle = x0 + length / 2;
  const halfWidth = run.halfWidth[nearestColumn(grid, middle)];
  const covered = Math.min(
    1,
    swarms.reduce((sum, swarm) => sum + 3.2 * swarm.spreadAlong, 0),
  );
  const few = mix(0.5, 1, ease(0.5, 1.1, largest));
  const want = Math.max(6, Math.round(random.uniform(...DENSITY) * few * length * halfWidth * covered));
  const deepest = clamp(0.95 * largest, 0.4, 1.3);
  for (let attempt = 0; attempt < 14 * want && cells.length < want; attempt++) {
    const swarm = random.pick(swarms);
    const isEnd = cells.length < 2;
    const isStray = !isEnd && random.chance(0.14);
    const share = isEnd
      ? (cells.length === 0 ? -1 : 1) * random.uniform(0.44, 0.49)
      : isStray
        ? random.uniform(-0.5, 0.5)
        : swarm.along + random.normal(0, swarm.spreadAlong);
    const size = isEnd ? random.uniform(0.28, 0.36) : random.logNormal(0.24, 0.55) * (cells.length < 5 ? 1.8 : 1);
    const radius = clamp(size, 0.12, largest / 2) * (isStray ? 0.75 : 1);
    const x = middle + share * length;
    if (x - radius < x0 || x + radius > x0 + length) continue;
    const i = nearestColumn(grid, x);
    const off = isStray ? random.normal(0, 0.4) : swarm.across + random.normal(0, swarm.spreadAcross);
    const y = run.centre[i] + run.halfWidth[i] * clamp(off, -0.82, 0.82);
    if (cells.some((c) => Math.hypot(c.x - x, c.y - y) < WALL * (c.radius + radius))) continue;
    cells.push({
      x,
      y,
      radius,
      depth: isEnd ? 1.3 * radius : radius * deepest * random.uniform(0.35, 1.15),
      stretch: random.uniform(1, 1.9),
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
        const bowl = (1 - d * d) ** 1.15;
        field.z[k] -= cell.depth * bowl;
        mark(k, bowl);
      } else if (d < 1.5) {
        const crust = clamp(0.5 + gradient2(x / 0.7, y / 0.7, seed + 2), 0, 1);
        field.z[k] += 0.1 * cell.radius * crust * Math.exp(-(((d - 1.14) / 0.15) ** 2));
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
 * Root turned to sponge from `x` over `length` mm, the largest cells `severity` mm across (0.48 to 1.3): ragged cells in
 * uneven swarms, thick or thin, with strays between; round them crusty, swollen metal that hardly ripples. Truth: from the first to the last cell that is 0.15 mm or more deep; width
 * = extent across; no size.
 */
export const rootPorosity: FeatureBuilder = (request, random): Feature => {
  const draw = random.child("shape");
  const seed = draw.seed();
  const swelling = draw.uniform(0.1, 0.35);
  const length = Math.max(4, request.length);
  const middle = request.x + length / 2;
  const half = 0.56 * length;
  const swarms = drawSwarms(random.child("swarms"));
  // a faint one has hardly swollen
  const crusted = draw.uniform(0.35, 1) * mix(0.4, 1, ease(0.5, 1.1, request.severity || 1));
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
        run.ripple[i] *= 1 - 0.6 * crusted * share;
        run.height[i] += crusted * share * (swelling + 0.25 * gradient1(x / 1.9, seed + 51));
        run.halfWidth[i] *= 1 + 0.1 * share * gradient1(x / 2.3, seed + 52);
      }
    },
    cut(work) {
      const { strip } = work;
      const run = work.plan.runs[0];
      cells = drawCells(random.child("cells"), work, swarms, request.x, length, request.severity || 1);
      const box = { x0: middle - 1.3 * half, x1: middle + 1.3 * half, y0: -6, y1: 6 };
      forEachPixel(strip.grid, box, (k, x, y, i) => {
        if (strip.bead[k] < 0.3) return;
        const thick = swarming(swarms, (x - middle) / length, (y - run.centre[i]) / run.halfWidth[i]);
        const share =
          spongeShare(run, i, x, y, middle, half, seed + 3) *
          crusted *
          ease(0.05, 0.8, thick + 0.25 * gradient2(x / 1.3, y / 1.1, seed + 8));
        if (share <= 0.01) return;
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
        mixMaterial(
          strip,
          k,
          between(scaled(TONES.oxide, 1.15), scaled(TONES.wall, 1.2), tone),
          0.74,
          0.2,
          0.7 * share,
        );
        mixMaterial(strip, k, TONES.rust, 0.85, 0.05, 0.22 * share * ease(0.1, 0.6, patch));
      }
      for (const [k, depth] of hollow) mixMaterial(strip, k, TONES.wall, 0.7, 0.15, 0.3 * ease(0.2, 0.8, depth));
    },
    measure: (work) => measuredSponge(work, request.id, cells),
  };
};
