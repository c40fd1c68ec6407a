import type { RandomStream } from "../random";
import { chooseWrong, shuffled } from "./choose";
import type { Choice, Kind, Material } from "./kind";
import type { Question } from "./question";

/** A question of a kind, or null where the kind steps aside. */
export function composeQuestion(kind: Kind, id: string, material: Material, random: RandomStream): Question | null {
  const draft = kind.draft(material, random);
  const wrong = draft && chooseWrong(draft, random);
  if (!draft || !wrong) return null;
  const all = shuffled([draft.right, ...wrong], random);
  const options = all.map(({ text }) => text) as unknown as Question["options"];
  return {
    id,
    kind: kind.name,
    source: kind.source,
    stem: draft.stem,
    options,
    key: all.indexOf(draft.right),
    explanation: explain(draft.right, wrong),
    place: draft.place,
  };
}

/** "24 mm is right: from 120 to 144 mm at plate A's toe. 40 mm: that is the sum of both. ..." */
function explain(right: Choice, wrong: readonly Choice[]): string {
  const errors = [...new Set(wrong.map(({ why }) => why))].map((why) => {
    const options = wrong.filter((choice) => choice.why === why).map(({ text }) => text);
    return `${options.join(" or ")}: ${why}.`;
  });
  return [`${right.text} is right: ${right.why}.`, ...errors].join(" ");
}
