import { columnX } from "../../surface";
import type { AcrossSearch } from "./crown";
import type { Finished, Measured } from "./finished";
import { plateChord } from "./plate-line";
import { columnsIn, gather, type Sounding, soundColumn } from "./sounding";

/**
 * Depth of a hollow in the joint: in every column the largest depth below the straight line between the fitted plates at
 * y = -half and y = +half, sounded between these two. Size = largest depth; start and end = longest stretch deeper than
 * the threshold; width = span deeper than the threshold.
 */
export function measureHollow(face: Finished, half: number, search: AcrossSearch): Measured | null {
  const soundings: Sounding[] = columnsIn(face.strip, search.range).map((i) => {
    const chord = plateChord(face, columnX(face.strip.grid, i), -half, half);
    return soundColumn(face.strip, i, -half, half, search.threshold, (z, y) => chord(y) - z);
  });
  return gather(soundings, face.strip.grid.perMm, search.threshold, search.bridge);
}
