import { listMembers } from "@/prisma/stores/classes";
import type { Caller } from "../caller";
import { requireOwnClass } from "../permissions";
import { statementsText } from "../record/statements-text";

/** What counts of everybody in a class as statements of the Experience API, of its own sittings alone, for its tutors. */
export async function writeClassStatements(caller: Caller, classId: string) {
  const own = await requireOwnClass(caller, classId);
  if (!own.ok) return own;
  const members = (await listMembers(classId)).filter(({ leftAt }) => leftAt === null);
  const learners = members.map(({ person }) => ({ userId: person.id, classIds: [classId] }));
  return { ok: true, form: "xapi", name: `statements-of-${own.group.name}`, chunks: statementsText(learners) } as const;
}
