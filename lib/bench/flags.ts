import type { Px } from "../math";

/**
 * Row of each flag on the weld line, in the order given: 0 next to the line, 1 behind it for a flag that would cover
 * its neighbour. Where both rows are taken, the one that its left neighbour does not stand in.
 */
export function rowsOfFlags(places: readonly Px[], width: Px): readonly (0 | 1)[] {
  const rows: (0 | 1)[] = places.map(() => 0);
  let lastInFront = Number.NEGATIVE_INFINITY;
  let neighbour = 0 as 0 | 1;
  const fromLeft = places.map((_, index) => index).sort((a, b) => places[a] - places[b]);
  for (const index of fromLeft) {
    const isFree = places[index] - lastInFront >= width;
    neighbour = isFree || neighbour === 1 ? 0 : 1;
    rows[index] = neighbour;
    if (neighbour === 0) lastInFront = places[index];
  }
  return rows;
}
