import { columnX } from "../surface";
import type { FaceWork } from "./work";

/** Throws where a height or a material of the face is not a number: it would poison everything that is made from it. */
export function checkFinite(work: FaceWork): void {
  for (const { grid, z, red, green, blue, rough, metal } of [work.strip, ...work.sides]) {
    for (let k = 0; k < z.length; k++) {
      // one sum tells of all six: a term that is not finite makes it not finite
      if (Number.isFinite(z[k] + red[k] + green[k] + blue[k] + rough[k] + metal[k])) continue;
      const x = columnX(grid, k % grid.columns).toFixed(2);
      throw new Error(`${work.face} face: not a number at x ${x} mm, row ${(k / grid.columns) | 0} (height ${z[k]})`);
    }
  }
}
