import { clamp } from "../../math";

/** Distance between two values of a table, mm of travel. */
export const STEP = 0.02;

/** One ripple of a run: its place and length in mm of travel, its height in ripple heights. */
export interface Ripple {
  readonly from: number;
  readonly length: number;
  readonly amplitude: number;
  /** Where along it the crest lies, 0..1. */
  readonly crest: number;
  readonly level: number;
  readonly tint: number;
  readonly reach: number;
}

/** Place of a travel in a table that begins at `start`, bounded to it. */
export const indexOf = (travel: number, start: number, size: number): number =>
  clamp(Math.floor((travel - start) / STEP), 0, size - 1);
