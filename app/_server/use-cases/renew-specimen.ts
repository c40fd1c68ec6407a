import { replaceSpecimen } from "@/prisma/stores/practices";
import type { Caller } from "../caller";
import type { SpecimenSource } from "../generation/specimen-source";
import { requireOwnPractice } from "../permissions";
import { refuse } from "../refusal";

/** Gets another plate for a practice whose plate could not be made. */
export async function renewSpecimen(caller: Caller, id: string, specimens: SpecimenSource) {
  const own = await requireOwnPractice(caller, id);
  if (!own.ok) return own;
  const { specimenId } = own.practice;
  if ((await specimens.stageOf(specimenId)).state !== "failed") return refuse("specimen-not-failed");
  const other = (await specimens.takeReady()) ?? (await specimens.requestOne());
  await replaceSpecimen(id, specimenId, other.specimenId);
  return { ok: true } as const;
}
