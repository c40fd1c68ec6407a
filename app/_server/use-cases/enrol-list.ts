import { z } from "zod";
import { type KnownAccount, LIST_MAX_LENGTH, LIST_MAX_ROWS, type PlannedRow, planList, readList } from "@/lib/classes";
import { enrol, listMembers } from "@/prisma/stores/classes";
import { listLearnersOf, listSignInNames } from "@/prisma/stores/people";
import type { Caller } from "../caller";
import { problemsByField } from "../input-problem";
import { accountWithCode } from "../one-time-codes";
import { requireClassInUse } from "../permissions";
import { refuse } from "../refusal";

const listSchema = z.object({
  list: z
    .string()
    .max(LIST_MAX_LENGTH, "The list is too long. Split it up.")
    .transform(readList)
    .refine((rows) => rows.length > 0, "There is no name in the list yet. Paste one learner a line.")
    .refine((rows) => rows.length <= LIST_MAX_ROWS, `A list holds at most ${LIST_MAX_ROWS} learners. Split it up.`),
});

/** What of a planned row somebody has seen and confirmed. */
type AgreedRow = Pick<PlannedRow, "row" | "name" | "signInName"> & { readonly outcome: string };

/** What would be done for every row of a list of learners; nothing is done yet. */
export async function previewList(caller: Caller, classId: string, list: unknown) {
  const own = await requireClassInUse(caller, classId);
  if (!own.ok) return own;
  const parsed = listSchema.safeParse({ list });
  if (!parsed.success) return refuse("invalid-input", { fields: problemsByField(parsed.error) });
  return { ok: true, rows: planList(parsed.data.list, await knownAccounts(own.actor.id, classId)) } as const;
}

/**
 * Does what was previewed, all or nothing: makes the accounts, whose codes are told this once, and puts everybody into the
 * class. Rows that are wrong are left out. If anything would now come out otherwise than `agreed`, nothing is done, and
 * what would be done now is answered.
 */
export async function enrolList(caller: Caller, classId: string, list: unknown, agreed: readonly AgreedRow[]) {
  const preview = await previewList(caller, classId, list);
  if (!preview.ok) return preview;
  const { rows } = preview;
  if (outcomesOf(rows) !== outcomesOf(agreed)) return refuse("list-changed", { rows });
  const made = await Promise.all(
    rows.flatMap(({ outcome, name, signInName }) =>
      outcome === "new" ? [accountWithCode({ name, signInName, role: "learner" })] : [],
    ),
  );
  const learnerIds = rows.flatMap((row) => (row.outcome === "added" ? [row.learnerId] : []));
  const accounts = made.map(({ account }) => account);
  if (await enrol({ groupId: classId, accounts, learnerIds }, caller.clock())) {
    return { ok: true, slips: made.map(({ slip }) => slip), added: learnerIds.length } as const;
  }
  // somebody took one of the sign-in names while the codes were being hashed
  const now = await previewList(caller, classId, list);
  return now.ok ? refuse("list-changed", { rows: now.rows }) : now;
}

const outcomesOf = (rows: readonly AgreedRow[]) =>
  JSON.stringify(rows.map(({ row, outcome, name, signInName }) => [row, outcome, name, signInName]));

async function knownAccounts(tutorId: string, classId: string): Promise<readonly KnownAccount[]> {
  const [everybody, own, members] = await Promise.all([
    listSignInNames(),
    listLearnersOf(tutorId),
    listMembers(classId),
  ]);
  const isOwn = new Set(own.map(({ id }) => id));
  const isMember = new Set(members.flatMap(({ person, leftAt }) => (leftAt === null ? [person.id] : [])));
  return everybody.map((account) => ({
    ...account,
    standing: isMember.has(account.id) ? "member" : isOwn.has(account.id) ? "learner" : "somebody-else",
  }));
}
