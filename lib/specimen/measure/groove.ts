import { columnX } from "../../surface";
import type { Finished, Measured, Range, Side } from "./finished";
import { plateBeside } from "./plate-line";
import { columnsIn, gather, type Sounding, soundColumn } from "./sounding";
import { toeNear } from "./toe";

/** How a groove beside the weld is looked for, mm. */
export interface GrooveSearch {
  readonly side: Side;
  /** Along the weld. */
  readonly range: Range;
  /** Deeper than this below the plate's line counts as groove. */
  readonly threshold: number;
  /** Sound stretches up to this length do not end it. */
  readonly bridge: number;
}

/** Window across in which an undercut or a shrinkage groove is sounded: from inside the toe to outside it. */
const TOE_WINDOW = { inside: 0.8, outside: 3 };
const TOE_AVERAGED = 0.3;

/**
 * A groove along a toe. In every column: the largest depth below the straight line of the plate on that side
 * (`plateLine`), between 0.8 mm inside the toe and 3 mm outside it; the toe is averaged over +-0.3 mm. Size = largest
 * depth; start and end = longest stretch deeper than the threshold; width = span deeper than the threshold.
 */
export function measureToeGroove(face: Finished, search: GrooveSearch): Measured | null {
  return measureAlongEdge(face, search, (x) => toeNear(face, search.side, x, TOE_AVERAGED), TOE_WINDOW);
}

/**
 * The same beside any edge line y = edge(x), such as the corner of a prepared face: sounded from `inside` mm towards the
 * joint's centre to `outside` mm away from it.
 */
export function measureAlongEdge(
  face: Finished,
  search: GrooveSearch,
  edge: (x: number) => number,
  window: { readonly inside: number; readonly outside: number },
): Measured | null {
  const { side, threshold } = search;
  const soundings: Sounding[] = [];
  for (const i of columnsIn(face.strip, search.range)) {
    const x = columnX(face.strip.grid, i);
    const at = edge(x);
    if (Number.isNaN(at)) continue;
    const plate = plateBeside(face, side, x);
    const inner = at - side * window.inside;
    const outer = at + side * window.outside;
    const low = Math.min(inner, outer);
    const high = Math.max(inner, outer);
    soundings.push(soundColumn(face.strip, i, low, high, threshold, (z, y) => plate(y) - z));
  }
  return gather(soundings, face.strip.grid.perMm, threshold, search.bridge);
}
