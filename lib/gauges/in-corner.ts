import type { Mm } from "../math";
import { LEG_BODY, SHOULDERS } from "./body";
import type { Heights } from "./heights";
import { STEEPEST } from "./kinds";
import type { FilletUse } from "./placement";
import { toGauge } from "./pose";
import type { RefusalCode } from "./refusals";
import { isSteady, type Seating, seatSole } from "./seat";
import { seatInCorner } from "./seat-in-corner";
import { type SectionPair, type Spot, stripAlong } from "./strip";
import { changedOver, clipped, touchFlat } from "./tip";

/** The furthest that a leg or a throat can be measured, mm. */
const RUN: Mm = 20;

/** What is pushed into a corner: a thickness across the blade, and for the throat an end so long along it. */
export interface CornerTool {
  readonly use: FilletUse;
  readonly thickness: Mm;
  readonly end: Mm;
}

/** Pushes a tool home into the corner of a fillet joint and measures a leg or the throat, mm. */
export function measureInCorner(
  heights: Heights,
  { x, turn }: Pick<Spot, "x" | "turn">,
  tool: CornerTool,
): { readonly seat: Seating; readonly height: Mm } | { readonly code: RefusalCode; readonly seat: Seating | null } {
  const { corner, extent } = heights;
  if (corner === null) return { code: "no-support", seat: null };
  if (x < extent.x0 || x > extent.x1) return { code: "off-plate", seat: null };
  const spot: Spot = { x, y: 0, turn };
  const reach = tool.use === "leg" ? LEG_BODY.sole.to : SHOULDERS.to;
  const section = stripAlong(heights, spot, -reach, reach, tool.thickness / 2);
  const seat = tool.use === "throat" ? seatInCorner(section) : seatAgainstPlate(section, 90 - corner / 2);
  if (!seat) return { code: "no-support", seat };
  if (!isSteady(seat)) return { code: "rocks", seat: null };
  if (Math.abs(seat.lean) > STEEPEST) return { code: "leans-too-far", seat };
  const height =
    tool.use === "leg"
      ? touchEdge(toGauge(seat.pose, section))
      : touchFlat(heights, spot, seat.pose, { u: 0, length: tool.end, thickness: tool.thickness, run: RUN });
  return height === null ? { code: "cannot-reach", seat } : { seat, height };
}

const seatAgainstPlate = (section: readonly SectionPair[], attitude: number): Seating | null =>
  seatSole(section, {
    pieces: [{ ...LEG_BODY.sole, level: 0, part: "foot" }],
    press: (LEG_BODY.sole.from + LEG_BODY.sole.to) / 2,
    attitude,
    nose: LEG_BODY.nose,
  });

/** Distance from the nose at which a knife edge that slides along the plate meets the weld, mm; null where nothing stands up. */
function touchEdge(section: readonly SectionPair[]): Mm | null {
  const { level, height } = LEG_BODY.edge;
  const lines = changedOver(upToToe(section.filter(([u]) => u < RUN + 1)));
  let best = Number.NEGATIVE_INFINITY;
  for (let n = 1; n < lines.length; n++) {
    const part = clipped(lines[n - 1], lines[n], level, level + height);
    if (!part) continue;
    const [a, b] = part;
    const steps = Math.max(1, Math.ceil((b[0] - a[0]) / 0.02));
    for (let k = 0; k <= steps; k++) {
      const w = a[0] + ((b[0] - a[0]) * k) / steps;
      const u = a[1] + ((b[1] - a[1]) * k) / steps;
      best = Math.max(best, u - setBack(w - level));
    }
  }
  return best === Number.NEGATIVE_INFINITY ? null : best;
}

/** Metal that rises less steeply than this leads up to nothing: it is the plate, with its rolling waves. */
const PLATE_SLOPE = 0.1;

/** What the edge cannot ride over, with the slope that leads up to it: scale and rolling waves before it are no toe. */
function upToToe(points: readonly SectionPair[]): readonly SectionPair[] {
  const { level, ridden } = LEG_BODY.edge;
  let last = points.length - 1;
  while (last >= 0 && points[last][1] <= ridden) last--;
  if (last < 0) return [];
  const leadsUp = (n: number) => points[n - 1][1] - points[n][1] > PLATE_SLOPE * (points[n][0] - points[n - 1][0]);
  while (last + 1 < points.length && points[last + 1][1] > level && leadsUp(last + 1)) last++;
  return points.slice(0, last + 2);
}

/** How far the knife edge's front lies behind its foremost point, `up` mm over its lower side: round, then a bevel. */
function setBack(up: Mm): Mm {
  const { radius, bevel } = LEG_BODY.edge;
  if (up < radius) return radius - Math.sqrt(radius ** 2 - (radius - up) ** 2);
  return (up - radius) / Math.tan((bevel * Math.PI) / 180);
}
