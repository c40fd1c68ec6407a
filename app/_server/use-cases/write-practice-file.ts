import { openFile } from "@/lib/printing";
import type { Caller } from "../caller";
import { requireFileKind } from "../permissions";
import { printedSheetOf } from "../printed-sheet-of";
import { readMarkSheet } from "./read-mark-sheet";

/** The marks of one handed-in practice as a CSV file, for whoever may read its mark sheet. */
export async function writePracticeFile(caller: Caller, id: string, kind: string) {
  const read = await readMarkSheet(caller, id);
  if (!read.ok) return read;
  const known = requireFileKind(kind);
  if (!known.ok) return known;
  const file = openFile(known.kind);
  file.add(printedSheetOf(read.sheet, read.learner));
  return { ok: true, name: `${known.kind}-of-piece-${id}`, text: file.text() } as const;
}
