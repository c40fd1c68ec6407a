import { clamp, ease } from "../../math";
import type { RandomStream } from "../../random";
import { forEachPixel, gradient1, gradient2, value1 } from "../../surface";
import { mixMaterial } from "../field";
import { scaled } from "../imperfections/tones";
import { levelBetweenPlates } from "../runs/groove";
import type { FaceWork } from "../work";
import { PLATE_TONES as TONES } from "./tones";

/** Height that is left at the very end, mm. */
const LEFT = { cap: 0.25, root: 0.12 } as const;
/** mm from the end within which weld may be ground; the ramp is higher than any crown there. */
const REACH = 15;

/** The first and the last few millimetres of weld, ground down to a short ramp after the run-on tabs were cut off. */
export function grindWeldEnds(work: FaceWork, random: RandomStream): void {
  for (const end of [0, work.joint.length]) grindEnd(work, end, random.child(end === 0 ? "datum" : "far"));
}

function grindEnd(work: FaceWork, end: number, random: RandomStream): void {
  const { strip, face } = work;
  // misaligned plates: the disc lies across both
  const levelAt = levelBetweenPlates(work);
  const flat = random.uniform(1, 2.4);
  const slope = random.uniform(0.16, 0.25);
  const dull = random.uniform(0, 0.55);
  const polish = random.uniform(0.45, 0.64);
  const seed = random.seed();
  // centre of the disc's arcs
  const side = random.pick([-1, 1]);
  const arcX = end + random.uniform(-14, 14);
  const arcY = side * random.uniform(48, 60);
  forEachPixel(strip.grid, { x0: end - REACH, x1: end + REACH, y0: -15, y1: 15 }, (k, x, y, i) => {
    if (strip.bead[k] <= 0.02) return;
    const r = Math.hypot(x - arcX, y - arcY);
    const wander = 0.9 * gradient1(y / 6, seed) + 0.35 * gradient1(y / 2.3, seed + 1) + 0.3 * value1(r / 1.1, seed + 6);
    const past = Math.abs(x - end) + wander - flat;
    // the grinder rolls into the ramp and out of it again: no edge that would flash
    const rolled = past > 1 ? past - 0.5 : past > 0 ? 0.5 * past * past : 0;
    const ramp = LEFT[face] + slope * rolled + 0.012 * rolled * rolled + 0.05 * gradient2(x / 5, y / 4, seed + 7);
    const above = strip.z[k] - levelAt(i, y) - ramp;
    if (above <= 0) return;
    const scratch = value1(r / 0.36, seed + 2) + 0.6 * value1(r / 0.95, seed + 3);
    // hollows between ripples and runs are only just touched
    const share = ease(0, 0.22, above);
    strip.z[k] -= (above - 0.007 * scratch) * ease(0, 0.06, above);
    const smoky = clamp(dull + 0.7 * gradient2(x / 3.5, y / 3, seed + 5), 0, 1);
    mixMaterial(strip, k, scaled(TONES.groundSteel, polish + 0.1 * scratch), 0.6, 0.42, 0.74 * share);
    mixMaterial(strip, k, TONES.smoke, 0.66, 0.28, 0.45 * smoky * share);
    strip.brush[k] += (0.4 - strip.brush[k]) * share;
    strip.brushAngle[k] = Math.atan2(y - arcY, x - arcX) + Math.PI / 2;
  });
}
