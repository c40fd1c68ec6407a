import { readPerson } from "@/prisma/stores/people";
import { readSitting } from "@/prisma/stores/sittings";
import type { Caller } from "../caller";
import { fileOf } from "../file-of";
import { requireFileKind, requireOwnSitting } from "../permissions";
import { refuse } from "../refusal";
import { byClock } from "../sittings/change-sitting";
import { satInClass, workOf } from "../sittings/sat-sections";

/** The marks of a sitting that is over, computed and as reviewed, as a CSV file, for a tutor of its class; void ones say so. */
export async function writeSittingFile(caller: Caller, id: string, kind: string) {
  const own = await requireOwnSitting(caller, id);
  if (!own.ok) return own;
  const known = requireFileKind(kind);
  if (!known.ok) return known;
  const stored = await readSitting(id);
  if (!stored) return refuse("no-such-sitting");
  const now = caller.clock();
  const { state } = byClock(stored, now).sitting;
  if (state !== "closed" && state !== "released" && state !== "void") return refuse("not-reviewable");
  const sat = (await satInClass(stored.groupId, now)).filter(({ sittingId }) => sittingId === id);
  const pieces = await Promise.all(
    sat.map(async (one) => {
      const learner = await readPerson(one.userId);
      return learner ? [{ practiceId: one.practiceId, learner, work: workOf(one) }] : [];
    }),
  );
  return { ok: true, name: `${known.kind}-of-sitting-${id}`, text: await fileOf(known.kind, pieces.flat()) } as const;
}
