import { IMPERFECTION_TYPES, type ImperfectionType, imperfection, type SizeKind } from "../../imperfections";
import { DIMENSIONS, type Dimension } from "../../weld";
import { addMoments, type Moments, NO_MOMENTS } from "../tallies/moments";
import type { PieceTally } from "../tallies/piece-tally";
import type { TypeParts, TypeTallies } from "../tallies/type-tally";
import { type Agreement, agreementOf } from "./agreement";

/** How sizes of one kind are measured, over all types that have it, mm. */
export interface Sizing {
  readonly size: SizeKind;
  readonly agreement: Agreement;
}

/**
 * What is measured on a gauge, by kind of size: one hand reads depths one way, whatever the imperfection.
 * @param byLearner the same learner by learner, where it is of a class
 */
export function sizingByKind(types: TypeParts<"size">, byLearner?: readonly TypeParts<"size">[]): Sizing[] {
  const ofLearners = byLearner?.map(momentsByKind);
  return [...momentsByKind(types)].flatMap(([size, moments]) => {
    const agreement = agreementOf(
      moments,
      ofLearners?.map((kinds) => kinds.get(size) ?? NO_MOMENTS),
    );
    return agreement ? [{ size, agreement }] : [];
  });
}

function momentsByKind(types: TypeParts<"size">): ReadonlyMap<SizeKind, Moments> {
  const kinds = new Map<SizeKind, Moments>();
  for (const type of IMPERFECTION_TYPES) {
    const { size } = imperfection(type);
    const tally = types[type];
    if (size && tally) kinds.set(size, addMoments(kinds.get(size) ?? NO_MOMENTS, tally.size));
  }
  return kinds;
}

/** How sizes of single types are measured, mm, catalogue order; types with fewer than three sizes are left out. */
export const sizingByType = (
  types: TypeParts<"size">,
): { readonly type: ImperfectionType; readonly agreement: Agreement }[] =>
  IMPERFECTION_TYPES.flatMap((type) => {
    const tally = types[type];
    const agreement = tally ? agreementOf(tally.size) : null;
    return agreement ? [{ type, agreement }] : [];
  });

/** How places are written, over all types together, mm; null below three. */
export interface Placing {
  readonly start: Agreement | null;
  readonly end: Agreement | null;
  readonly across: Agreement | null;
}

export function placing(types: TypeTallies): Placing {
  const all = (part: "start" | "end" | "across") =>
    agreementOf(Object.values(types).reduce((sum, tally) => addMoments(sum, tally[part]), NO_MOMENTS));
  return { start: all("start"), end: all("end"), across: all("across") };
}

/**
 * How dimensions of whole pieces are measured, in each one's own unit; those with fewer than three values are left out.
 * @param byLearner the same learner by learner, where it is of a class
 */
export const dimensionSizing = (
  { dimensions }: Pick<PieceTally, "dimensions">,
  byLearner?: readonly Pick<PieceTally, "dimensions">[],
): { readonly dimension: Dimension; readonly agreement: Agreement }[] =>
  DIMENSIONS.flatMap((dimension) => {
    const tally = dimensions[dimension];
    const own = byLearner?.map((one) => one.dimensions[dimension]?.difference ?? NO_MOMENTS);
    const agreement = tally ? agreementOf(tally.difference, own) : null;
    return agreement ? [{ dimension, agreement }] : [];
  });
