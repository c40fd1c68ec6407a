import type { ImperfectionType } from "../../imperfections";
import type { SectionObservations } from "../observations/observation";
import { addPiece, addPieceTallies, EMPTY_PIECE_TALLY, type PieceTally } from "./piece-tally";
import { addTruth, EMPTY_TYPE_TALLY, mergeTypeTallies, type TypeTallies } from "./type-tally";

/**
 * What progress needs of any number of handed-in sections, of a learner or of a class: as large after a thousand sections as after
 * ten. Stored in parts, a row for each learner and type and one for each learner. All of it is whole numbers, so that the order of
 * adding makes no difference and a class is the sum of its learners. A section of a sitting goes in once its marks may be known.
 */
export interface Tally {
  readonly pieces: PieceTally;
  readonly types: TypeTallies;
}

export const EMPTY_TALLY: Tally = { pieces: EMPTY_PIECE_TALLY, types: {} };

/** With one section more. */
export function addObservations({ pieces, types }: Tally, observed: SectionObservations): Tally {
  const added: { [type in ImperfectionType]?: TypeTallies[type] } = { ...types };
  for (const truth of observed.truths) {
    added[truth.type] = addTruth(added[truth.type] ?? EMPTY_TYPE_TALLY, truth);
  }
  return { pieces: addPiece(pieces, observed), types: added };
}

/** Both tallies together. */
export const addTallies = (a: Tally, b: Tally): Tally => ({
  pieces: addPieceTallies(a.pieces, b.pieces),
  types: mergeTypeTallies(a.types, b.types),
});
