import type { LearnerRecord } from "@/prisma/stores/practices";

/** One sentence for a tutor who has just come to the desk. */
export function describeDesk(learners: readonly LearnerRecord[]): string {
  if (learners.length === 0) return "No learners yet. Make accounts for them below, or let them make their own.";
  const pieces = learners.reduce((sum, { handedIn }) => sum + handedIn.length, 0);
  const busy = learners.filter(({ openCount }) => openCount > 0).length;
  const people = learners.length === 1 ? "One learner" : `${learners.length} learners`;
  const handedIn = pieces === 1 ? "one piece handed in" : `${pieces || "no"} pieces handed in`;
  return `${people}, ${handedIn}, ${busy || "nobody"} with a piece on the bench.`;
}

/** One sentence on one learner. */
export function describeLearner(signInName: string, handedIn: number, unfinished: number): string {
  const pieces = handedIn === 1 ? "one piece" : `${handedIn || "no"} pieces`;
  return `Signs in as ${signInName}; ${pieces} handed in, ${unfinished || "none"} unfinished.`;
}
