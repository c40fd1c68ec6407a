"use client";
import { timeOf } from "./call-words";
import type { Conflict } from "./use-autosave";

export interface ConflictNoticeProps {
  readonly conflict: Conflict;
  /** How many rows this window has. */
  readonly rowsHere: number;
  readonly marksUrl: string;
  readonly onTakeOther: () => void;
  readonly onKeepThis: () => void;
}

/** Another window wrote the same report: what each of them has, and the choice between the two. */
export function ConflictNotice({ conflict, rowsHere, marksUrl, onTakeOther, onKeepThis }: ConflictNoticeProps) {
  const button = "min-h-11 rounded border border-action px-3 text-action hover:bg-action hover:text-sheet";
  return (
    <div
      role="alert"
      data-conflict=""
      className="shrink-0 space-y-2 border-lamp border-b-4 bg-sheet p-3 text-ink text-sm"
    >
      {conflict.kind === "newer" ? (
        <>
          <p>
            <b>
              Another window saved this report
              {conflict.version.savedAt && ` at ${timeOf(conflict.version.savedAt)}`}:{" "}
              {rows(conflict.version.report.calls.length)}. Here: {rows(rowsHere)}.
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
          <p className="text-ink-2 text-xs">If you use the other window's, Undo brings the rows of this one back.</p>
        </>
      ) : (
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

const rows = (count: number): string => `${count} ${count === 1 ? "row" : "rows"}`;
