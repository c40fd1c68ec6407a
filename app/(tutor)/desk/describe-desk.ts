import type { LearnerRecord } from "@/prisma/stores/practices";

/** One sentence for a tutor who has just come to the desk. */
export function describeDesk(learners: readonly LearnerRecord[]): string {
  if (learners.length === 0) return "No learners yet. Make accounts for them below, or let them make their own.";
  const plates = learners.reduce((sum, { handedIn }) => sum + handedIn.length, 0);
  const busy = learners.filter(({ openCount }) => openCount > 0).length;
  const people = learners.length === 1 ? "One learner" : `${learners.length} learners`;
  const handedIn = plates === 1 ? "one plate handed in" : `${plates || "no"} plates handed in`;
  return `${people}, ${handedIn}, ${busy || "nobody"} with a plate on the bench.`;
}

/** One sentence on one learner. */
export function describeLearner(signInName: string, handedIn: number, unfinished: number): string {
  const plates = handedIn === 1 ? "one plate" : `${handedIn || "no"} plates`;
  return `Signs in as ${signInName}; ${plates} handed in, ${unfinished || "none"} unfinished.`;
}
