import type { ClassGroup } from "@/lib/classes";
import type { LearnerRecord } from "@/prisma/stores/marks";

const NAMES_SHOWN = 6;

/** One sentence for a tutor who has just come to the desk. */
export function describeDesk(learners: readonly LearnerRecord[]): string {
  if (learners.length === 0)
    return "No learners yet. Make a class and bring a list of them, or let them make their own accounts.";
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

/** One sentence on the classes in use. */
export function describeClasses(classes: readonly Pick<ClassGroup, "name" | "memberCount">[]): string {
  if (classes.length === 0) return "No class yet. Make one, bring a list of learners, and print their sign-in slips.";
  const shown = classes.slice(0, NAMES_SHOWN).map(({ name, memberCount }) => `${name} (${memberCount})`);
  const more = classes.length - shown.length;
  return `${shown.join(", ")}${more > 0 ? ` and ${more} more` : ""}.`;
}

/** "no learners", "one learner", "12 learners". */
export function countLearners(count: number): string {
  return count === 1 ? "one learner" : `${count || "no"} learners`;
}
