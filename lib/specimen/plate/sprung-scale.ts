import { ease, tabulate } from "../../math";
import { columnX, type Grid } from "../../surface";
import type { FaceWork } from "../work";

/**
 * Where mill scale has sprung off, added to noise of about -1..1: sooner at the sheared edges, beside the weld where it was
 * heated, and along one way over the plate where slings and hooks took hold of it; and no two plates alike.
 */
export interface Springing {
  /** Per column of the patch. */
  readonly columns: Float32Array;
  readonly row: (y: number) => number;
  /** Below these the scale holds on: of large flakes and of small ones. */
  readonly large: number;
  readonly small: number;
  /** How strongly it follows the rolling direction. */
  readonly rolled: number;
}

/** How far from an edge, and from the groove, scale is loose, mm. */
const LOOSE = { edge: 16, heat: 22 } as const;

export function springing(work: FaceWork, grid: Grid): Springing {
  const random = work.random.child("plate/sprung scale");
  const { length, width } = work.joint;
  const atEdge = random.uniform(0.1, 0.34);
  const atHeat = random.uniform(0, 0.2);
  const gripped = random.uniform(0, length);
  const grip = random.uniform(0, 0.24);
  return {
    columns: tabulate(grid.columns, (i) => {
      const x = columnX(grid, i);
      const fromEnd = Math.min(x, length - x);
      return atEdge * ease(LOOSE.edge, 0, fromEnd) + grip * ease(26, 4, Math.abs(x - gripped));
    }),
    row: (y) => {
      const away = Math.abs(y);
      return (
        atEdge * ease(width / 2 - LOOSE.edge, width / 2, away) +
        atHeat * ease(work.plan.groove + LOOSE.heat, work.plan.groove + 6, away)
      );
    },
    large: random.uniform(0.3, 0.5),
    small: random.uniform(0.36, 0.62),
    rolled: random.uniform(0.05, 0.3),
  };
}
