import { finishSurface, type Grid, gridsOf, type Planes, rowOf, type Surface } from "../../surface";
import type { Field } from "../field";
import type { FaceWork } from "../work";
import { foldedPlace, type Unfolding } from "./unfolding";

/** Planes that are brought over as they are. */
const PLANES = ["red", "green", "blue", "rough", "metal", "brush"] as const;

/** Folds the two plates of a finished, laid-out joint up into the corner: the surface as it is looked at, along the line between them. */
export function foldUp(work: FaceWork, unfolding: Unfolding): Surface {
  const { strip, plate } = gridsOf("fillet");
  const sideRows = (plate.rows - strip.rows / 2) / 2;
  const side = (y0: number): Grid => ({ ...plate, rows: sideRows, y0 });
  const standing = fold(work, unfolding, side(plate.y0));
  const base = fold(work, unfolding, side(-strip.y0));
  return finishSurface("fillet", fold(work, unfolding, strip), standing, base);
}

function emptyPlanes(grid: Grid): Planes {
  const plane = () => new Float32Array(grid.columns * grid.rows);
  return {
    grid,
    z: plane(),
    red: plane(),
    green: plane(),
    blue: plane(),
    rough: plane(),
    metal: plane(),
    brush: plane(),
    brushAngle: plane(),
  };
}

function fold(work: FaceWork, unfolding: Unfolding, grid: Grid): Planes {
  const planes = emptyPlanes(grid);
  const perColumn = work.strip.grid.perMm / grid.perMm;
  for (let i = 0; i < grid.columns; i++) {
    const column = Math.floor((i + 0.5) * perColumn);
    for (let j = 0; j < grid.rows; j++) {
      const v = grid.y0 + (j + 0.5) / grid.perMm;
      const { y, level, rise } = foldedPlace(unfolding, column, v);
      const source = sourceAt(work, y, i, perColumn);
      const k = j * grid.columns + i;
      planes.z[k] = level + rise * sampled(source, source.field.z);
      for (const name of PLANES) planes[name][k] = sampled(source, source.field[name]);
      const angle = source.field.brushAngle[source.nearest];
      // y runs the other way here, and along a plate it is foreshortened
      planes.brushAngle[k] = Math.atan2(-Math.sin(angle) / rise, Math.cos(angle));
    }
  }
  return planes;
}

/** Where a pixel's value comes from: rows to be mixed by a cubic (Catmull-Rom), in one column or the mean of two. */
interface Source {
  readonly field: Field;
  /** First pixel of each of the four rows. */
  readonly rows: readonly [number, number, number, number];
  readonly weights: readonly [number, number, number, number];
  /** Neighbouring columns that are averaged. */
  readonly columns: number;
  readonly nearest: number;
}

function sourceAt(work: FaceWork, y: number, i: number, perColumn: number): Source {
  const { strip, sides } = work;
  const inStrip = Math.abs(y) < -strip.grid.y0 - 1 / strip.grid.perMm;
  const field = inStrip ? strip : y < 0 ? sides[0] : sides[1];
  const { grid } = field;
  // the strip is as fine as the finest grid, the sides are half as fine
  const columns = inStrip ? perColumn : 1;
  const column = inStrip ? i * perColumn : Math.floor(((i + 0.5) * perColumn) / 2);
  const place = rowOf(grid, y);
  const j = Math.floor(place);
  const t = place - j;
  const row = (n: number) => Math.min(grid.rows - 1, Math.max(0, n)) * grid.columns + column;
  return {
    field,
    rows: [row(j - 1), row(j), row(j + 1), row(j + 2)],
    weights: [
      t * (-0.5 + t * (1 - 0.5 * t)),
      1 + t * t * (-2.5 + 1.5 * t),
      t * (0.5 + t * (2 - 1.5 * t)),
      t * t * (-0.5 + 0.5 * t),
    ],
    columns,
    nearest: row(t < 0.5 ? j : j + 1),
  };
}

function sampled({ rows, weights, columns }: Source, values: Float32Array): number {
  let sum = 0;
  for (let n = 0; n < columns; n++) {
    sum +=
      weights[0] * values[rows[0] + n] +
      weights[1] * values[rows[1] + n] +
      weights[2] * values[rows[2] + n] +
      weights[3] * values[rows[3] + n];
  }
  return sum / columns;
}
