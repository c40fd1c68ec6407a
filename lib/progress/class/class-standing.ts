import { MARKED_SECTIONS } from "../../results";
import { type FalseCallRate, falseCallRate } from "../statistics/false-calls";
import { type Confusion, confusions } from "../statistics/naming";
import { dimensionSizing, type Sizing, sizingByKind } from "../statistics/sizing";
import { type Overview, sumOverviews } from "../tallies/overview";
import { addSectionCounts, EMPTY_SECTION_COUNTS, type SectionCounts } from "../tallies/section-counts";
import { type MissedType, missedTypes } from "./missed-types";
import { type ToTeach, toTeach } from "./to-teach";

/** What a class still misses, in figures. */
export interface ClassStanding {
  /** Sections that count, of everybody. */
  readonly pieces: number;
  /** What there was to find on them. */
  readonly indications: number;
  readonly missed: readonly MissedType[];
  readonly confusions: readonly Confusion[];
  readonly sizes: readonly Sizing[];
  readonly dimensions: ReturnType<typeof dimensionSizing>;
  readonly falseCalls: FalseCallRate;
  readonly toTeach: ToTeach;
}

/**
 * The standing of a class from the extracts of its learners, in their order. Intervals are those of learners like these: they go
 * by how learners differ, and not by the number of their sections alone.
 */
export function classStanding(learners: readonly Overview[]): ClassStanding {
  const together = sumOverviews(learners);
  const pieces = allPieces(together);
  const piecesOf = learners.map(allPieces);
  const figures = {
    missed: missedTypes(learners),
    confusions: confusions(together.types),
    sizes: sizingByKind(
      together.types,
      learners.map(({ types }) => types),
    ),
    dimensions: dimensionSizing(pieces, piecesOf),
    falseCalls: falseCallRate(pieces, piecesOf),
  };
  return {
    pieces: pieces.pieces,
    indications: figures.missed.reduce((sum, { found }) => sum + found.of, 0),
    ...figures,
    toTeach: toTeach(figures),
  };
}

/** Sections of all kinds together, as far as they can be added up. */
function allPieces({ sections }: Overview): SectionCounts {
  return MARKED_SECTIONS.flatMap((section) => sections[section] ?? []).reduce(addSectionCounts, EMPTY_SECTION_COUNTS);
}
