import { median } from "../../math";
import { columnX, sampleAt } from "../../surface";
import { edgeOfWeld, SEARCH_FROM } from "./edge-of-weld";
import type { Finished, Measured, Range, Side } from "./finished";
import { plateBeside } from "./plate-line";
import { columnsIn, gather, type Sounding } from "./sounding";

/** A rolled lip rises at least LIP_RISE above the plate at LIP_INSIDE from its edge, mm. */
const LIP_INSIDE = 0.35;
const LIP_RISE = 0.4;
/** Beyond each end, the toe is taken as sound between these distances, mm. */
const SOUND_TOE: Range = { from: 3, to: 9 };

export interface OverlapSearch {
  readonly side: Side;
  readonly range: Range;
  /** How far the edge must reach out over the sound toe's line, mm. */
  readonly threshold: number;
  readonly bridge: number;
}

/** The ends of an overlap decide where its sound toe is looked for: they are found again until they stay, at most so often. */
const PASSES = 8;

/**
 * Weld metal rolled out over the plate. In every column the weld's edge is the outermost metal more than 0.12 mm above
 * the plate's line. The sound toe is the straight line between the median edges 3 to 9 mm before the start and after the
 * end. Overlap is where the edge lies further out than that line by more than the threshold and the lip stands at least
 * 0.4 mm above the plate 0.35 mm inside its edge. Size and width = largest reach.
 */
export function measureOverlap(face: Finished, search: OverlapSearch): Measured | null {
  const edges = new Map<number, Edge>();
  const edgeAt = (i: number): Edge => {
    const known = edges.get(i);
    if (known) return known;
    const made = findEdge(face, search, i);
    edges.set(i, made);
    return made;
  };
  let ends: Range = search.range;
  let found: Measured | null = null;
  for (let pass = 0; pass < PASSES; pass++) {
    found = reachBeyond(face, search, ends, edgeAt);
    if (!found) return null;
    const { from, to } = ends;
    ends = { from: found.start, to: found.end };
    if (from === ends.from && to === ends.to) break;
  }
  return found;
}

/** The weld's edge in one column, and how high the metal stands a little inside it. */
interface Edge {
  readonly x: number;
  readonly y: number;
  readonly hasLip: boolean;
}

function findEdge(face: Finished, { side }: OverlapSearch, i: number): Edge {
  const { strip } = face;
  const toe = side < 0 ? face.toeMinus : face.toePlus;
  const x = columnX(strip.grid, i);
  const plate = plateBeside(face, side, x);
  const y = edgeOfWeld(strip, i, plate, side, toe[i] + side * SEARCH_FROM);
  const inside = y - side * LIP_INSIDE;
  return { x, y, hasLip: sampleAt(strip.grid, strip.z, x, inside) - plate(inside) >= LIP_RISE };
}

/** One pass: the sound toe taken beyond the given ends, and what reaches out over it. */
function reachBeyond(face: Finished, search: OverlapSearch, ends: Range, edgeAt: (i: number) => Edge): Measured | null {
  const { side, range, threshold } = search;
  const soundEdge = (from: number, to: number) =>
    median(
      columnsIn(face.strip, { from, to })
        .map((i) => edgeAt(i).y)
        .filter((y) => !Number.isNaN(y)),
    );
  const before = soundEdge(ends.from - SOUND_TOE.to, ends.from - SOUND_TOE.from);
  const after = soundEdge(ends.to + SOUND_TOE.from, ends.to + SOUND_TOE.to);
  const soundings = columnsIn(face.strip, range).map((i): Sounding => {
    const { x, y, hasLip } = edgeAt(i);
    const sound = before + ((after - before) * (x - ends.from)) / (ends.to - ends.from);
    const reach = hasLip ? (y - sound) * side : 0;
    return { x, value: reach, y, low: Math.min(y, sound), high: Math.max(y, sound) };
  });
  return gather(soundings, face.strip.grid.perMm, threshold, search.bridge);
}
