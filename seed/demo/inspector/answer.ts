import type { Question } from "@/lib/questions";
import type { RandomStream } from "@/lib/random";
import type { ChosenOptions } from "@/lib/report";
import type { Skill } from "./skill";

/**
 * What somebody chooses: what is right where they know it, else any of the four. Whether they are right does not depend on which of
 * them the key is, since questions are drawn anew for everybody.
 */
export const answersTo = (questions: readonly Question[], { knowledge }: Skill, random: RandomStream): ChosenOptions =>
  Object.fromEntries(
    questions.map(({ id, key }) => {
      const isKnown = random.chance(knowledge);
      const guess = random.integer(4);
      return [id, isKnown ? key : (key + guess) % 4];
    }),
  );
