import { MARKED_SECTIONS } from "../../results";
import { type FalseCallCounts, type FalseCallRate, falseCallRate } from "../statistics/false-calls";
import { type Confusion, confusions } from "../statistics/naming";
import { dimensionSizing, type Sizing, sizingByKind } from "../statistics/sizing";
import { addCounts, mergeBy } from "../tallies/counts";
import { addOverviews, EMPTY_OVERVIEW, type Overview } from "../tallies/overview";
import { addCalled, addDimensions, EMPTY_PIECE_TALLY, type PieceTally } from "../tallies/piece-tally";
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

/** The standing of a class from the extracts of its learners, in their order. */
export function classStanding(learners: readonly Overview[]): ClassStanding {
  const together = learners.reduce(addOverviews, EMPTY_OVERVIEW);
  const pieces = allPieces(together);
  const figures = {
    missed: missedTypes(learners, together),
    confusions: confusions(together.types),
    sizes: sizingByKind(together.types),
    dimensions: dimensionSizing(pieces),
    falseCalls: falseCallRate(pieces),
  };
  return {
    pieces: pieces.pieces,
    indications: figures.missed.reduce((sum, { found }) => sum + found.of, 0),
    ...figures,
    toTeach: toTeach(figures),
  };
}

/** Sections of all kinds together, as far as they can be added up. */
function allPieces({ sections }: Overview): FalseCallCounts & Pick<PieceTally, "pieces" | "dimensions"> {
  return MARKED_SECTIONS.reduce<FalseCallCounts & Pick<PieceTally, "pieces" | "dimensions">>((sum, section) => {
    const one = sections[section];
    if (!one) return sum;
    return {
      pieces: sum.pieces + one.pieces,
      clean: sum.clean + one.clean,
      cleanCalled: sum.cleanCalled + one.cleanCalled,
      weldLength: sum.weldLength + one.weldLength,
      falseCalls: sum.falseCalls + one.falseCalls,
      falseCallsOn: addCounts(sum.falseCallsOn, one.falseCallsOn),
      clutter: mergeBy(sum.clutter, one.clutter, addCalled),
      dimensions: mergeBy(sum.dimensions, one.dimensions, addDimensions),
    };
  }, EMPTY_PIECE_TALLY);
}
