import { clamp } from "../../math";
import { nearestColumn, sampleAt } from "../../surface";
import type { FaceWork } from "../work";
import { placeGlobule } from "./globule";
import { patchAt } from "./patches";

/** Globules per 300 mm of weld at full spatter. */
const COUNT = { cap: 95, root: 22 } as const;
/** Mean distance from the toe and the furthest, mm. */
const THROW = 9;
const FURTHEST = 60;

/** Ordinary light spatter of the welding process beside the weld; keeps off planted imperfections. */
export function scatterSpatter(work: FaceWork): void {
  const random = work.random.child("plate/spatter");
  const count = Math.round((COUNT[work.face] * work.look.spatter * work.joint.length) / 300);
  for (let n = 0; n < count; n++) {
    const own = random.child(`${n}`);
    const x = own.uniform(0, work.joint.length);
    const side = own.chance(0.55) ? -1 : 1;
    const away = Math.min(FURTHEST, -Math.log(1 - own.uniform(0, 0.98)) * THROW);
    const radius = clamp(own.logNormal(0.2, 0.5), 0.09, 0.75);
    const i = nearestColumn(work.strip.grid, x);
    const toe = side < 0 ? work.toeMinus[i] : work.toePlus[i];
    const y = (Number.isFinite(toe) ? toe : side * work.plan.groove) + side * away;
    const patch = patchAt(work, x, y);
    if (!patch || sampleAt(patch.grid, patch.clean, x, y) > 0.1) continue;
    placeGlobule(work, { x, y, radius }, own);
  }
}
