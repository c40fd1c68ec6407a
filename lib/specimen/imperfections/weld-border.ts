import { clamp } from "../../math";
import { columnOf, nearestRow, rowY } from "../../surface";
import type { Side } from "../measure";
import { forColumns } from "../runs/edit";
import type { FaceWork } from "../work";

/** The border of the weld metal as it lies, scallops included: y mm per column, NaN where there is no weld. */
export type WeldBorder = Float32Array;

/**
 * The border is looked for from outside the toe to inside it, mm. Where none is found so near (at a restart's lap), the
 * toe stands for it: a groove must not follow a gap in the runs into the weld.
 */
const SEARCHED = { outside: 1.6, inside: 0.9 };
/** A binomial window: evens out the pixel steps, keeps the scallops. */
const WINDOW = [1, 4, 6, 4, 1];

/** Outer border of the deposited runs on one side, found pixel by pixel and evened out over five columns. */
export function weldBorder(work: FaceWork, side: Side): WeldBorder {
  const { grid, run } = work.strip;
  const toe = side < 0 ? work.toeMinus : work.toePlus;
  const raw = new Float32Array(grid.columns).fill(Number.NaN);
  const steps = Math.round((SEARCHED.outside + SEARCHED.inside) * grid.perMm);
  for (let i = 0; i < grid.columns; i++) {
    if (Number.isNaN(toe[i])) continue;
    raw[i] = toe[i];
    let j = nearestRow(grid, toe[i] + side * SEARCHED.outside);
    for (let n = 0; n < steps && j >= 0 && j < grid.rows; n++, j -= side) {
      if (run[j * grid.columns + i] === 0) continue;
      raw[i] = rowY(grid, j) + (side * 0.5) / grid.perMm;
      break;
    }
  }
  return evened(raw);
}

/** A line evened out over five columns; columns without one do not count. */
export function evened(raw: Float32Array): Float32Array {
  return raw.map((value, i) => {
    let sum = 0;
    let weights = 0;
    for (let n = -2; n <= 2; n++) {
      const near = raw[clamp(i + n, 0, raw.length - 1)];
      if (Number.isNaN(near)) continue;
      sum += WINDOW[n + 2] * near;
      weights += WINDOW[n + 2];
    }
    return weights > 0 ? sum / weights : value;
  });
}

/** The border evened out over `reach` mm to both sides, without its scallops. */
export function smoothBorder(work: FaceWork, side: Side, reach: number): WeldBorder {
  const border = weldBorder(work, side);
  const columns = Math.round(reach * work.strip.grid.perMm);
  return border.map((_, i) => {
    let sum = 0;
    let weights = 0;
    for (let n = -columns; n <= columns; n++) {
      const near = border[clamp(i + n, 0, border.length - 1)];
      if (Number.isNaN(near)) continue;
      const weight = columns + 1 - Math.abs(n);
      sum += weight * near;
      weights += weight;
    }
    return sum / weights;
  });
}

/** Value of a per-column array at x mm, interpolated. */
export function alongColumns(work: FaceWork, values: Float32Array, x: number): number {
  const at = clamp(columnOf(work.strip.grid, x), 0, values.length - 1.001);
  const i = Math.floor(at);
  return values[i] + (at - i) * (values[i + 1] - values[i]);
}

/** A function of x as one value per column between two places, 0 elsewhere. */
export function columnTable(work: FaceWork, value: (x: number) => number, from: number, to: number): Float32Array {
  const table = new Float32Array(work.strip.grid.columns);
  forColumns(work.strip.grid, from, to, (i, x) => {
    table[i] = value(x);
  });
  return table;
}
