import { readPerson } from "@/prisma/stores/people";
import { readReviewableRuns } from "@/prisma/stores/reviews";
import { readSitting } from "@/prisma/stores/sittings";
import type { Caller } from "../caller";
import { fileOf } from "../file-of";
import { requireFileKind, requireOwnSitting } from "../permissions";
import { refuse } from "../refusal";
import { byClock } from "../sittings/change-sitting";

/** The marks of a sitting that is over, computed and as reviewed, as a CSV file, for a tutor of its class; void sections are left out. */
export async function writeSittingFile(caller: Caller, id: string, kind: string) {
  const own = await requireOwnSitting(caller, id);
  if (!own.ok) return own;
  const known = requireFileKind(kind);
  if (!known.ok) return known;
  const stored = await readSitting(id);
  if (!stored) return refuse("no-such-sitting");
  const { state } = byClock(stored, caller.clock()).sitting;
  if (state !== "closed" && state !== "released") return refuse("not-reviewable");
  const runs = await readReviewableRuns({ sittingId: id });
  const pieces = await Promise.all(
    runs.map(async ({ practiceId, userId }) => {
      const learner = await readPerson(userId);
      return learner ? [{ practiceId, learner }] : [];
    }),
  );
  return { ok: true, name: `${known.kind}-of-sitting-${id}`, text: await fileOf(known.kind, pieces.flat()) } as const;
}
