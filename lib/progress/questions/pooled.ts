import { z } from "zod";
import type { QuestionLine } from "../../results";
import type { AnsweredItem } from "./item-analysis";
import { itemsOf } from "./items-of";

const count = z.int().min(0);

/** How a question was answered by people of whom nothing else is kept. */
export const pooledQuestionSchema = z.strictObject({
  kind: z.string(),
  stem: z.string(),
  /** Options in alphabetical order, and which of them is right. */
  texts: z.array(z.string()),
  key: count,
  /** How often each was chosen. */
  chosen: z.array(count),
  blank: count,
});
export type PooledQuestion = z.infer<typeof pooledQuestionSchema>;

/** The questions of some sections with how often each option was chosen, by the id that `itemsOf` knows them by. */
export function pooledQuestions(sections: readonly (readonly QuestionLine[])[]): ReadonlyMap<string, PooledQuestion> {
  return new Map(
    itemsOf(sections).map(({ id, kind, stem, texts, key, chosen }) => [
      id,
      {
        kind,
        stem,
        texts: [...texts],
        key,
        chosen: texts.map((_, option) => chosen.filter((one) => one === option).length),
        blank: chosen.filter((one) => one === null).length,
      },
    ]),
  );
}

/** The same question answered by more people. */
export const addPooledQuestions = (a: PooledQuestion, b: PooledQuestion): PooledQuestion => ({
  ...a,
  chosen: a.chosen.map((times, option) => times + b.chosen[option]),
  blank: a.blank + b.blank,
});

/**
 * Items with the answers of the pool behind those of the learners at hand. Nobody else's answer stands at the place of one of the
 * pool, so that it counts for how hard a question is and not for who answers it well.
 */
export function withPooled<Item extends AnsweredItem>(
  items: readonly Item[],
  pool: ReadonlyMap<string, PooledQuestion>,
): readonly Item[] {
  let taken = Math.max(0, ...items.map(({ chosen }) => chosen.length));
  return items.map((item) => {
    const pooled = pool.get(item.id);
    if (!pooled) return item;
    const answers = [
      ...pooled.chosen.flatMap((times, option) => new Array<number | null>(times).fill(option)),
      ...new Array<null>(pooled.blank).fill(null),
    ];
    const between = new Array<undefined>(taken - item.chosen.length).fill(undefined);
    taken += answers.length;
    return { ...item, chosen: [...item.chosen, ...between, ...answers] };
  });
}
