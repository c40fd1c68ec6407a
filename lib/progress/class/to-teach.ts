import type { Clutter, SizeKind } from "../../imperfections";
import { DEFAULT_DIMENSION_TOLERANCES, DEFAULT_TOLERANCES } from "../../results";
import type { Dimension } from "../../weld";
import type { Agreement } from "../statistics/agreement";
import type { FalseCallRate } from "../statistics/false-calls";
import type { Confusion } from "../statistics/naming";
import type { Share } from "../statistics/share";
import type { dimensionSizing, Sizing } from "../statistics/sizing";
import type { MissedType } from "./missed-types";

/** What is read too large or too small: sizes of a kind, or a dimension. */
export type Misread =
  | { readonly size: SizeKind; readonly agreement: Agreement }
  | { readonly dimension: Dimension; readonly agreement: Agreement };

/** What is worth teaching a class next, one of each kind; null where nothing is, or not enough is known. */
export interface ToTeach {
  readonly missed: MissedType | null;
  readonly confused: Confusion | null;
  readonly misread: Misread | null;
  readonly called: { readonly kind: Clutter; readonly called: Share } | null;
}

/** What is not worth an afternoon. Common practice, no source. */
const LEAST = {
  /** A type that a class finds more often than this is found. */
  found: 0.75,
  /** Finds that were called the other type, and their share. */
  confused: 5,
  confusedShare: 0.1,
  /** Of what marking allows in full. */
  bias: 0.5,
  calledShare: 0.1,
} as const;

interface Figures {
  readonly missed: readonly MissedType[];
  readonly confusions: readonly Confusion[];
  readonly sizes: readonly Sizing[];
  readonly dimensions: ReturnType<typeof dimensionSizing>;
  readonly falseCalls: FalseCallRate;
}

/** Picks from the figures of a class; a type that most of it finds fewer than half of goes before one that few miss often. */
export function toTeach({ missed, confusions, sizes, dimensions, falseCalls }: Figures): ToTeach {
  const known = missed.filter(isMissedOften);
  return {
    missed: known.find(isOfMost) ?? known[0] ?? null,
    confused:
      confusions.find(({ there, back, share }) => there + back >= LEAST.confused && share >= LEAST.confusedShare) ??
      null,
    misread: mostMisread([...sizes, ...dimensions]),
    called: falseCalls.on.find(({ called }) => called.needed === 0 && (called.share ?? 0) >= LEAST.calledShare) ?? null,
  };
}

/** Whether enough is known of a type to say that a class misses it often. */
export const isMissedOften = ({ found }: MissedType): boolean => found.needed === 0 && (found.share ?? 1) < LEAST.found;

/** Whether most learners of whom it can be said find fewer than half; of a single one it is not said of a class. */
export const isOfMost = ({ judged, belowHalf }: MissedType): boolean => judged > 1 && 2 * belowHalf > judged;

function mostMisread(all: readonly Misread[]): Misread | null {
  const [worst] = all
    .filter(({ agreement }) => agreement.needed === 0 && agreement.direction !== "neither")
    .map((misread) => ({ misread, of: Math.abs(misread.agreement.bias) / allowed(misread) }))
    .filter(({ of }) => of >= LEAST.bias)
    .sort((a, b) => b.of - a.of);
  return worst?.misread ?? null;
}

/** How far it may be off for full marks, in its own unit. */
const allowed = (misread: Misread): number =>
  "size" in misread ? DEFAULT_TOLERANCES.size.full : DEFAULT_DIMENSION_TOLERANCES[misread.dimension];
