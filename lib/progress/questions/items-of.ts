import type { QuestionLine } from "../../results";
import type { AnsweredItem } from "./item-analysis";

/** A question as several learners had it, with its words. */
export interface SharedItem extends AnsweredItem {
  readonly kind: string;
  readonly stem: string;
  /** In alphabetical order: learners may have had them in any. */
  readonly texts: readonly string[];
  /** The learners for whom a tutor annulled it. */
  readonly annulledFor: ReadonlySet<number>;
}

/**
 * The questions of several learners' sections, those with the same words and the same right answer taken as one, in the order in
 * which they first came: on the same piece everybody has the same, on pieces of their own hardly anybody has. What is right may differ
 * from piece to piece where the words do not. Its id is its stem, its options and the right one.
 * @param annulled learner by learner the names of the questions that a tutor annulled
 */
export function itemsOf(
  byLearner: readonly (readonly QuestionLine[])[],
  annulled: readonly ReadonlySet<string>[] = [],
): SharedItem[] {
  const items = new Map<string, SharedItem & { chosen: (number | null | undefined)[]; annulledFor: Set<number> }>();
  for (const [learner, lines] of byLearner.entries()) {
    for (const { question, kind, stem, options, key, written } of lines) {
      const texts = [...options].sort();
      const id = [stem, ...texts, options[key]].join("\n");
      const place = (option: number) => texts.indexOf(options[option]);
      const item = items.get(id) ?? {
        id,
        kind,
        stem,
        texts,
        key: place(key),
        options: texts.length,
        chosen: byLearner.map(() => undefined),
        annulledFor: new Set<number>(),
      };
      item.chosen[learner] = written === null ? null : place(written);
      if (annulled[learner]?.has(question)) item.annulledFor.add(learner);
      items.set(id, item);
    }
  }
  return [...items.values()];
}
