import type { Family, ImperfectionType } from "@/lib/imperfections";
import type { SurfaceFace } from "@/lib/weld";

/** One line of a blueprint: so many indications of these kinds, in this size, there. */
export interface BlueprintLine {
  readonly count: number;
  readonly families: "any" | readonly Family[];
  /** Only these types of them; empty where all may come. */
  readonly types: readonly ImperfectionType[];
  readonly size: "any" | "small" | "medium" | "large";
  readonly place: "any" | "toe" | "run" | "weld" | "plate" | "stop";
}

/** What a blueprint asks of one face. */
export interface BlueprintFace {
  readonly face: SurfaceFace;
  readonly lines: readonly BlueprintLine[];
  /** Indications in all, from least to most. */
  readonly indications: readonly [number, number];
  /** Least length of weld without any indication, mm; null where the blueprint asks for none. */
  readonly cleanLength: number | null;
  /** Harmless features and clutter, from least to most. */
  readonly harmless: readonly [number, number];
}

/** What was worked out on pieces drawn for it, of the marks for indications. */
export interface Forecast {
  readonly pieces: number;
  /** Draws on which not everything had room; in their place others were drawn. */
  readonly failed: number;
  /** Mean, least and most over the pieces of the mark to be expected of somebody who just passes. */
  readonly mark: { readonly mean: number; readonly least: number; readonly most: number };
  /** Standard error of measurement, mean over the pieces, marks. */
  readonly sem: number;
}

/** A blueprint as its tutor reads it. */
export interface BlueprintView {
  readonly faces: readonly BlueprintFace[];
  /** Why no piece can be made of it; null where it can. */
  readonly refusal: string | null;
  /** What of the types asked for cannot be had, in words: pieces are made without it. Null where all can. */
  readonly unmet: string | null;
  /** So many indications fewer than the blueprint has by itself, since there are not enough of the types that alone may come. */
  readonly fewer: number;
  /** Null where it is refused. */
  readonly forecast: Forecast | null;
}
