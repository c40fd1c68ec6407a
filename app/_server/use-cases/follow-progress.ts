import type { JointFacts } from "@/lib/weld";
import { readTruth } from "@/prisma/stores/specimens";
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

/** What everybody may know of the plate of the caller's practice; null while it is not made. Nothing else of the truth leaves. */
export async function readPlateFacts(caller: Caller, id: string) {
  const own = await requireOwnPractice(caller, id);
  if (!own.ok) return own;
  const made = await readTruth(own.practice.specimenId);
  if (!made) return { ok: true, joint: null } as const;
  const { process, position, thickness } = made.truth.joint;
  const joint: JointFacts = { process, position, thickness };
  return { ok: true, joint } as const;
}
