import type { SurfaceFace } from "../../weld";

/** Families: what is alike in kind. A call in the right family earns half of the marks for the type. */
export const FAMILIES = [
  "crack",
  "cavity",
  "slag",
  "fusion",
  "toe-groove",
  "excess-metal",
  "missing-metal",
  "overlap",
  "restart",
  "misalignment",
  "shape",
  "surface-mark",
] as const;
export type Family = (typeof FAMILIES)[number];

/** What a gauge measures on an imperfection. */
export type SizeKind = "depth" | "height" | "diameter" | "difference" | "gap";

/** A finer row of ISO 6520-1. */
export interface SubRow {
  readonly number: string;
  readonly name: string;
}

export interface Imperfection {
  /** Reference number of ISO 6520-1. */
  readonly number: string;
  readonly name: string;
  /** Rows of ISO 6520-1 below this one that an eye names no further. */
  readonly includes?: readonly SubRow[];
  readonly family: Family;
  /** Types that an eye easily takes for this one although their family differs; they count as the same family in marking. */
  readonly alike: readonly string[];
  /** Where it can occur; those of a fillet alone never on a butt plate. */
  readonly faces: readonly SurfaceFace[];
  /** A point has one position along the weld, a line a start and an end. */
  readonly extent: "point" | "line";
  /** What is measured, or null where nobody measures anything but the extent. */
  readonly size: SizeKind | null;
  /** Below this size (mm) it is visible but not recorded. */
  readonly recordedFrom: number;
  /** Below this length (mm) it is not recorded. */
  readonly recordedLength: number;
  /** Risk, 1 to 1.5: planar imperfections weigh most. */
  readonly weight: number;
  /** Where to look and what it looks like, for the learner's catalogue. */
  readonly looks: string;
}

/** Catalogue rows of one family, by type. */
export type RowsOf<F extends Family> = Readonly<Record<string, Imperfection & { readonly family: F }>>;
