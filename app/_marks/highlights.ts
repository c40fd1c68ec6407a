import type { Highlight } from "@/app/_bench";
import { hullWithRoom } from "@/lib/math";
import type { Call } from "@/lib/report";
import type { QuestionLine } from "@/lib/results";
import type { ClutterView, TruthView } from "./sheet-view";

/** Half width of the outline drawn for a call, which has no width of its own; mm. */
const CALL_HALF_WIDTH = 1.6;

/** Room between what was there and the line round it, so that the line does not cover it; mm. */
const ROOM = 0.9;

/** What was there, unbroken outline. */
export function truthHighlight(truth: TruthView, label: string): Highlight {
  return { id: truth.id, face: truth.face, style: "truth", outline: hullWithRoom(truth.outline, ROOM), label };
}

/** What lay where a false call was made, unbroken outline like all that was there. */
export function clutterHighlight({ id, face, outline }: ClutterView, label: string): Highlight {
  return { id, face, style: "truth", outline: hullWithRoom(outline, ROOM), label };
}

/** Half width of the stretch that a question is about, mm; it tells no place across the weld. */
const QUESTION_HALF_WIDTH = 9;
/** How far it is drawn beyond its ends, mm. */
const QUESTION_ROOM = 1.5;

/** The stretch of the weld that a question is about. */
export function questionHighlight(id: string, place: NonNullable<QuestionLine["place"]>): Highlight {
  const [from, to] = [place.start - QUESTION_ROOM, place.end + QUESTION_ROOM];
  return {
    id,
    face: place.face,
    style: "truth",
    outline: [
      [from, -QUESTION_HALF_WIDTH],
      [to, -QUESTION_HALF_WIDTH],
      [to, QUESTION_HALF_WIDTH],
      [from, QUESTION_HALF_WIDTH],
    ],
    label: "Q",
  };
}

/** What was called, broken outline; nothing where the call has no place. */
export function callHighlight(call: Call, label: string): Highlight | null {
  if (call.start === null || call.across === null) return null;
  const end = call.end ?? call.start;
  const from = Math.min(call.start, end) - (end === call.start ? CALL_HALF_WIDTH : 0);
  const to = Math.max(call.start, end) + (end === call.start ? CALL_HALF_WIDTH : 0);
  const low = call.across - CALL_HALF_WIDTH;
  const high = call.across + CALL_HALF_WIDTH;
  return {
    id: `call ${call.id}`,
    face: call.face,
    style: "call",
    outline: [
      [from, low],
      [to, low],
      [to, high],
      [from, high],
    ],
    label,
  };
}
