import type { WritingWindow } from "@/lib/practice";
import type { Question } from "@/lib/questions";
import type { Report } from "@/lib/report";
import { database } from "../client";
import { questionsColumn, reportColumn } from "../columns";

export interface Save {
  readonly sequence: number;
  readonly report: Report;
  readonly savedAt: Date;
  readonly window?: WritingWindow;
  /** When the report was closed, as far as is known; null where it was not. */
  readonly reportClosedAt: Date | null;
}

/**
 * Stores a report under its number, unless a newer one is there, or one that its window has not seen, or the report was closed
 * meanwhile, or the practice is handed in: then false.
 */
export async function saveReport(id: string, save: Save): Promise<boolean> {
  const { sequence, report, savedAt, window, reportClosedAt } = save;
  const hasSeen = window && { OR: [{ sequence: { lte: window.base } }, { windowId: window.id }] };
  const { count } = await database().practice.updateMany({
    where: { id, state: "open", reportClosedAt, sequence: { lt: sequence }, ...hasSeen },
    data: { sequence, savedAt, report: reportColumn.write(report), windowId: window?.id ?? null },
  });
  return count === 1;
}

/** What closes a report: the questions that follow, and the number of the save that it stands with. */
export interface ReportClosing {
  readonly sequence: number;
  readonly questions: readonly Question[];
  readonly reportClosedAt: Date;
}

/** Closes a report for good, with its questions; false if it is closed or handed in already, or was saved again meanwhile. */
export async function closeReport(
  id: string,
  { sequence, questions, reportClosedAt }: ReportClosing,
): Promise<boolean> {
  const { count } = await database().practice.updateMany({
    where: { id, state: "open", reportClosedAt: null, sequence },
    data: { reportClosedAt, questions: questionsColumn.write([...questions]) },
  });
  return count === 1;
}

/** The questions of a practice with their keys, for nobody but the server; none before its report is closed. */
export async function readQuestions(id: string): Promise<readonly Question[]> {
  const row = await database().practice.findUnique({ where: { id }, select: { questions: true } });
  return row?.questions ? questionsColumn.read(row.questions) : [];
}
