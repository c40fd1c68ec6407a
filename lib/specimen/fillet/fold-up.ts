import { clamp } from "../../math";
import { finishSurface, floatGrid, type Grid, gridsOf, type Planes, rowOf, rowY, type Surface } from "../../surface";
import type { Field } from "../field";
import type { FaceWork } from "../work";
import { foldedPlace, type Unfolding } from "./unfolding";

/** Planes that are brought over as they are. */
const PLANES = ["z", "red", "green", "blue", "rough", "metal", "brush"] as const;

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
  const plane = () => floatGrid(grid.columns * grid.rows);
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
  const places = createPlaces(grid.rows);
  for (let i = 0; i < grid.columns; i++) {
    const column = Math.floor((i + 0.5) * perColumn);
    findPlaces(places, work, unfolding, grid, column);
    for (const field of [work.strip, ...work.sides]) {
      // the strip is as fine as the finest grid, the sides are half as fine
      const inStrip = field === work.strip;
      const from = inStrip ? i * perColumn : column >> 1;
      const averaged = inStrip ? perColumn : 1;
      for (const name of PLANES) bring(places, field, field[name], planes[name], from, averaged, i);
      bringAngles(places, field, planes.brushAngle, from, i);
    }
    for (let j = 0; j < grid.rows; j++) {
      const k = j * grid.columns + i;
      planes.z[k] = places.level[j] + places.rise[j] * planes.z[k];
    }
  }
  return planes;
}

/** Where the pixels of one folded column come from, a value per row. */
interface Places {
  readonly field: Field[];
  /** Fractional row in that field. */
  readonly row: Float64Array;
  readonly level: Float64Array;
  readonly rise: Float64Array;
}

const createPlaces = (rows: number): Places => ({
  field: new Array<Field>(rows),
  row: new Float64Array(rows),
  level: new Float64Array(rows),
  rise: new Float64Array(rows),
});

function findPlaces(places: Places, work: FaceWork, unfolding: Unfolding, grid: Grid, column: number): void {
  const { strip, sides } = work;
  const reach = -strip.grid.y0 - 1 / strip.grid.perMm;
  for (let j = 0; j < grid.rows; j++) {
    const { y, level, rise } = foldedPlace(unfolding, column, rowY(grid, j));
    const field = Math.abs(y) < reach ? strip : y < 0 ? sides[0] : sides[1];
    places.field[j] = field;
    places.row[j] = clamp(rowOf(field.grid, y), 1, field.grid.rows - 2.001);
    places.level[j] = level;
    places.rise[j] = rise;
  }
}

/** Mixes four rows by a cubic (Catmull-Rom), in one column or the mean of neighbouring ones. */
function bring(
  places: Places,
  field: Field,
  from: Float32Array,
  to: Float32Array,
  column: number,
  averaged: number,
  i: number,
): void {
  const rows = places.row.length;
  const wide = field.grid.columns;
  const columns = to.length / rows;
  for (let j = 0; j < rows; j++) {
    if (places.field[j] !== field) continue;
    const row = places.row[j] | 0;
    const t = places.row[j] - row;
    const w0 = t * (-0.5 + t * (1 - 0.5 * t));
    const w1 = 1 + t * t * (-2.5 + 1.5 * t);
    const w2 = t * (0.5 + t * (2 - 1.5 * t));
    const w3 = t * t * (-0.5 + 0.5 * t);
    let sum = 0;
    for (let n = 0, k = row * wide + column; n < averaged; n++, k++) {
      sum += w0 * from[k - wide] + w1 * from[k] + w2 * from[k + wide] + w3 * from[k + 2 * wide];
    }
    to[j * columns + i] = sum / averaged;
  }
}

/** Directions of brushing from the nearest row: y runs the other way on the folded joint, and along a plate it is foreshortened. */
function bringAngles(places: Places, field: Field, to: Float32Array, column: number, i: number): void {
  const rows = places.row.length;
  const columns = to.length / rows;
  for (let j = 0; j < rows; j++) {
    if (places.field[j] !== field) continue;
    const angle = field.brushAngle[Math.round(places.row[j]) * field.grid.columns + column];
    to[j * columns + i] = Math.atan2(-Math.sin(angle) / places.rise[j], Math.cos(angle));
  }
}
