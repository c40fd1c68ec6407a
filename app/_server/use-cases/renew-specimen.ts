import { JOINT_OF } from "@/lib/results";
import { replaceSpecimen } from "@/prisma/stores/practices";
import type { Caller } from "../caller";
import type { SpecimenSource } from "../generation/specimen-source";
import { requireOwnPractice } from "../permissions";
import { refuse } from "../refusal";

/** Gets another piece for a practice whose piece could not be made. */
export async function renewSpecimen(caller: Caller, id: string, specimens: SpecimenSource) {
  const own = await requireOwnPractice(caller, id);
  if (!own.ok) return own;
  const { specimenId, section, runId } = own.practice;
  // a sitting sees to its pieces by itself
  if (runId !== null) return refuse("specimen-not-failed");
  if ((await specimens.stageOf(specimenId)).state !== "failed") return refuse("specimen-not-failed");
  const kind = JOINT_OF[section];
  const other = (await specimens.takeReady(kind)) ?? (await specimens.requestOne(kind));
  await replaceSpecimen([id], specimenId, other.specimenId);
  return { ok: true } as const;
}
