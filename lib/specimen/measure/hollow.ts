import { columnX } from "../../surface";
import type { AcrossSearch } from "./crown";
import type { Finished, Measured } from "./finished";
import { plateChord } from "./plate-line";
import { columnsIn, gather, type Sounding, soundColumn } from "./sounding";
import { toeNear } from "./toe";

/** Where the line that a hollow is measured from ends, y mm on plate B's and on plate A's side at x. */
export type ChordEnds = (x: number) => readonly [low: number, high: number];

/** From joint edge to joint edge, `half` mm to both sides of the centre. */
export const betweenEdges =
  (half: number): ChordEnds =>
  () => [-half, half];

const TOE_AVERAGED = 0.6;

/** From toe to toe of the weld, each averaged over +-0.6 mm. */
export const betweenToes =
  (face: Finished): ChordEnds =>
  (x) => [toeNear(face, -1, x, TOE_AVERAGED), toeNear(face, 1, x, TOE_AVERAGED)];

/**
 * Depth of a hollow in the joint: in every column the largest depth below the straight line between the fitted plates at
 * the chord's two ends, sounded over the middle `share` of the chord. Size = largest depth; start and end = longest
 * stretch deeper than the threshold; width = span deeper than the threshold.
 */
export function measureHollow(face: Finished, ends: ChordEnds, share: number, search: AcrossSearch): Measured | null {
  const { strip } = face;
  const soundings: Sounding[] = [];
  for (const i of columnsIn(strip, search.range)) {
    const x = columnX(strip.grid, i);
    const [low, high] = ends(x);
    if (Number.isNaN(low) || Number.isNaN(high)) continue;
    const chord = plateChord(face, x, low, high);
    const spare = (0.5 - 0.5 * share) * (high - low);
    soundings.push(soundColumn(strip, i, low + spare, high - spare, search.threshold, (z, y) => chord(y) - z));
  }
  return gather(soundings, strip.grid.perMm, search.threshold, search.bridge);
}
