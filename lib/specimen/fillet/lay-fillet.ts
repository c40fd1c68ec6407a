import { clamp, ease } from "../../math";
import { boxBlur, columnX, floatGrid, gradient2, rowY } from "../../surface";
import { mixMaterial } from "../field";
import { PLATE_TONES as TONES } from "../plate";
import { addGrain } from "../runs/grain";
import { layRun } from "../runs/lay-run";
import { layLayerBelow } from "../runs/layer-below";
import { drawRippleNoise } from "../runs/ripple-noise";
import { blendToes, findToes } from "../runs/toes";
import { weldZone } from "../runs/weld-zone";
import type { FaceWork } from "../work";
import { cornerHeight, type Unfolding } from "./unfolding";

/** While it is welded the corner is filled to this near to its toes, or the runs' thin edges would sink into it, mm. */
const HELD = 0.6;

/** Lays the runs of a fillet into the corner between its plates: heights, run masks, edges, craters and toes. */
export function layFillet(work: FaceWork, unfolding: Unfolding): void {
  openCorner(work, unfolding);
  const noise = drawRippleNoise(work.strip.grid, work.random.child("ripples").seed(), weldZone(work));
  const { runs } = work.plan;
  // runs stand on it, so it is laid where it is hidden too
  layLayerBelow(work, noise, [extentOf(work)]);
  const filled = holdCorner(work, unfolding);
  runs.forEach((run, n) => {
    const laid = layRun(work.strip, run, n, noise);
    work.runMinus.push(laid.minus);
    work.runPlus.push(laid.plus);
    work.craters.push(...laid.craters);
  });
  releaseCorner(work, filled);
  findToes(work);
  addGrain(work);
  blendToes(work);
}

/** A hidden layer ends this far before those that are seen, mm. */
const SHORTER = 2;

function extentOf({ plan }: FaceWork): { a: number; b: number } {
  const segments = plan.runs.flatMap((run) => run.segments);
  return {
    a: Math.min(...segments.map(({ a }) => a)) + SHORTER,
    b: Math.max(...segments.map(({ b }) => b)) - SHORTER,
  };
}

/** The plates meet in a sharp corner: ground or brushed as far as the tool got, burnt where the arc passed. */
function openCorner({ strip, random }: FaceWork, unfolding: Unfolding): void {
  const { grid, z } = strip;
  const seed = random.child("corner").seed();
  forCorner(grid, unfolding, (k, i, y, j) => {
    const x = columnX(grid, i);
    const depth = -cornerHeight(unfolding, i, y);
    z[k] -= depth;
    const worn = clamp(0.45 + 0.5 * gradient2(x / 2.6, rowY(grid, j) / 1.1, seed), 0, 1);
    mixMaterial(strip, k, TONES.bareSteel, 0.55, 0.35, 1);
    mixMaterial(strip, k, TONES.hot, 0.66, 0.2, 0.35 + 0.45 * worn);
  });
}

/** Fills the corner up while the runs are laid, as far as it is missing; gives by how much, a value per pixel. */
function holdCorner({ strip }: FaceWork, unfolding: Unfolding): Float32Array {
  const { grid, z } = strip;
  const filled = floatGrid(z.length);
  forCorner(grid, unfolding, (k, i, y) => {
    filled[k] = Math.max(0, Math.min(0, cornerHeight(unfolding, i, y) + HELD) - z[k]);
    z[k] += filled[k];
  });
  return filled;
}

/** So far beside a run the corner stays filled, mm: at its toes metal and plate run into each other. */
const FLOWN = 0.5;

/** Where no run came to lie the corner is as it was. */
function releaseCorner({ strip }: FaceWork, filled: Float32Array): void {
  const { grid, run, z } = strip;
  const laid = floatGrid(run.length);
  for (let k = 0; k < run.length; k++) laid[k] = Math.min(1, run[k]);
  const reach = FLOWN * grid.perMm;
  const near = boxBlur(laid, grid.columns, grid.rows, reach, reach, 2);
  for (let k = 0; k < z.length; k++) if (run[k] === 0) z[k] -= filled[k] * ease(0.3, 0.02, near[k]);
}

/** Visits the pixels of a strip between the planned toes. */
function forCorner(
  grid: FaceWork["strip"]["grid"],
  { baseToe, standingToe }: Unfolding,
  visit: (k: number, i: number, y: number, j: number) => void,
): void {
  for (let j = 0; j < grid.rows; j++) {
    const y = rowY(grid, j);
    for (let i = 0, k = j * grid.columns; i < grid.columns; i++, k++) {
      if (y > baseToe[i] && y < standingToe[i]) visit(k, i, y, j);
    }
  }
}
