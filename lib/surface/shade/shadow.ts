import type { Lamp } from "./light";
import { type Level, levelAt, type Relief } from "./relief";

/**
 * Share of the lamp's disc that is seen from (x, y, z) on the surface, 0..1. (ux, uy) is the direction towards the lamp
 * in the plane, `slope` the tangent of its height, `from` the first distance looked at, mm.
 */
export type Visibility = (
  x: number,
  y: number,
  z: number,
  ux: number,
  uy: number,
  slope: number,
  from: number,
) => number;

const REACH = 30;
/** Rays start this far above the surface, so that its own grain casts no shadow. */
const LIFT = 0.004;
const TILE = 4;
/** Heights are read over this share of the lamp's disc: over all of it, crests would be lowered too much. */
const READ = 2 / 3;

/**
 * Cone march over the height pyramid (Crassin and others, "Interactive indirect illumination using voxel cone tracing",
 * 2011, for the idea; the horizon test is ours). The horizon's angle is compared with the lamp's, so the penumbra grows
 * with the distance of what casts it; sideways softness comes from reading coarser levels further away.
 */
export function shadowFrom(relief: Relief, halfAngle: number, lamp: Pick<Lamp, "x" | "y">): Visibility {
  const [strip, plate] = relief;
  const distances: number[] = [];
  const levels: Level[] = [];
  for (let t = 0.6 / strip.perMm; t < REACH; t *= t < 0.5 ? 1.18 : 1.18) {
    distances.push(t);
    const level = Math.round(Math.log2(Math.max(1e-6, t * READ * halfAngle * strip.perMm)) - 1.6);
    levels.push(relief[level < 0 ? 0 : Math.min(level, relief.length - 1)]);
  }
  const count = distances.length;
  const crests = crestsTowards(relief, lamp);
  const xEnd = plate.x0 + plate.columns / plate.perMm;
  const yEnd = plate.y0 + plate.rows / plate.perMm;
  const stripFrom = strip.y0 + 0.5 / strip.perMm;
  const stripTo = strip.y0 + (strip.rows - 0.5) / strip.perMm;
  // filtered levels lower their crests a little
  const lowered = 1 - 0.5 * READ * halfAngle;
  const heightAt = (n: number, x: number, y: number) => {
    const level = levels[n];
    return levelAt(level === strip && (y < stripFrom || y > stripTo) ? plate : level, x, y);
  };
  return (x, y, z, ux, uy, slope, from) => {
    const headroom = crests(x, y) - z;
    const lowest = (slope - halfAngle) / (1 + slope * halfAngle);
    const base = z + LIFT;
    let horizon = -9;
    let best = -1;
    let n = 0;
    while (distances[n] < from) n++;
    for (; n < count; n++) {
      const t = distances[n];
      if (t * lowest > headroom) break;
      const px = x + ux * t;
      const py = y + uy * t;
      if (px < plate.x0 || py < plate.y0 || px > xEnd || py > yEnd) break;
      const rise = (heightAt(n, px, py) - base) / t;
      if (rise > horizon) {
        horizon = rise;
        best = n;
      }
    }
    if (best < 0 || horizon < lowest * 0.9) return 1;
    // the crest lies between two steps
    for (let side = -1; side <= 1; side += 2) {
      const t = distances[best] * (1 + 0.085 * side);
      horizon = Math.max(horizon, (heightAt(best, x + ux * t, y + uy * t) - base) / t);
    }
    const above = (Math.atan(slope) - Math.atan(distances[best] > 0.5 ? horizon / lowered : horizon)) / halfAngle;
    if (above >= 1) return 1;
    if (above <= -1) return 0;
    const share = 0.5 + 0.5 * above;
    return share * share * (3 - 2 * share);
  };
}

/** Highest point between a place and the lamp within reach, by tiles: lets the march stop once nothing can reach up to the light. */
function crestsTowards(relief: Relief, lamp: Pick<Lamp, "x" | "y">): (x: number, y: number) => number {
  const plate = relief[1];
  const columns = Math.ceil(plate.columns / plate.perMm / TILE);
  const rows = Math.ceil(plate.rows / plate.perMm / TILE);
  const top = new Float32Array(columns * rows).fill(Number.NEGATIVE_INFINITY);
  for (const level of [relief[0], plate]) {
    for (let j = 0, k = 0; j < level.rows; j++) {
      const row = Math.min(rows - 1, Math.floor((level.y0 + (j + 0.5) / level.perMm - plate.y0) / TILE)) * columns;
      for (let i = 0; i < level.columns; i++, k++) {
        const n = row + Math.min(columns - 1, ((i + 0.5) / level.perMm / TILE) | 0);
        if (level.z[k] > top[n]) top[n] = level.z[k];
      }
    }
  }
  // rays start anywhere in a tile and have a width: one tile of margin on every side
  const wide = new Float32Array(top.length);
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      let highest = Number.NEGATIVE_INFINITY;
      for (let b = Math.max(0, j - 1); b <= Math.min(rows - 1, j + 1); b++) {
        for (let a = Math.max(0, i - 1); a <= Math.min(columns - 1, i + 1); a++) {
          highest = Math.max(highest, top[b * columns + a]);
        }
      }
      wide[j * columns + i] = highest;
    }
  }
  const crest = new Float32Array(top.length);
  const steps = Math.ceil(REACH / TILE) + 1;
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      const dx = (lamp.x - plate.x0) / TILE - i - 0.5;
      const dy = (lamp.y - plate.y0) / TILE - j - 0.5;
      const length = Math.hypot(dx, dy) || 1;
      let highest = wide[j * columns + i];
      for (let t = 0.7; t <= steps; t += 0.7) {
        const a = Math.floor(i + 0.5 + (dx / length) * t);
        const b = Math.floor(j + 0.5 + (dy / length) * t);
        if (a < 0 || b < 0 || a >= columns || b >= rows) break;
        highest = Math.max(highest, wide[b * columns + a]);
      }
      crest[j * columns + i] = highest;
    }
  }
  const bounded = (value: number, end: number) => (value < 0 ? 0 : value >= end ? end - 1 : value | 0);
  return (x, y) => crest[bounded((y - plate.y0) / TILE, rows) * columns + bounded((x - plate.x0) / TILE, columns)];
}
