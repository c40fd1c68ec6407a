import { forEachPixel } from "../../surface";
import type { Field } from "../field";
import type { Region } from "../measure";

export type Plane = (x: number, y: number) => number;

const FRAME = 2;
/** What stands out of the first fit by more than this is spatter or a dent, mm. */
const OUTLIER = 0.06;

/** Least-squares plane z = a + b x + c y (about the middle) through points [x, y, z]. */
function fitPlane(points: readonly (readonly [number, number, number])[]): Plane {
  const n = points.length;
  if (n < 3) return () => 0;
  const mean = [0, 1, 2].map((q) => points.reduce((sum, p) => sum + p[q], 0) / n);
  let xx = 0;
  let xy = 0;
  let yy = 0;
  let xz = 0;
  let yz = 0;
  for (const [px, py, pz] of points) {
    const x = px - mean[0];
    const y = py - mean[1];
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xz += x * (pz - mean[2]);
    yz += y * (pz - mean[2]);
  }
  const determinant = xx * yy - xy * xy || 1;
  const slopeX = (xz * yy - yz * xy) / determinant;
  const slopeY = (yz * xx - xz * xy) / determinant;
  return (x, y) => mean[2] + slopeX * (x - mean[0]) + slopeY * (y - mean[1]);
}

/**
 * Plane of the bare plate round a mark: least squares over a frame 2 mm wide about the box, weld metal left out, fitted a
 * second time without what lies more than 0.06 mm off the first. What a depth gauge would stand on.
 */
export function plateAround(field: Field, box: Region): Plane {
  const points: [number, number, number][] = [];
  const outer = { x0: box.x0 - FRAME, x1: box.x1 + FRAME, y0: box.y0 - FRAME, y1: box.y1 + FRAME };
  forEachPixel(field.grid, outer, (k, x, y, i, j) => {
    const inside = x > box.x0 && x < box.x1 && y > box.y0 && y < box.y1;
    if (inside || (i + j) % 2 || field.bead[k] > 0.02) return;
    points.push([x, y, field.z[k]]);
  });
  const first = fitPlane(points);
  return fitPlane(points.filter(([x, y, z]) => Math.abs(z - first(x, y)) <= OUTLIER));
}
