import { DEFAULT_CRITERIA } from "@/lib/criteria";
import { MAX_OPEN_PRACTICES, type NotChosen } from "@/lib/practice";
import { practiceAims } from "@/lib/progress";
import { listNextSections } from "@/prisma/stores/next-pieces";
import { readLastChoice } from "@/prisma/stores/practices";
import { readLearnerModel } from "@/prisma/stores/progress";
import { isInSitting } from "@/prisma/stores/sittings";
import { readWorkshop } from "@/prisma/stores/workshops";
import type { Caller } from "../caller";
import { refuse } from "../refusal";
import { listCriteria } from "./list-criteria";
import { listOwnPractices } from "./list-own-practices";

/**
 * What the caller has unfinished, their marks, what a fresh piece would ask for (criteria as they chose them last), of which
 * sections one was chosen for them or why none is at present, and what their practice is after. That depends on the caller alone: nothing here says, or goes
 * by, what is on a piece.
 */
export async function readToday(caller: Caller) {
  const practices = await listOwnPractices(caller);
  if (!practices.ok) return practices;
  const workshop = await readWorkshop();
  if (!workshop) return refuse("not-set-up");
  const criteria = await listCriteria(caller);
  if (!criteria.ok) return criteria;
  const { groups } = criteria;
  const last = caller.actor && (await readLastChoice(caller.actor.id));
  const isThere = groups.some(({ sets }) => sets.some(({ id }) => id === last?.criteriaId));
  const choice = last && isThere ? last : { criteriaId: DEFAULT_CRITERIA.id, book: last?.book ?? ("open" as const) };
  const canStart = practices.open.length < MAX_OPEN_PRACTICES;
  const userId = practices.person.id;
  const now = caller.clock();
  const [chosen, known, isSitting] = await Promise.all([
    listNextSections(userId),
    readLearnerModel(userId),
    isInSitting(userId, now),
  ]);
  // a tutor who never takes a piece needs none
  const needsNone = practices.person.role === "tutor" && practices.open.length + practices.handedIn.length === 0;
  const notChosen: NotChosen | null = isSitting ? "in-sitting" : needsNone ? "no-practice" : null;
  /** Null while what they handed in is added up. */
  const aims = known && practiceAims(known, now.getTime());
  const next = { chosen, aims, notChosen };
  return { ...practices, passMarks: workshop.passMarks, canStart, criteria: { groups, choice }, next } as const;
}
