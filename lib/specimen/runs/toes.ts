import { clamp, ease, tabulate } from "../../math";
import { columnX, gradient1, nearestRow } from "../../surface";
import type { FaceWork } from "../work";
import { outerRun } from "./edit";
import { POSITION_STYLES } from "./position-style";
import { PROCESS_STYLES } from "./process-styles";

/** Outer toes of the whole weld from the edges of its runs; NaN where no run is. */
export function findToes(work: FaceWork): void {
  work.toeMinus.fill(Number.NaN);
  work.toePlus.fill(Number.NaN);
  for (const edges of work.runMinus) keep(work.toeMinus, edges, Math.min);
  for (const edges of work.runPlus) keep(work.toePlus, edges, Math.max);
}

function keep(toe: Float32Array, edges: Float32Array, outer: (a: number, b: number) => number): void {
  for (let i = 0; i < toe.length; i++) {
    if (Number.isNaN(edges[i])) continue;
    toe[i] = Number.isNaN(toe[i]) ? edges[i] : outer(toe[i], edges[i]);
  }
}

/** How sharp the toes are, per column: 0 blended into the plate .. 1 a sharp line. */
export function toeSharpness(work: FaceWork): { minus: Float32Array; plus: Float32Array } {
  const { grid } = work.strip;
  const seed = work.random.child("toes").seed();
  const usual = PROCESS_STYLES[work.joint.process].bead.toeSharpness;
  const { low, high } = POSITION_STYLES[work.joint.position].sharpness;
  const along = (side: number, mean: number) =>
    tabulate(grid.columns, (i) => {
      const x = columnX(grid, i);
      const changing = 0.95 * gradient1(x / 17, seed + side) + 0.6 * gradient1(x / 5.3, seed + 5 + side);
      return clamp(mean + changing, 0, 1);
    });
  return { minus: along(0, usual + low), plus: along(1, usual + high) };
}

/** Half width of the box mean that makes the fillet of a blended toe, and how far it reaches; mm. */
const FILLET = { box: 0.4, reach: 1.3, most: 0.92 };
/** Edges rounder than the first are blended in full, more rolled than the second not at all. */
const BLENDED_EXPONENT = { full: 2.9, none: 4.6 };

/** Where the metal wetted well, the toe runs out into the plate in a small fillet. */
export function blendToes(work: FaceWork): void {
  const sharp = toeSharpness(work);
  blendSide(work, -1, sharp.minus);
  blendSide(work, 1, sharp.plus);
}

function blendSide(work: FaceWork, side: 1 | -1, sharp: Float32Array): void {
  const { grid, z } = work.strip;
  const run = outerRun(work.plan, side);
  const exponent = side < 0 ? run.exponentMinus : run.exponentPlus;
  const toe = side < 0 ? work.toeMinus : work.toePlus;
  const box = Math.max(1, Math.round(FILLET.box * grid.perMm));
  const reach = Math.ceil(FILLET.reach * grid.perMm);
  const profile = new Float32Array(2 * (reach + 2 * box) + 1);
  const once = new Float32Array(profile.length);
  const soft = new Float32Array(profile.length);
  for (let i = 0; i < grid.columns; i++) {
    const share = FILLET.most * (1 - sharp[i]) * ease(BLENDED_EXPONENT.none, BLENDED_EXPONENT.full, exponent[i]);
    if (share < 0.02 || Number.isNaN(toe[i])) continue;
    const middle = nearestRow(grid, toe[i]);
    const first = middle - reach - 2 * box;
    if (first < 0 || first + profile.length > grid.rows) continue;
    for (let n = 0; n < profile.length; n++) profile[n] = z[(first + n) * grid.columns + i];
    boxMean(profile, box, once);
    boxMean(once, box, soft);
    for (let n = -reach; n <= reach; n++) {
      const fade = (1 - (n / reach) ** 2) ** 2;
      const k = (middle + n) * grid.columns + i;
      z[k] += (soft[n + reach + 2 * box] - z[k]) * share * fade;
    }
  }
}

/** Running mean of a profile over `reach` values to both sides; its ends stay as they are. */
function boxMean(values: Float32Array, reach: number, out: Float32Array): void {
  out.set(values);
  let sum = 0;
  for (let n = 0; n < 2 * reach + 1; n++) sum += values[n];
  for (let n = reach; n < values.length - reach; n++) {
    out[n] = sum / (2 * reach + 1);
    sum += (values[n + reach + 1] ?? 0) - values[n - reach];
  }
}
