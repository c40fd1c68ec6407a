import { clamp } from "../../math";
import { sampleAt } from "../../surface";
import { POSITION_STYLES, PROCESS_STYLES } from "../runs";
import { toeAt } from "../runs/edit";
import type { FaceWork } from "../work";
import { placeGlobule } from "./globule";
import { patchAt } from "./patches";

/** Share of the cap's globules that the root face gets. */
const ON_FACE = { cap: 1, root: 0.23 } as const;
/** Furthest from the toe, and the radius of the smallest and the largest globule, mm. */
const FURTHEST = 60;
const RADIUS = { least: 0.07, most: 0.75 };

/** Where something is measured, the plates are scraped clean so far to either side along the weld, mm. */
const SCRAPED = 3;

/** Ordinary light spatter of the welding process beside the weld; keeps off planted imperfections and places scraped clean. */
export function scatterSpatter(work: FaceWork, scraped: readonly number[] = []): void {
  const random = work.random.child("plate/spatter");
  const { globules, radius: usual, scatter, bright, thrown } = PROCESS_STYLES[work.joint.process].fallout;
  const { spatter } = POSITION_STYLES[work.joint.position];
  const count = Math.round((globules * ON_FACE[work.face] * work.look.spatter * spatter * work.joint.length) / 300);
  for (let n = 0; n < count; n++) {
    const own = random.child(`${n}`);
    const x = own.uniform(0, work.joint.length);
    const side = own.chance(0.55) ? -1 : 1;
    const away = Math.min(FURTHEST, -Math.log(1 - own.uniform(0, 0.98)) * thrown);
    const radius = clamp(own.logNormal(usual, scatter), RADIUS.least, RADIUS.most);
    const y = toeAt(work, side, x) + side * away;
    const patch = patchAt(work, x, y);
    if (!patch || sampleAt(patch.grid, patch.clean, x, y) > 0.1) continue;
    if (scraped.some((place) => Math.abs(x - place) < SCRAPED + radius)) continue;
    placeGlobule(work, { x, y, radius }, own, { bright });
  }
}
