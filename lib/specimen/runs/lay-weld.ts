import type { FaceWork } from "../work";
import { addGrain } from "./grain";
import { cutGroove } from "./groove";
import { layRun } from "./lay-run";
import { layLayerBelow } from "./layer-below";
import { drawRippleNoise } from "./ripple-noise";
import { blendToes, findToes } from "./toes";
import { weldZone } from "./weld-zone";

/** Opens the joint and lays its last runs as planned: heights, run masks, edges, craters and toes. */
export function layWeld(work: FaceWork): void {
  cutGroove(work);
  const noise = drawRippleNoise(work.strip.grid, work.random.child("ripples").seed(), weldZone(work));
  if (work.face === "cap") layLayerBelow(work, noise);
  work.plan.runs.forEach((run, n) => {
    const laid = layRun(work.strip, run, n, noise);
    work.runMinus.push(laid.minus);
    work.runPlus.push(laid.plus);
    work.craters.push(...laid.craters);
  });
  findToes(work);
  addGrain(work);
  blendToes(work);
}
