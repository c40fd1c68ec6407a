import { imperfection } from "../../../lib/imperfections";
import type { Call } from "../../../lib/report";
import type { TruthItem } from "../../../lib/specimen";
import { PIECES } from "../../../lib/weld";
import { type Hand, tenth } from "./hand";

/** The row of an imperfection that was found and named: its places read off a rule, its size as measured. */
export function callOf(item: TruthItem, id: string, size: number | null, hand: Hand): Call {
  const { length, halfWidth } = PIECES[item.face === "fillet" ? "fillet" : "butt"];
  const isPoint = imperfection(item.type).extent === "point";
  const start = hand.place(isPoint ? (item.start + item.end) / 2 : item.start, 0, length);
  return {
    id,
    face: item.face,
    type: item.type,
    start,
    end: isPoint ? null : Math.max(start, hand.place(item.end, 0, length)),
    across: hand.place(item.across, -halfWidth, halfWidth),
    size: size === null || Number.isNaN(size) ? null : tenth(Math.abs(size)),
    sentence: null,
  };
}
