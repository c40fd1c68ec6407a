import { type ImperfectionType, imperfection } from "../imperfections";
import { SECTIONS, type Section } from "../results";
import type { Paper } from "./paper";
import { FACES_OF, PIECE_CHOICES } from "./piece-choices";

/** The paper without what its pieces are asked to have, as whoever sits it may read it: it would tell what is on them. */
export const withoutAskedTypes = (paper: Paper): Paper => ({
  ...paper,
  sections: paper.sections.map(({ piece: { types: _, ...piece }, ...section }) => ({ ...section, piece })),
});

/** The section in whose piece a type comes: a plate where it can, since a plate has room for more. */
function sectionFor(type: ImperfectionType): Section {
  const found = SECTIONS.find((section) => FACES_OF[section].some((face) => imperfection(type).faces.includes(face)));
  if (!found) throw new Error(`${type} comes in no section`);
  return found;
}

/** Its sizes are drawn as they come, so that every type has some that it may have. */
const BLUEPRINT = "practice";

/** So many types can be asked of one paper at most. */
export const MOST_ASKED = PIECE_CHOICES.plate.blueprints[BLUEPRINT].indications;

/** A paper of those sections of another that types come in, whose pieces have them: 1 to `MOST_ASKED`. */
export function askingFor(types: readonly ImperfectionType[], paper: Paper): Paper {
  const sections = paper.sections.flatMap((section) => {
    const includes = types.filter((type) => sectionFor(type) === section.section);
    const piece = { ...section.piece, blueprint: BLUEPRINT, types: { includes, among: "any" as const } };
    return includes.length > 0 ? [{ ...section, piece }] : [];
  });
  return { ...paper, sections };
}
