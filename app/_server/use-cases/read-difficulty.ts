import type { Caller } from "../caller";
import { requireTutor } from "../permissions";
import { currentCalibration } from "../progress/calibration";

/**
 * How hard imperfections turned out in everybody's practice against what the model says, for tutors. It names nobody, and no mark
 * goes by it.
 */
export async function readDifficulty(caller: Caller) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  return { ok: true, calibration: await currentCalibration(caller.clock()) } as const;
}
