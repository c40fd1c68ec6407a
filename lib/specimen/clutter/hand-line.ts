import { hypot } from "../../math";
import type { RandomStream } from "../../random";
import { floatGrid, forEachPixel, gradient1, nearestColumn, nearestRow } from "../../surface";
import type { Field } from "../field";
import type { Region } from "../measure";
import { patchesOf } from "../plate/patches";
import type { Point } from "../truth";
import type { FaceWork } from "../work";

/** A line drawn by hand: points about half a millimetre apart. */
export interface HandLine {
  readonly points: readonly Point[];
  /** mm */
  readonly length: number;
}

const STEP = 0.5;

/** How unsteady a hand is, mm: slow sway and tremor. */
interface Unsteadiness {
  readonly sway: number;
  readonly tremor: number;
}

/** Draws through the given corners as a hand does: corners a little rounded, nothing straight. */
export function drawByHand(random: RandomStream, corners: readonly Point[], { sway, tremor }: Unsteadiness): HandLine {
  const seed = random.seed();
  const points: Point[] = [];
  let length = 0;
  for (let n = 1; n < corners.length; n++) {
    const [ax, ay] = corners[n - 1];
    const [bx, by] = corners[n];
    const long = hypot(bx - ax, by - ay);
    const count = Math.max(1, Math.round(long / STEP));
    for (let m = n === 1 ? 0 : 1; m <= count; m++) {
      const at = length + (long * m) / count;
      const off = (q: number) => sway * gradient1(at / 9, seed + q) + tremor * gradient1(at / 2.1, seed + q + 5);
      points.push([ax + ((bx - ax) * m) / count + off(0), ay + ((by - ay) * m) / count + off(1)]);
    }
    length += long;
  }
  return { points, length };
}

export function boxOf(points: readonly Point[], reach: number): Region {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return {
    x0: Math.min(...xs) - reach,
    x1: Math.max(...xs) + reach,
    y0: Math.min(...ys) - reach,
    y1: Math.max(...ys) + reach,
  };
}

/**
 * Distance from a line (signed: left of its direction is positive) and how far along it, mm; before its start `along` is
 * negative, behind its end more than its length.
 */
type Visit = (k: number, x: number, y: number, off: number, along: number) => void;

function visitPatch(field: Field, line: HandLine, reach: number, visit: Visit): void {
  const { grid } = field;
  const box = boxOf(line.points, reach);
  const i0 = nearestColumn(grid, box.x0);
  const j0 = nearestRow(grid, box.y0);
  const columns = nearestColumn(grid, box.x1) - i0 + 2;
  const rows = nearestRow(grid, box.y1) - j0 + 2;
  const nearest = floatGrid(columns * rows).fill(Number.POSITIVE_INFINITY);
  const offs = floatGrid(columns * rows);
  const alongs = floatGrid(columns * rows);
  let travelled = 0;
  for (let n = 1; n < line.points.length; n++) {
    const [ax, ay] = line.points[n - 1];
    const [bx, by] = line.points[n];
    const long = hypot(bx - ax, by - ay) || 1e-9;
    const ux = (bx - ax) / long;
    const uy = (by - ay) / long;
    const start = travelled;
    travelled += long;
    const isFirst = n === 1;
    const isLast = n === line.points.length - 1;
    forEachPixel(grid, boxOf([line.points[n - 1], line.points[n]], reach), (_, x, y, i, j) => {
      const beside = (x - ax) * ux + (y - ay) * uy;
      const t = Math.min(long, Math.max(0, beside));
      const dx = x - ax - t * ux;
      const dy = y - ay - t * uy;
      const square = dx * dx + dy * dy;
      const m = (j - j0) * columns + i - i0;
      if (i < i0 || j < j0 || i - i0 >= columns || !(square < nearest[m])) return;
      nearest[m] = square;
      offs[m] = ux * dy - uy * dx < 0 ? -Math.sqrt(square) : Math.sqrt(square);
      alongs[m] = start + ((isFirst && beside < 0) || (isLast && beside > long) ? beside : t);
    });
  }
  forEachPixel(grid, box, (k, x, y, i, j) => {
    const m = (j - j0) * columns + i - i0;
    if (i >= i0 && j >= j0 && i - i0 < columns && nearest[m] < reach * reach) visit(k, x, y, offs[m], alongs[m]);
  });
}

/** Visits the pixels of all patches of a face within `reach` mm of a line, each once. */
export function visitAlong(
  work: FaceWork,
  line: HandLine,
  reach: number,
  visitOf: (field: Field, box: Region) => Visit,
): void {
  const box = boxOf(line.points, reach);
  for (const field of patchesOf(work)) {
    const { grid } = field;
    const isOutside = box.y1 < grid.y0 || box.y0 > grid.y0 + grid.rows / grid.perMm;
    if (!isOutside) visitPatch(field, line, reach, visitOf(field, box));
  }
}
