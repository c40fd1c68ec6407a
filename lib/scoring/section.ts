import { IMPERFECTION_TYPES, imperfection } from "../imperfections";
import type { Call } from "../report";
import { RULE, type Tolerances } from "../results";
import type { ClutterItem, Truth, TruthItem } from "../specimen";
import type { Face } from "../weld";
import { apportion } from "./apportion";
import { type Block, possibleBlocks } from "./blocks";
import { bestBlocks } from "./packing";
import { comparePieces, compareText, type Piece, toPiece } from "./pieces";
import { mergedTargets, singleTarget, type Target } from "./targets";

/** The marks of a whole section, in thousandths. */
export const WHOLE = 100_000;

/** One section made ready for marking: everything in an order that depends on content only. */
export interface Section {
  readonly truths: readonly TruthItem[];
  /** One a truth, in the same order. */
  readonly targets: readonly Target[];
  readonly pieces: readonly Piece[];
  /** What false calls may have been made on; no mark depends on it. */
  readonly clutter: readonly ClutterItem[];
  /** Calls that have no place. */
  readonly unplaced: readonly Call[];
  /** Indications to be found: truths that are not neutral. */
  readonly indications: number;
  /** What one call costs, thousandths of a mark. */
  readonly price: number;
}

/** Takes what lies and what was called on one face. An indication's worth is its weight's share of the section, to the thousandth. */
export function prepareSection(
  face: Face,
  { items, clutter }: Pick<Truth, "items" | "clutter">,
  calls: readonly Call[],
  tolerances: Tolerances,
): Section {
  const truths = items.filter((item) => item.face === face).sort(compareTruths);
  const weights = truths.map((item) => (item.neutral ? 0 : Math.round(1000 * imperfection(item.type).weight)));
  const indications = weights.filter((weight) => weight > 0).length;
  const worth = apportion(indications === 0 ? 0 : WHOLE, weights);
  const ofFace = calls.filter((call) => call.face === face);
  return {
    truths,
    targets: truths.map((item, position) => singleTarget(item, position, worth[position], tolerances)),
    pieces: ofFace
      .map(toPiece)
      .filter((piece) => piece !== null)
      .sort(comparePieces),
    clutter: clutter.filter((item) => item.face === face),
    unplaced: ofFace.filter((call) => toPiece(call) === null).sort((a, b) => compareText(a.id, b.id)),
    indications,
    // Half the mean weight is half a mean share of the section, whatever the weights.
    price: indications === 0 ? 1000 * RULE.priceOnClean : Math.round((RULE.price * WHOLE) / indications),
  };
}

/** The best structure of a section: which calls stand for which truths. */
export function matchSection(section: Section, tolerances: Tolerances): Block[] {
  const merged = mergedTargets(section.targets, tolerances);
  const blocks = possibleBlocks(section.targets, merged, section.pieces, section.price);
  return bestBlocks(blocks, section.truths.length, section.pieces.length);
}

function compareTruths(a: TruthItem, b: TruthItem): number {
  return (
    a.start - b.start ||
    a.end - b.end ||
    a.across - b.across ||
    IMPERFECTION_TYPES.indexOf(a.type) - IMPERFECTION_TYPES.indexOf(b.type) ||
    compareText(a.id, b.id)
  );
}
