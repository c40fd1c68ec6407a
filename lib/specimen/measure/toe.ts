import { nearestColumn } from "../../surface";
import type { Finished, Side } from "./finished";

/** y of an outer toe at x, mm: mean over the columns within `half` mm that have a weld; NaN where none has. */
export function toeNear(face: Finished, side: Side, x: number, half: number): number {
  const toe = side < 0 ? face.toeMinus : face.toePlus;
  const last = nearestColumn(face.strip.grid, x + half);
  let sum = 0;
  let count = 0;
  for (let i = nearestColumn(face.strip.grid, x - half); i <= last; i++) {
    if (Number.isNaN(toe[i])) continue;
    sum += toe[i];
    count++;
  }
  return sum / count;
}
