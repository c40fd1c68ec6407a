import { type Mm, roundTo } from "../math";
import { betweenJaws } from "./between-jaws";
import { pressedAt, senseOf, undersideOf } from "./body";
import type { Heights } from "./heights";
import { measureInCorner } from "./in-corner";
import { GAUGES, STEEPEST, type Tip } from "./kinds";
import { type SeatingRandom, seatingNoise } from "./noise";
import type { CaliperPlacement, FeetPlacement, FilletPlacement, GaugePlacement, HookPlacement } from "./placement";
import { type Refusal, type RefusalCode, refuse } from "./refusals";
import { isSteady, type Seating, seatSole } from "./seat";
import { offSquare, type Spot, stripAlong } from "./strip";
import { touchFlat, touchPoint } from "./tip";

/** A gauge that stands on the metal and can be read. Scale values are mm. */
export interface Standing {
  readonly ok: true;
  readonly placement: GaugePlacement;
  readonly seat: Seating;
  /** Where the moving part meets the metal, over the seated reference and in the direction the scale counts. */
  readonly exact: Mm;
  /** What seating adds to that on the scale. */
  readonly noise: Mm;
  /** Where on the scale the moving part stops: `exact` and `noise` together. */
  readonly stop: Mm;
  /** What a careful reader reads there: `stop` to the gauge's own step. */
  readonly reading: Mm;
  /** What touches: the end of the moving part, or the flank above a point's round end. */
  readonly touch: "end" | "flank";
}

type Touch = { readonly height: Mm; readonly by: "end" | "flank" };
type Found =
  | { readonly seat: Seating; readonly touch: Touch }
  | { readonly code: RefusalCode; readonly seat: Seating | null };

/**
 * Sets a gauge down and runs its moving part to the metal. `random` belongs to the attempt and the face; the same
 * placement gives the same reading every time. Refuses with a code; REFUSAL_REASONS has the words.
 */
export function setDown(heights: Heights, placement: GaugePlacement, random: SeatingRandom): Standing | Refusal {
  const { kind } = placement;
  const facts = GAUGES[kind];
  if (facts.isSquare && offSquare(placement) > STEEPEST) return refuse(kind, "not-square");
  const found = meet(heights, placement);
  if ("code" in found) return refuse(kind, found.code, found.seat);
  const { seat, touch } = found;
  const exact = senseOf(placement) * touch.height;
  const noise = seatingNoise(random, placement);
  const stop = exact + noise;
  const reading = roundTo(stop, facts.step) + 0;
  if (facts.range === null || reading < facts.range.lowest || reading > facts.range.highest) {
    return refuse(kind, "out-of-range", seat);
  }
  return { ok: true, placement, seat, exact, noise, stop, reading, touch: touch.by };
}

function meet(heights: Heights, placement: GaugePlacement): Found {
  switch (placement.kind) {
    case "fillet-gauge":
      return inCorner(heights, placement);
    case "caliper":
      return overEdge(heights, placement);
    default:
      return onFeet(heights, placement);
  }
}

function overEdge(heights: Heights, placement: CaliperPlacement): Found {
  const found = betweenJaws(heights, placement, GAUGES.caliper.thickness);
  return "code" in found ? found : { seat: found.seat, touch: { height: found.apart, by: "end" } };
}

function onFeet(heights: Heights, placement: FeetPlacement | HookPlacement): Found {
  const { x0, x1, y0, y1 } = heights.extent;
  const { x, y, kind } = placement;
  if (x < x0 || x > x1 || y < y0 || y > y1) return { code: "off-plate", seat: null };
  const { thickness, moving, range } = GAUGES[kind];
  const pieces = undersideOf(placement);
  const from = Math.min(...pieces.map((piece) => piece.from)) - 1;
  const to = Math.max(...pieces.map((piece) => piece.to)) + 1;
  const section = stripAlong(heights, placement, from, to, thickness / 2);
  const hangs = pieces.some(
    (piece) => piece.part === "foot" && !section.some(([along]) => along >= piece.from && along <= piece.to),
  );
  if (hangs) return { code: "no-support", seat: null };
  const seat = seatSole(section, { pieces, press: pressedAt(placement), attitude: 0, nose: null });
  if (!seat) return { code: "no-support", seat };
  if (!isSteady(seat)) return { code: "rocks", seat: null };
  if (Math.abs(seat.lean) > STEEPEST) return { code: "leans-too-far", seat };
  const run = Math.max(Math.abs(range?.lowest ?? 0), Math.abs(range?.highest ?? 0));
  const touch = moving && touchWith(heights, placement, seat, moving.tip, thickness, run);
  return touch ? { seat, touch } : { code: "cannot-reach", seat };
}

function touchWith(heights: Heights, spot: Spot, { pose }: Seating, tip: Tip, thickness: Mm, run: Mm): Touch | null {
  if (tip.shape === "point") return touchPoint(heights, spot, pose, { ...tip, u: 0, run });
  const height = touchFlat(heights, spot, pose, { u: 0, length: tip.length, thickness, run });
  return height === null ? null : { height, by: "end" };
}

function inCorner(heights: Heights, placement: FilletPlacement): Found {
  const { thickness } = GAUGES["fillet-gauge"];
  const found = measureInCorner(heights, placement, { use: placement.use, thickness, end: 1.6 });
  return "code" in found ? found : { seat: found.seat, touch: { height: found.height, by: "end" } };
}
