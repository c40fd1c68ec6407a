import { openFile, PRACTICE, type Work } from "@/lib/printing";
import { readSitting } from "@/prisma/stores/sittings";
import type { Caller } from "../caller";
import { requireFileKind } from "../permissions";
import { printedSheetOf } from "../printed-sheet-of";
import { satOfLearner } from "../sat-of-learner";
import { workOf } from "../sittings/sat-sections";
import { readMarkSheet } from "./read-mark-sheet";

/** The marks of one handed-in practice as a CSV file, for whoever may read its mark sheet. */
export async function writePracticeFile(caller: Caller, id: string, kind: string) {
  const read = await readMarkSheet(caller, id);
  if (!read.ok) return read;
  const known = requireFileKind(kind);
  if (!known.ok) return known;
  const file = openFile(known.kind);
  file.add(printedSheetOf(read.sheet, read.learner, await workOn(caller, read)));
  return { ok: true, name: `${known.kind}-of-piece-${id}`, text: file.text() } as const;
}

type Read = Extract<Awaited<ReturnType<typeof readMarkSheet>>, { readonly ok: true }>;

async function workOn(caller: Caller, { sheet, learner, sittingId }: Read): Promise<Work> {
  if (sittingId === null) return PRACTICE;
  const found = (await satOfLearner(caller, learner.id)).find(({ practiceId }) => practiceId === sheet.practice.id);
  if (found) return workOf(found);
  // its sitting is still on, so that nothing is placed yet
  const stored = await readSitting(sittingId);
  return { kind: "sitting", paper: stored?.sitting.paper.name ?? "", attempt: null, round: null, isVoid: false };
}
