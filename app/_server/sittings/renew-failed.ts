import { replaceSpecimen } from "@/prisma/stores/practices";
import type { StoredRun, StoredSitting } from "@/prisma/stores/sittings";
import type { SpecimenSource } from "../generation/specimen-source";
import { orderPiece } from "./new-run";

/**
 * Orders other pieces for sections whose piece could not be made; how many. Whoever sat the same piece goes on sitting the
 * same, also where another learner has brought the order about.
 */
export async function renewFailed(
  stored: StoredSitting,
  runs: readonly StoredRun[],
  specimens: SpecimenSource,
  isAwaited: boolean,
): Promise<number> {
  const failed = runs.filter(hasFailed);
  let ordered = 0;
  for (const specimenId of new Set(failed.map((one) => one.specimenId))) {
    const concerned = stored.runs.filter((one) => one.specimenId === specimenId && hasFailed(one));
    const shared = sharedPiece(stored, concerned[0]);
    const other = shared ?? (await orderPiece(stored.sitting.paper, concerned[0].run.section, specimens, isAwaited));
    if (shared === null) ordered++;
    await replaceSpecimen(
      concerned.map(({ practiceId }) => practiceId),
      specimenId,
      other,
    );
  }
  return ordered;
}

const hasFailed = ({ run, specimen }: StoredRun): boolean => specimen.state === "failed" && run.state === "waiting";

/** The piece that the others have got meanwhile, for whoever came in with the failed one; null where there is none. */
function sharedPiece({ sitting, runs }: StoredSitting, { run }: StoredRun): string | null {
  if (sitting.paper.forms !== "same" || run.isBorderline) return null;
  const other = runs.find(
    (one) => one.run.section === run.section && !one.run.isBorderline && one.specimen.state !== "failed",
  );
  return other?.specimenId ?? null;
}
