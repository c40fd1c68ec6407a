import type { ScreenPoint, Viewport } from "@/lib/bench";
import type { Call, Report } from "@/lib/report";
import { markBox, type PlaceOfCall } from "../overlay/call-marks";

/** The indication whose mark lies under a point of the screen; the smallest where marks overlap. */
export function callAt(report: Report, view: Viewport, placeOf: PlaceOfCall, at: ScreenPoint): Call | null {
  const hits = report.calls
    .flatMap((call) => {
      const box = markBox(call, view, placeOf);
      return box ? [{ call, box }] : [];
    })
    .filter(
      ({ box }) =>
        at.left >= box.left - box.half &&
        at.left <= box.right + box.half &&
        Math.abs(at.top - box.top + 9) <= box.half + 9,
    )
    .sort((a, b) => a.box.right - a.box.left - (b.box.right - b.box.left));
  return hits[0]?.call ?? null;
}
