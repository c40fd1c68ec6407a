import { IMPERFECTION_TYPES, type ImperfectionType, imperfection, likeness } from "../../imperfections";
import { PIECES } from "../../weld";
import { shuffled } from "../choose";
import { BOTH_SECTIONS, type Kind } from "../kind";
import { looks } from "../words";

const wordsOf = (text: string): string[] => text.toLowerCase().match(/[a-z]{4,}/g) ?? [];

/** Types whose look is told without a word of their name. */
const TELLABLE: readonly ImperfectionType[] = IMPERFECTION_TYPES.filter((type) => {
  const { name, looks: words } = imperfection(type);
  return wordsOf(name).every((part) => !wordsOf(words).some((word) => word.startsWith(part.slice(0, 5))));
});

/** So many of other families stand beside those that look alike. */
const OTHERS = 4;

export const typeOfLook: Kind = {
  name: "type-of-look",
  source: "trade",
  sections: BOTH_SECTIONS,
  draft: ({ truth }, random) => {
    const { faces } = PIECES[truth.joint.kind];
    const face = random.pick(faces);
    const here = IMPERFECTION_TYPES.filter((type) => imperfection(type).faces.includes(face));
    const type = random.pick(here.filter((one) => TELLABLE.includes(one)));
    const alike = here.filter((other) => likeness(type, other) === 0.5);
    const others = here.filter((other) => likeness(type, other) === 0);
    return {
      stem: `What is this? ${imperfection(type).looks}`,
      right: { text: imperfection(type).name, why: "that is how it looks (common practice, no source)" },
      wrong: [...alike, ...shuffled(others, random).slice(0, OTHERS)].map((other) => ({
        text: imperfection(other).name,
        why: `it looks otherwise: ${looks(other)}`,
      })),
      place: null,
    };
  },
};
