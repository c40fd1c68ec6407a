import { replaceSpecimen } from "@/prisma/stores/practices";
import type { StoredRun, StoredSitting } from "@/prisma/stores/sittings";
import type { SpecimenSource } from "../generation/specimen-source";
import { orderPiece } from "./new-run";

/** Orders other pieces for sections whose piece could not be made; how many. Whoever sat the same piece goes on sitting the same. */
export async function renewFailed(
  { sitting }: StoredSitting,
  runs: readonly StoredRun[],
  specimens: SpecimenSource,
  isAwaited: boolean,
): Promise<number> {
  const failed = runs.filter(({ run, specimen }) => specimen.state === "failed" && run.state === "waiting");
  const others = new Map<string, string>();
  for (const { run, practiceId, specimenId } of failed) {
    const other = others.get(specimenId) ?? (await orderPiece(sitting.paper, run.section, specimens, isAwaited));
    others.set(specimenId, other);
    await replaceSpecimen(practiceId, specimenId, other);
  }
  return others.size;
}
