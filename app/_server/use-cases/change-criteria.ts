import { z } from "zod";
import { readCriteriaSet, updateCriteriaSet } from "@/prisma/stores/criteria-sets";
import type { Caller } from "../caller";
import { checkCriteria } from "../check-criteria";
import { requireTutor } from "../permissions";
import { refuse } from "../refusal";

const seenSchema = z.object({ seen: z.iso.datetime() });

/**
 * A tutor changes criteria of the workshop, whoever made them: `{ basedOn, own, seen }`, where `seen` is the time of the
 * version that was changed. A version that has not seen the stored one is refused, with the time of that one. Practices begun
 * before keep the criteria that they began with.
 */
export async function changeCriteria(caller: Caller, id: string, input: unknown) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const kept = await readCriteriaSet(id);
  if (!kept) return refuse("no-such-criteria");
  const checked = checkCriteria(input, id);
  if (!checked.ok) return checked;
  const parsed = seenSchema.safeParse(input);
  if (!parsed.success) {
    const problem = "the time of the version that was changed, like 2026-03-02T08:00:00.000Z";
    return refuse("malformed-criteria", { problems: [{ field: "seen", problem }] });
  }
  const seen = new Date(parsed.data.seen);
  const { basedOn, own } = checked;
  // two versions never have the same time, also where the clock stands still or goes back
  const updatedAt = new Date(Math.max(caller.clock().getTime(), seen.getTime() + 1));
  if (await updateCriteriaSet({ basedOn, own, seen, updatedAt })) return { ok: true, updatedAt } as const;
  const now = await readCriteriaSet(id);
  return refuse("newer-criteria", { updatedAt: (now ?? kept).updatedAt });
}
