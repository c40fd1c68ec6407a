import { IMPERFECTION_TYPES, imperfection } from "../imperfections";
import type { Call } from "../report";
import { RULE, type Tolerances } from "../results";
import type { ClutterItem, Truth, TruthItem } from "../specimen";
import type { SurfaceFace } from "../weld";
import { apportion } from "./apportion";
import { type Block, possibleBlocks } from "./blocks";
import { bestBlocks } from "./packing";
import { comparePieces, compareText, type Piece, toPiece } from "./pieces";
import { mergedTargets, singleTarget, type Target } from "./targets";

/** The marks of a whole section, in thousandths. */
export const WHOLE = 100_000;

/** One face made ready for marking: everything in an order that depends on content only. */
export interface FaceSection {
  readonly truths: readonly TruthItem[];
  /** One a truth, in the same order. */
  readonly targets: readonly Target[];
  readonly pieces: readonly Piece[];
  /** What false calls may have been made on; no mark depends on it. */
  readonly clutter: readonly ClutterItem[];
  /** Calls that have no place. */
  readonly unplaced: readonly Call[];
  /** What one call costs, thousandths of a mark. */
  readonly price: number;
}

/** All faces of one piece. They share out one whole; no call on one of them stands for anything on another. */
export interface Section {
  /** What there is to earn, thousandths of a mark. */
  readonly whole: number;
  /** Indications to be found: truths that are not neutral. */
  readonly indications: number;
  readonly faces: readonly FaceSection[];
}

/**
 * Takes what lies and what was called on the faces of one piece. An indication's worth is its weight's share of the whole, to
 * the thousandth, whichever face it lies on.
 */
export function prepareSection(
  faces: readonly SurfaceFace[],
  truth: Pick<Truth, "items" | "clutter">,
  calls: readonly Call[],
  tolerances: Tolerances,
  whole = WHOLE,
): Section {
  const truths = faces.flatMap((face) => truth.items.filter((item) => item.face === face).sort(compareTruths));
  const weights = truths.map((item) => (item.neutral ? 0 : Math.round(1000 * imperfection(item.type).weight)));
  const indications = weights.filter((weight) => weight > 0).length;
  const worth = apportion(indications === 0 ? 0 : whole, weights);
  // Half the mean weight is half a mean share of the whole, whatever the weights.
  const price = Math.round(indications === 0 ? (whole * RULE.priceOnClean) / 100 : (RULE.price * whole) / indications);
  return {
    whole,
    indications,
    faces: faces.map((face) => {
      const ofFace = truths.filter((item) => item.face === face);
      const first = truths.findIndex((item) => item.face === face);
      const called = calls.filter((call) => call.face === face);
      return {
        truths: ofFace,
        targets: ofFace.map((item, position) => singleTarget(item, position, worth[first + position], tolerances)),
        pieces: called
          .map(toPiece)
          .filter((piece) => piece !== null)
          .sort(comparePieces),
        clutter: truth.clutter.filter((item) => item.face === face),
        unplaced: called.filter((call) => toPiece(call) === null).sort((a, b) => compareText(a.id, b.id)),
        price,
      };
    }),
  };
}

/** The best structure of a face: which calls stand for which truths. */
export function matchFace(section: FaceSection, tolerances: Tolerances): Block[] {
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
