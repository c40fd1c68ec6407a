import { columnX } from "../surface";
import type { FaceWork } from "./work";

/** Throws where a height of the face is not a number: it would poison everything that is measured on it. Of a material the finished surface tells. */
export function checkFinite(work: FaceWork): void {
  for (const { grid, z } of [work.strip, ...work.sides]) {
    for (let k = 0; k < z.length; k++) {
      if (Number.isFinite(z[k])) continue;
      const x = columnX(grid, k % grid.columns).toFixed(2);
      throw new Error(`${work.face} face: not a number at x ${x} mm, row ${(k / grid.columns) | 0} (height ${z[k]})`);
    }
  }
}
