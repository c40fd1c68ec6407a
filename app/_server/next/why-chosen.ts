import { type Reason, reasonOf } from "@/lib/progress";
import { seenItems } from "@/lib/specimen";
import { readChoice } from "@/prisma/stores/next-pieces";
import type { HandedInPractice } from "@/prisma/stores/practices";

/**
 * Why the piece of a handed-in practice was chosen for its learner, by what is really on it; null where it was not chosen. It is
 * worked out when it is read and stored nowhere, so that nothing can tell it before.
 */
export async function whyChosen({ practice, truth }: HandedInPractice): Promise<Reason | null> {
  const choice = await readChoice(practice.specimenId, practice.userId);
  if (!choice) return null;
  const indications = seenItems(truth).filter(({ neutral }) => !neutral);
  return reasonOf(choice.learner, { id: practice.specimenId, indications }, choice.chosenAt.getTime());
}
