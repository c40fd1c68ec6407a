import { clamp, ease, hypot, mix } from "../../math";
import type { RandomStream } from "../../random";
import { columnX, forEachPixel, gradient1, gradient2, nearestColumn } from "../../surface";
import { mixMaterial } from "../field";
import type { RunPlan } from "../plan";
import type { FaceWork, Feature, FeatureBuilder } from "../work";
import { measuredSponge } from "./measured-sponge";
import { type Cell, crustRelief, cutCell, drawBlisters, raiseBlister } from "./sponge-relief";
import { between, scaled, TONES } from "./tones";

/** Cells per mm2 where they lie thickest. */
const DENSITY: readonly [number, number] = [1, 2.4];
/** How near two cells lie, as a share of their radii: most run into each other, those at the ends stand free. */
const WALL = { run: 0.42, free: 0.95 };

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
    const wall = isEnd || isStray ? WALL.free : random.chance(0.6) ? WALL.run : WALL.free;
    if (cells.some((c, n) => hypot(c.x - x, c.y - y) < (n < 2 ? WALL.free : wall) * (c.radius + radius))) continue;
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
  return ease(1.18, 0.62, hypot((x - middle) / half, across) + 0.3 * gradient2(x / 1.6, y / 1.3, seed));
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
  const crusted = draw.uniform(0.6, 1) * mix(0.5, 1, ease(0.5, 1.1, request.severity || 1));
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
          ease(0, 0.5, thick + 0.25 * gradient2(x / 1.3, y / 1.1, seed + 8));
        if (share <= 0.01) return;
        // the fine pits end within the outermost cells
        const within = ease(0.47, 0.4, Math.abs(x - middle) / length);
        strip.z[k] += share * within * crustRelief(x, y, seed);
        crust.set(k, share);
        strip.clean[k] = Math.max(strip.clean[k], share);
      });
      drawBlisters(random.child("blisters"), cells, request.severity || 1).forEach((blister, n) => {
        raiseBlister(strip, blister, seed + 7 * n);
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
        const patch = gradient2(i / 21, j / 15, seed + 6);
        const grain = gradient2(i / 3.6, j / 3.6, seed + 7);
        const burnt = ease(-0.25, 0.3, patch + 0.4 * gradient2(i / 8, j / 7, seed + 33));
        const tone = clamp(0.5 + 0.7 * grain, 0, 1);
        const dull = between(scaled(TONES.oxide, 0.95), scaled(TONES.skin, 1.1), tone);
        const colour = between(dull, between(TONES.blue, TONES.oxide, 0.55), 0.6 * burnt);
        mixMaterial(strip, k, colour, 0.86, 0.1, (0.5 + 0.38 * burnt) * ease(0.05, 0.5, share));
        mixMaterial(strip, k, TONES.rust, 0.9, 0.03, 0.25 * share * ease(0.1, 0.45, grain - patch));
        strip.brush[k] *= 1 - share;
      }
      for (const [k, depth] of hollow) {
        const i = k % columns;
        const crumb = gradient2(i / 3.1, (k - i) / columns / 3.1, seed + 34);
        const inside = between(scaled(TONES.oxide, 1.25), TONES.rust, 0.4 * ease(0, 0.4, crumb));
        mixMaterial(strip, k, inside, 0.9, 0.05, 0.75 * ease(0.05, 0.45, depth));
      }
    },
    measure: (work) => measuredSponge(work, request.id, cells),
  };
};
