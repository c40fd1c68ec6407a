import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { columnX, gradient1, rowY } from "../../surface";
import { type Field, mixMaterial } from "../field";
import type { FaceWork } from "../work";
import { forEachPlatePixel, patchesOf } from "./patches";
import { stampText } from "./stamps";
import { PLATE_TONES as TONES } from "./tones";

/** Where the datum line is scribed, mm from the datum end; the number is stamped beside it. */
const DATUM_LINE = 10;
const EDGE = { wide: 0.5, fall: 0.35 };

/**
 * Broken edges, hard stamps and scribed lines: "0>" at the datum end, the specimen's number, plate letters A and B, a line
 * 10 mm from the datum end. Pass the same number for both faces; without one it is drawn.
 */
export function finishPlate(work: FaceWork, specimenNumber?: string): void {
  const random = work.random.child("plate/finish");
  const letters = random.child("stamps");
  const number = specimenNumber ?? `T${100 + random.integer(900)}`;
  const margin = work.joint.width / 2 - 9;
  stampText(work, "0>", 4, margin, 6, letters);
  stampText(work, number, 24, margin, 6, letters);
  stampText(work, "A", 16, 45, 8, letters);
  stampText(work, "B", 16, -45, 8, letters);
  scribe(work, DATUM_LINE, 34, 52, random.child("line A"));
  scribe(work, DATUM_LINE, -52, -34, random.child("line B"));
  stampText(work, `${DATUM_LINE}`, 3, 36, 3.2, letters);
  const seed = random.child("edges").seed();
  for (const field of patchesOf(work)) breakEdges(work, field, seed);
}

/** A line across, drawn with a scriber along a square. */
function scribe(work: FaceWork, x: number, from: number, to: number, random: RandomStream): void {
  const seed = random.seed();
  forEachPlatePixel(work, { x0: x - 0.6, x1: x + 0.6, y0: from, y1: to }, (field, k, px, py) => {
    const d = Math.abs(px - x - 0.05 * gradient1(py / 7, seed));
    const pressed = clamp(0.8 + 0.3 * gradient1(py / 2, seed + 1), 0, 1);
    const share = clamp(1 - d / 0.17, 0, 1) * ease(from, from + 1.5, py) * ease(to, to - 1.5, py) * pressed;
    if (share <= 0) return;
    field.z[k] -= 0.06 * share;
    mixMaterial(field, k, TONES.groundSteel, 0.34, 0.75, 0.8 * share);
  });
}

/** The sheared edges of the plate, filed round and worn bright here and there. */
function breakEdges(work: FaceWork, field: Field, seed: number): void {
  const { grid } = field;
  const { length, width } = work.joint;
  for (let j = 0; j < grid.rows; j++) {
    const y = rowY(grid, j);
    const long = width / 2 - Math.abs(y);
    const step = long < 1.5 ? 1 : grid.columns - 1;
    for (let i = 0; i < grid.columns; i++) {
      const x = columnX(grid, i);
      const short = Math.min(x - 0.04 * gradient1(y / 3, seed + 1), length - x - 0.04 * gradient1(y / 3, seed + 2));
      if (step > 1 && short > 1.3) {
        // only the two ends of this row lie at an edge
        if (x < length / 2) i = Math.max(i, grid.columns - 1 - Math.ceil(1.5 * grid.perMm));
        continue;
      }
      const d = Math.min(short, long - 0.1 * gradient1(x / 14, seed + 3) - 0.03 * gradient1(x / 3, seed + 4));
      if (d > 1.2) continue;
      const k = j * grid.columns + i;
      const rounded = 1 - clamp(d / EDGE.wide, 0, 1);
      field.z[k] -= EDGE.fall * rounded * rounded;
      const worn = ease(0.7, 0.1, d) * clamp(0.55 + 0.5 * gradient1((x + 1.7 * y) / 9, seed + 5), 0, 1);
      mixMaterial(field, k, TONES.bareSteel, 0.58, 0.4, 0.5 * worn);
      field.brush[k] *= 1 - worn;
    }
  }
}
