import type { FaceWork } from "../work";
import { BLEMISH_HABITS } from "./blemish-habits";
import { darkenToes } from "./dark-toes";
import { sprinkleSpecks } from "./specks";
import { stainRestarts } from "./stained-restarts";
import { shadeValleys } from "./valleys";

/**
 * What sound weld metal shows besides its ripples: creases at toes and between runs that caught oxide, stains beside
 * restarts, specks. All shallower than 0.1 mm, so that nothing of it measures as an imperfection. Not listed anywhere.
 */
export function leaveBlemishes(work: FaceWork): void {
  const random = work.random.child("blemishes");
  const habit = BLEMISH_HABITS[work.joint.process];
  shadeValleys(work, habit, random.child("valleys"));
  darkenToes(work, habit, random.child("toes"));
  stainRestarts(work, random.child("restarts"));
  sprinkleSpecks(work, habit, random.child("specks"));
}
