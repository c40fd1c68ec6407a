import type { Degrees, Mm } from "../math";

/** The gauges of the tray, by the trade's general words (equipment that ISO 17637 names, and the kinds of its annex A). */
export const GAUGE_KINDS = [
  "steel-rule",
  "caliper",
  "height-gauge",
  "depth-gauge",
  "hook-gauge",
  "fillet-gauge",
  "fillet-blades",
  "profile-comb",
  "feeler",
] as const;
export type GaugeKind = (typeof GAUGE_KINDS)[number];

/** Kinds with a scale and a part that moves along it until it touches. */
export type MeasuringKind = "caliper" | "height-gauge" | "depth-gauge" | "hook-gauge" | "fillet-gauge";

/** What comes to the metal: a flat end `length` mm long, or a point with a round end on a cone on a rod. */
export type Tip =
  | { readonly shape: "flat"; readonly length: Mm }
  | { readonly shape: "point"; readonly radius: Mm; readonly halfAngle: Degrees; readonly rodRadius: Mm };

export interface GaugeFacts {
  readonly name: string;
  readonly measures: string;
  /** Of the scale, or null where shapes are compared. */
  readonly range: { readonly lowest: Mm; readonly highest: Mm } | null;
  /** What it is read to, mm. */
  readonly step: Mm;
  /** Parts of its vernier, or null where the nearest line is read. */
  readonly vernier: number | null;
  /** Standard deviation that setting it down adds to what it shows, mm. */
  readonly noise: Mm;
  /** Across the blade, mm: a foot comes to rest on the highest point of a strip so wide. */
  readonly thickness: Mm;
  readonly feet: { readonly stand: string; readonly length: Mm };
  readonly moving: { readonly runs: string; readonly tip: Tip } | null;
  /** It has to stand square to the weld, within `STEEPEST`. */
  readonly isSquare: boolean;
}

/** A gauge that leans more, or stands further from square to the weld, is not read, degrees. Common practice, no source. */
export const STEEPEST: Degrees = 15;

/**
 * What the gauges can do. Ranges, steps and noise are from memory of the kinds in ISO 17637 annex A, and no quotation of
 * it; the depth gauge and the hook gauge run 1 mm past nought so that nought can be checked on flat plate.
 */
export const GAUGES: Readonly<Record<GaugeKind, GaugeFacts>> = {
  "steel-rule": {
    name: "Steel rule",
    measures: "positions, lengths, widths",
    range: { lowest: 0, highest: 300 },
    step: 0.5,
    vernier: null,
    noise: 0.3,
    thickness: 0.8,
    feet: { stand: "edge along the plate", length: 300 },
    moving: null,
    isSquare: false,
  },
  caliper: {
    name: "Vernier caliper",
    measures: "thickness of the plates, over an edge",
    range: { lowest: 0, highest: 40 },
    step: 0.1,
    vernier: 10,
    noise: 0.05,
    thickness: 3,
    feet: { stand: "a fixed jaw under the plate, the other one over it, in from an edge", length: 40 },
    moving: { runs: "a jaw along the beam", tip: { shape: "flat", length: 40 } },
    isSquare: true,
  },
  "height-gauge": {
    name: "Butt-weld height gauge",
    measures: "height of cap and root over the plate",
    range: { lowest: -5, highest: 15 },
    step: 0.1,
    vernier: 10,
    noise: 0.1,
    thickness: 3,
    feet: { stand: "two, straddling the weld or both on one side of it", length: 2 },
    moving: { runs: "a slide, square to the feet", tip: { shape: "flat", length: 1.6 } },
    isSquare: false,
  },
  "depth-gauge": {
    name: "Depth gauge",
    measures: "depth of undercut, pits, craters, concavity",
    range: { lowest: -1, highest: 8 },
    step: 0.1,
    vernier: null,
    noise: 0.08,
    thickness: 2,
    feet: { stand: "two, 10 mm apart or more", length: 2 },
    moving: {
      runs: "a pointed rod, square to the feet",
      tip: { shape: "point", radius: 0.3, halfAngle: 15, rodRadius: 0.8 },
    },
    isSquare: false,
  },
  "hook-gauge": {
    name: "Hook gauge",
    measures: "linear misalignment of two plates",
    range: { lowest: -1, highest: 10 },
    step: 0.1,
    vernier: 10,
    noise: 0.1,
    thickness: 3,
    feet: { stand: "a sole on the higher plate, the slide's foot on the other", length: 14 },
    moving: { runs: "a slide, square to the sole", tip: { shape: "flat", length: 3 } },
    isSquare: true,
  },
  "fillet-gauge": {
    name: "Leg-and-throat fillet gauge",
    measures: "leg lengths and throat of a fillet weld",
    range: { lowest: 0, highest: 20 },
    step: 0.1,
    vernier: 10,
    noise: 0.15,
    thickness: 3,
    feet: { stand: "a sole on one plate and a nose to the other, or 45-degree shoulders on both", length: 12 },
    moving: { runs: "a slide along the plate, or along the bisector", tip: { shape: "flat", length: 1.6 } },
    isSquare: true,
  },
  "fillet-blades": {
    name: "Set of fillet blades",
    measures: "throat or leg of a fillet weld, by fit",
    range: { lowest: 3, highest: 12 },
    step: 0.5,
    vernier: null,
    noise: 0,
    thickness: 1.2,
    feet: { stand: "a 90-degree back in the corner of the plates", length: 12 },
    moving: null,
    isSquare: true,
  },
  "profile-comb": {
    name: "Profile comb",
    measures: "shape of a section, to compare",
    range: null,
    step: 0.8,
    vernier: null,
    noise: 0,
    thickness: 0.8,
    feet: { stand: "its pins", length: 0.8 },
    moving: { runs: "each pin by itself", tip: { shape: "point", radius: 0.4, halfAngle: 0, rodRadius: 0.4 } },
    isSquare: false,
  },
  feeler: {
    name: "Feeler set",
    measures: "root gap, gap under a plate",
    range: { lowest: 0.1, highest: 3 },
    step: 0.1,
    vernier: null,
    noise: 0,
    thickness: 12.7,
    feet: { stand: "none", length: 0 },
    moving: null,
    isSquare: false,
  },
};

/** Sizes of the fillet blades, mm: in steps of 0.5 to 7, then 8, 10, 12 (from memory of ISO 17637 annex A, no quotation). */
export const BLADE_SIZES: readonly Mm[] = [3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7, 8, 10, 12];

/** Leaves of the feeler set, mm: 0.1 to 3 in steps of 0.1 (ISO 17637 asks for steps of at most 0.1). */
export const FEELER_LEAVES: readonly Mm[] = Array.from({ length: 30 }, (_, n) => (n + 1) / 10);
