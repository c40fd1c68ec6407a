import { createField, type Field } from "@/lib/specimen/field";
import { columnX, type Grid, rowY } from "@/lib/surface";

/** 40 x 32 mm at the product's own resolution. */
export const SMALL: Grid = { columns: 320, rows: 256, perMm: 8, x0: 0, y0: -16 };

/** A field of bare plate whose height is an exact formula. */
export function bareField(height: (x: number, y: number) => number = () => 0): Field {
  const field = createField(SMALL);
  for (let j = 0, k = 0; j < SMALL.rows; j++)
    for (let i = 0; i < SMALL.columns; i++, k++) field.z[k] = height(columnX(SMALL, i), rowY(SMALL, j));
  return field;
}
