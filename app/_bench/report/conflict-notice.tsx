"use client";
import type { Report } from "@/lib/report";
import { timeOf } from "./call-words";
import type { Conflict } from "./use-autosave";

export interface ConflictNoticeProps {
  readonly conflict: Conflict;
  /** What this window has. */
  readonly here: Report;
  /** Whether the report is closed here, so that only answers can differ. */
  readonly isClosed: boolean;
  readonly marksUrl: string;
  readonly onTakeOther: () => void;
  readonly onKeepThis: () => void;
  /** Goes on from the report as it was closed elsewhere. */
  readonly onTakeClosed: () => void;
}

/** Another window wrote the same report: what each of them has, and the choice between the two. */
export function ConflictNotice(props: ConflictNoticeProps) {
  const { conflict, here, isClosed, marksUrl, onTakeOther, onKeepThis, onTakeClosed } = props;
  const button = "min-h-11 rounded border border-action px-3 text-action hover:bg-action hover:text-sheet";
  const amount = isClosed ? answers : rows;
  return (
    <div
      role="alert"
      data-conflict=""
      className="shrink-0 space-y-2 border-lamp border-b-4 bg-sheet p-3 text-ink text-sm"
    >
      {conflict.kind === "newer" && (
        <>
          <p>
            <b>
              Another window saved {isClosed ? "answers" : "this report"}
              {conflict.version.savedAt && ` at ${timeOf(conflict.version.savedAt)}`}: {amount(conflict.version.report)}
              . Here: {amount(here)}.
            </b>{" "}
            What you write here is kept in this browser and not saved until you choose.
          </p>
          <div className="flex flex-wrap gap-2">
            <button type="button" className={button} onClick={onTakeOther}>
              Use the other window's
            </button>
            <button type="button" className={button} onClick={onKeepThis}>
              Use this one
            </button>
          </div>
          <p className="text-ink-2 text-xs">
            If you use the other window's, Undo brings {isClosed ? "the answers" : "the rows"} of this one back.
          </p>
        </>
      )}
      {conflict.kind === "report-closed" && (
        <>
          <p>
            <b>Another window closed this report.</b> It is kept as it was there. What was written here and not saved
            before is not part of it. The questions come next.
          </p>
          <button type="button" className={button} onClick={onTakeClosed}>
            Go on to the questions
          </button>
        </>
      )}
      {conflict.kind === "handed-in" && (
        <>
          <p>
            <b>Another window handed this report in.</b> What was written here afterwards is not part of it.
          </p>
          <a href={marksUrl} className={`${button} inline-flex items-center`}>
            Open the mark sheet
          </a>
        </>
      )}
    </div>
  );
}

const rows = ({ calls }: Report): string => `${calls.length} ${calls.length === 1 ? "row" : "rows"}`;

function answers({ answers: given }: Report): string {
  const count = Object.keys(given).length;
  return `${count} ${count === 1 ? "question" : "questions"} answered`;
}
