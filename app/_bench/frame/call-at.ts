import type { ScreenPoint, Viewport } from "@/lib/bench";
import type { Call, Report } from "@/lib/report";
import type { Face } from "@/lib/weld";
import { markBox } from "../overlay/call-marks";

/** The indication whose mark lies under a point of the screen; the smallest where marks overlap. */
export function callAt(report: Report, view: Viewport, face: Face, at: ScreenPoint): Call | null {
  const hits = report.calls
    .filter((call) => call.face === face && call.start !== null)
    .map((call) => ({ call, box: markBox(call, view, face) }))
    .filter(
      ({ box }) =>
        at.left >= box.left - box.half &&
        at.left <= box.right + box.half &&
        Math.abs(at.top - box.top + 9) <= box.half + 9,
    )
    .sort((a, b) => a.box.right - a.box.left - (b.box.right - b.box.left));
  return hits[0]?.call ?? null;
}
