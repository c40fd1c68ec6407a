import { listPeople } from "@/prisma/stores/people";
import { listMarksByLearner } from "@/prisma/stores/practices";
import { readWorkshop } from "@/prisma/stores/workshops";
import type { Caller } from "../caller";
import { requireTutor } from "../permissions";
import { refuse } from "../refusal";

/** The tutor's desk: settings, and every learner with their last marks and what they have unfinished. */
export async function readDesk(caller: Caller) {
  const tutor = requireTutor(caller);
  if (!tutor.ok) return tutor;
  const settings = await readWorkshop();
  if (!settings) return refuse("not-set-up");
  const [learners, records] = await Promise.all([listPeople("learner"), listMarksByLearner()]);
  return {
    ok: true,
    settings,
    learners: learners.map((person) => ({
      person,
      openCount: records.get(person.id)?.openCount ?? 0,
      handedIn: records.get(person.id)?.handedIn ?? [],
    })),
  } as const;
}
