import { iso, type WholeRecord } from "@/lib/record";
import { listAuditOf } from "@/prisma/stores/audit";
import { listPeopleNames } from "@/prisma/stores/people";
import type { OwnPieces } from "./pieces-of";

/** Acts that say what a mark is. */
const OF_MARKS = new Set(["overrule", "annul", "mark-again", "take-back"]);

/** What tutors did about somebody; what tells a mark only where that may be known. */
export async function logOf(personId: string, { sittings }: OwnPieces, isOwn: boolean): Promise<WholeRecord["log"]> {
  const runs = sittings.flatMap(({ sitting, runs: own }) => own.map(({ run, isKnown }) => ({ run, sitting, isKnown })));
  const entries = await listAuditOf(
    personId,
    sittings.map(({ sitting }) => sitting.id),
    runs.map(({ run }) => run.id),
  );
  const names = await listPeopleNames([...new Set(entries.map(({ actorId }) => actorId))]);
  return entries.flatMap(({ at, actorId, act, subject, reason, details }) => {
    const found = subject.kind === "run" ? runs.find(({ run }) => run.id === subject.id) : undefined;
    if (OF_MARKS.has(act) && !found?.isKnown) return [];
    const by = names.get(actorId) ?? (isOwn ? "a tutor" : "an account that is gone");
    const sitting = subject.kind === "sitting" ? subject.id : (found?.sitting.id ?? null);
    return [
      { at: iso(at), by, act, sitting, sectionOfSitting: found?.run.id ?? null, reason, details: { ...details } },
    ];
  });
}
