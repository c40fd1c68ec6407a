import { z } from "zod";
import { LIST_MAX_ROWS } from "@/lib/classes";
import type { Person } from "@/lib/workshop";
import { replaceByOneTimeCodes } from "@/prisma/stores/people";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { codesFor } from "../one-time-codes";
import { requireOwnLearner, requireTutor } from "../permissions";
import { refuse } from "../refusal";

const learnersSchema = z
  .array(z.string())
  .min(1, "Choose at least one learner.")
  .max(LIST_MAX_ROWS, `Choose at most ${LIST_MAX_ROWS} learners.`);

/**
 * Puts one-time codes in place of the passwords of a tutor's learners, told this once, and signs them out everywhere.
 * Where one of them is not theirs, nothing is changed for anybody.
 */
export async function makeCodes(caller: Caller, learnerIds: unknown) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const parsed = z.object({ learners: learnersSchema }).safeParse({ learners: learnerIds });
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  const learners: Person[] = [];
  for (const id of new Set(parsed.data.learners)) {
    const own = await requireOwnLearner(caller, id);
    if (!own.ok) return own;
    learners.push(own.learner);
  }
  const codes = await codesFor(learners);
  await replaceByOneTimeCodes(
    codes.map(({ kept }) => kept),
    caller.clock(),
  );
  return { ok: true, slips: codes.map(({ slip }) => slip) } as const;
}
