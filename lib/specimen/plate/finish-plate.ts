import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { gradient1 } from "../../surface";
import { mixMaterial } from "../field";
import type { FaceWork } from "../work";
import { finishEdges } from "./edges";
import { boxAround, forEachPlatePixel } from "./patches";
import { stampText } from "./stamps";
import { PLATE_TONES as TONES } from "./tones";

/** Where the datum line is scribed, mm from the datum end; the number is stamped beside it. */
const DATUM_LINE = 10;

/**
 * Cut sides, hard stamps and scribed lines: "0>" at the datum end, the specimen's number, plate letters A and B, a line 10 mm
 * from the datum end with centre punches on it. Every text sits where the hand put it, struck as hard as it was.
 */
export function finishPlate(work: FaceWork, specimenNumber: string): void {
  const random = work.random.child("plate/finish");
  const letters = random.child("stamps");
  const margin = work.joint.width / 2 - letters.uniform(7, 13);
  const stamp = (text: string, x: number, y: number, size: number) =>
    stampText(work, text, x + letters.normal(0, 0.7), y + letters.normal(0, 1), size, letters);
  stamp("0>", 4.5, margin, 6);
  stamp(specimenNumber, letters.uniform(21, 30), margin, 6);
  const beside = letters.uniform(15, 22);
  stamp("A", beside, letters.uniform(40, 52), 8);
  stamp("B", beside, -letters.uniform(40, 52), 8);
  const near = random.uniform(32, 36);
  const far = random.uniform(46, 56);
  scribe(work, DATUM_LINE, near, far, random.child("line A"));
  scribe(work, DATUM_LINE, -far + random.normal(0, 1), -near, random.child("line B"));
  stamp(`${DATUM_LINE}`, 3, near + 2, 3.2);
  punchLine(work, near, far, random.child("punches"));
  finishEdges(work);
}

/** Centre punches on the scribed line of both plates, so that it is found again after cleaning. */
function punchLine(work: FaceWork, near: number, far: number, random: RandomStream): void {
  for (const side of [-1, 1]) {
    const count = 1 + random.integer(3);
    for (let n = 0; n < count; n++) {
      const y = side * (near + ((n + random.uniform(0.2, 0.8)) * (far - near)) / count);
      punch(work, DATUM_LINE + random.normal(0, 0.15), y, random.uniform(0.1, 0.28), random);
    }
  }
}

/** One blow of a centre punch, `depth` mm deep: a cone with a raised rim, leaning a little. */
function punch(work: FaceWork, x: number, y: number, depth: number, random: RandomStream): void {
  const radius = 0.22 + 1.1 * depth;
  const leanX = random.normal(0, 0.25);
  const leanY = random.normal(0, 0.25);
  forEachPlatePixel(work, boxAround(x, y, 2 * radius), (field, k, px, py) => {
    const dx = (px - x) / radius;
    const dy = (py - y) / radius;
    const d = Math.sqrt(dx * dx + dy * dy) * (1 + leanX * dx + leanY * dy);
    if (d >= 1.9) return;
    field.z[k] += 0.14 * depth * Math.exp(-(((d - 1.15) / 0.25) ** 2)) - depth * Math.max(0, 1 - d);
    if (d < 1) mixMaterial(field, k, TONES.bareSteel, 0.4, 0.55, 0.45);
  });
}

/** A line across, drawn with a scriber along a square. */
export function scribe(work: FaceWork, x: number, from: number, to: number, random: RandomStream): void {
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
