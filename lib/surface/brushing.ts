import type { Grid } from "./grid";
import { floatGrid } from "./grid-room";
import type { Patch } from "./surface";

/** What tells the brushing of one patch: strength 0..1 and direction in radians of every pixel. */
interface Brushed {
  readonly grid: Grid;
  readonly brush: Float32Array;
  readonly brushAngle: Float32Array;
}

/** Doubled directions summed over blocks, weighted by their strength: crossing directions cancel out. */
export interface BrushBlocks {
  readonly columns: number;
  readonly rows: number;
  readonly cosine: Float32Array;
  readonly sine: Float32Array;
  readonly weight: Float32Array;
}

/** One direction of brushing is stored for a block of this many pixels a side. */
export const BRUSHING_BLOCK = 4;
/** Column looked at in each row of a block: one pixel of four tells the direction, and no two in line are asked. */
const COLUMN_ASKED = [0, 2, 3, 1] as const;

const empty = (columns: number, rows: number): BrushBlocks => {
  const plane = () => floatGrid(columns * rows);
  return { columns, rows, cosine: plane(), sine: plane(), weight: plane() };
};

/** The blocks of a patch. */
export function brushBlocks({ grid, brush, brushAngle }: Brushed): BrushBlocks {
  const blocks = empty(Math.ceil(grid.columns / BRUSHING_BLOCK), Math.ceil(grid.rows / BRUSHING_BLOCK));
  const { cosine, sine, weight } = blocks;
  for (let j = 0; j < grid.rows; j++) {
    let n = ((j / BRUSHING_BLOCK) | 0) * blocks.columns;
    for (let i = COLUMN_ASKED[j % BRUSHING_BLOCK]; i < grid.columns; i += BRUSHING_BLOCK, n++) {
      const k = j * grid.columns + i;
      const share = brush[k];
      if (share <= 0) continue;
      const angle = 2 * brushAngle[k];
      cosine[n] += share * Math.cos(angle);
      sine[n] += share * Math.sin(angle);
      weight[n] += share;
    }
  }
  return blocks;
}

/** Blocks of twice the size. */
export function halvedBlocks(fine: BrushBlocks): BrushBlocks {
  const blocks = empty(Math.ceil(fine.columns / 2), Math.ceil(fine.rows / 2));
  for (let j = 0, k = 0; j < fine.rows; j++) {
    for (let i = 0; i < fine.columns; i++, k++) {
      const n = (j >> 1) * blocks.columns + (i >> 1);
      blocks.cosine[n] += fine.cosine[k];
      blocks.sine[n] += fine.sine[k];
      blocks.weight[n] += fine.weight[k];
    }
  }
  return blocks;
}

/** Mean direction per block as bytes, of patches that lie one beyond the other in y. */
export function brushingOf(...parts: readonly BrushBlocks[]): Patch["brushing"] {
  const { columns } = parts[0];
  const rows = parts.reduce((sum, part) => sum + part.rows, 0);
  const values = new Uint8Array(2 * columns * rows).fill(128);
  let n = 0;
  for (const { cosine, sine, weight } of parts) {
    for (let k = 0; k < weight.length; k++, n += 2) {
      if (weight[k] <= 0) continue;
      values[n] = Math.round(128 + (127 * cosine[k]) / weight[k]);
      values[n + 1] = Math.round(128 + (127 * sine[k]) / weight[k]);
    }
  }
  return { columns, rows, values };
}
