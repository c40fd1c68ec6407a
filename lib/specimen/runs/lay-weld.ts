import type { Segment } from "../plan";
import type { FaceWork } from "../work";
import { addGrain } from "./grain";
import { cutGroove } from "./groove";
import { layRun } from "./lay-run";
import { layLayerBelow } from "./layer-below";
import { drawRippleNoise } from "./ripple-noise";
import { blendToes, findToes } from "./toes";
import { weldZone } from "./weld-zone";

/** So many creases that stand out among the ripples tempt on a face at most. */
const MOST_CREASES = 2;

/** The electrode lengths in which the hand paused so long that a crease stands out. */
function creasedLengths({ plan, random }: FaceWork): ReadonlySet<Segment> {
  const draw = random.child("creases");
  const count = draw.integer(MOST_CREASES + 1);
  return new Set(Array.from({ length: count }, () => draw.pick(draw.pick(plan.runs).segments)));
}

/** Opens the joint and lays its last runs as planned: heights, run masks, edges, craters and toes. */
export function layWeld(work: FaceWork): void {
  cutGroove(work);
  const noise = drawRippleNoise(work.strip.grid, work.random.child("ripples").seed(), weldZone(work));
  if (work.face === "cap") layLayerBelow(work, noise);
  const creased = creasedLengths(work);
  work.plan.runs.forEach((run, n) => {
    const laid = layRun(work.strip, run, n, noise, creased);
    work.runMinus.push(laid.minus);
    work.runPlus.push(laid.plus);
    work.craters.push(...laid.craters);
  });
  findToes(work);
  addGrain(work);
  blendToes(work);
}
