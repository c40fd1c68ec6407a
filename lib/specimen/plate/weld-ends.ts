import type { FaceWork } from "../work";
import { breakEnd } from "./broken-end";
import { grindEnd } from "./ground-end";
import { sawEnd } from "./sawn-end";

/**
 * How a weld ends at the plate's edge: with a run-on or run-off tab cut off by a thin disc or a saw, cut off and ground, or
 * broken off.
 */
const ENDS = ["sawn", "sawn", "ground", "ground", "broken", "broken"] as const;
const FINISH = { sawn: sawEnd, ground: grindEnd, broken: breakEnd } as const;

/** Ends of the weld, each in one of three ways; ground ones are dull, so that they do not flash in a light along the weld. */
export function finishWeldEnds(work: FaceWork): void {
  const random = work.random.child("plate/marks/ends");
  for (const end of [0, work.joint.length]) {
    const own = random.child(end === 0 ? "datum" : "far");
    FINISH[own.pick(ENDS)](work, end, own);
  }
}
