import { type Correction, type EyeMeasure, sizesOfStep } from "@/lib/progress";
import { eyeMeasureOf } from "@/lib/specimen";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";
import { currentCalibration } from "../progress/calibration";

/** How imperfections of one type and about one size turned out in practice against the model. */
export interface DifficultyRow extends Correction {
  /** What strikes the eye of the type, and from how much of it to how much, mm. */
  readonly measure: EyeMeasure;
  readonly from: number;
  readonly to: number;
}

/**
 * How hard imperfections turned out in everybody's practice against what the model says, for tutors. It names nobody, and no mark
 * goes by it.
 */
export async function readDifficulty(caller: Caller) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const { corrections, sections, learners } = await currentCalibration(caller.clock());
  const rows = corrections.map(
    (one): DifficultyRow => ({ ...one, measure: eyeMeasureOf(one.type), ...sizesOfStep(one.step) }),
  );
  return { ok: true, rows, sections, learners } as const;
}
