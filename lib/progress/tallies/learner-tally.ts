import { MARKED_SECTIONS, type MarkedSection } from "../../results";
import type { SectionObservations } from "../observations/observation";
import { addPiece, addPieceTallies, EMPTY_PIECE_TALLY, type PieceTally } from "./piece-tally";
import { addObservations, EMPTY_TALLY, type Tally } from "./tally";
import type { TypeTallies } from "./type-tally";

/** What is kept of one learner: pieces apart by kind of section, imperfections by type whatever section they were in. */
export interface LearnerTally {
  readonly sections: { readonly [section in MarkedSection]?: PieceTally };
  readonly types: TypeTallies;
}

export const EMPTY_LEARNER_TALLY: LearnerTally = { sections: {}, types: {} };

/** With some sections more. The order of adding makes no difference. */
export function addSections(tally: LearnerTally, observed: readonly SectionObservations[]): LearnerTally {
  const sections: { [section in MarkedSection]?: PieceTally } = { ...tally.sections };
  let whole: Tally = { ...EMPTY_TALLY, types: tally.types };
  for (const one of observed) {
    sections[one.section] = addPiece(sections[one.section] ?? EMPTY_PIECE_TALLY, one);
    whole = addObservations(whole, one);
  }
  return { sections, types: whole.types };
}

/** All sections together. */
export const wholeTally = ({ sections, types }: LearnerTally): Tally => ({
  pieces: MARKED_SECTIONS.reduce(
    (sum, section) => addPieceTallies(sum, sections[section] ?? EMPTY_PIECE_TALLY),
    EMPTY_PIECE_TALLY,
  ),
  types,
});
