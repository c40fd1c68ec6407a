import type { Caller } from "../caller";
import type { SpecimenSource } from "../generation/specimen-source";
import { requireOwnPractice } from "../permissions";

/** How far the plate of the caller's practice is. */
export interface PlateProgress {
  readonly state: "making" | "made" | "failed";
  /** What is being done just now; empty when nothing is. */
  readonly stage: string;
}

export async function followProgress(caller: Caller, id: string, specimens: SpecimenSource) {
  const own = await requireOwnPractice(caller, id);
  if (!own.ok) return own;
  const { state, stage } = await specimens.stageOf(own.practice.specimenId);
  const plate: PlateProgress = {
    state: state === "failed" ? "failed" : state === "waiting" || state === "making" ? "making" : "made",
    stage,
  };
  return { ok: true, practice: own.practice, plate } as const;
}
