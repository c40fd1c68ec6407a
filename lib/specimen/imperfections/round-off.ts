import type { Field } from "../field";

/** Evens heights out over their eight neighbours (weights 4, 2, 1) by `share`: surface tension leaves no edge sharp. */
export function roundOff({ grid, z }: Pick<Field, "grid" | "z">, pixels: readonly number[], share: number): void {
  const { columns, rows } = grid;
  const evened = pixels.map((k) => {
    const i = k % columns;
    if (i === 0 || i === columns - 1 || k < columns || k >= columns * (rows - 1)) return z[k];
    const beside = z[k - 1] + z[k + 1] + z[k - columns] + z[k + columns];
    const corners = z[k - columns - 1] + z[k - columns + 1] + z[k + columns - 1] + z[k + columns + 1];
    return (4 * z[k] + 2 * beside + corners) / 16;
  });
  pixels.forEach((k, n) => {
    z[k] += share * (evened[n] - z[k]);
  });
}
