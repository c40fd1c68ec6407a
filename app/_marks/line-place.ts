import type { AccountLine, QuestionLine } from "@/lib/results";
import type { SurfaceFace } from "@/lib/weld";
import type { SheetView } from "./sheet-view";

type Known = Pick<SheetView, "truths" | "calls">;

/** A place on a face to look at, mm. */
export interface LookedAt {
  readonly x: number;
  readonly y: number;
  readonly face: SurfaceFace;
}

/** The face that a line speaks of; null for a clean piece and for the lift to 0. */
export const faceOfLine = ({ truths, calls }: Known, line: AccountLine): SurfaceFace | null =>
  truths.find(({ id }) => line.truthIds.includes(id))?.face ??
  calls.find(({ id }) => line.callIds.includes(id))?.face ??
  null;

/** Where a line is to be looked at: the worst place of its truth, or else the middle of its call. */
export function placeOfLine(known: Known, line: AccountLine | null): LookedAt | null {
  if (!line) return null;
  const truth = placeOfTruth(known, line.truthIds[0]);
  if (truth) return truth;
  const call = known.calls.find((candidate) => candidate.id === line.callIds[0]);
  if (!call || call.start === null) return null;
  return { x: (call.start + (call.end ?? call.start)) / 2, y: call.across ?? 0, face: call.face };
}

/** The worst place of a truth. */
export function placeOfTruth({ truths }: Pick<Known, "truths">, id: string | null | undefined): LookedAt | null {
  const truth = truths.find((candidate) => candidate.id === id);
  return truth ? { x: truth.worst[0], y: truth.worst[1], face: truth.face } : null;
}

/** The middle of what a question is about. */
export function middleOfQuestion(line: QuestionLine | null): LookedAt | null {
  if (!line?.place) return null;
  const { face, start, end } = line.place;
  return { x: (start + end) / 2, y: 0, face };
}
