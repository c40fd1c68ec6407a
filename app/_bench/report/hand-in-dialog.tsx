"use client";
import type { Report } from "@/lib/report";
import { type JointKind, PIECES, type SurfaceFace } from "@/lib/weld";
import { AskDialog } from "./ask-dialog";
import { FACE_NAMES } from "./call-words";
import { ReportChecks } from "./report-checks";

export interface HandInDialogProps {
  readonly kind: JointKind;
  readonly report: Report;
  /** Whether there are criteria to sentence by. */
  readonly isSentenced: boolean;
  /** How many questions follow once the report is closed; 0 where none are asked. */
  readonly questionCount: number;
  /** Share of a face's weld that was looked at closely, 0 to 1. */
  readonly seen: (face: SurfaceFace) => number;
  readonly isSending: boolean;
  readonly problem: string | null;
  readonly onHandIn: () => void;
  /** Closes the report, after which the questions come. */
  readonly onCloseReport: () => void;
  readonly onClose: () => void;
  readonly onGoToRow: (number: number) => void;
}

/** Asks once before the report is closed, or handed in where no questions follow. */
export function HandInDialog(props: HandInDialogProps) {
  const { kind, report, isSentenced, questionCount, seen, isSending, problem, onGoToRow } = props;
  const { faces } = PIECES[kind];
  const count = report.calls.length;
  const asks = questionCount > 0;
  return (
    <AskDialog
      title={asks ? "Close this report?" : "Hand in this report?"}
      problem={problem}
      backWords="Go on inspecting"
      doWords={asks ? "Close the report and go on to the questions" : "Hand in"}
      doingWords={asks ? "Closing..." : "Handing in..."}
      isSending={isSending}
      onDo={asks ? props.onCloseReport : props.onHandIn}
      onClose={props.onClose}
      footer={
        asks && (
          <p className="border-line border-t pt-3 text-ink-2 text-sm">
            If you hand in now, the questions stay unanswered and their marks are lost.{" "}
            <button
              type="button"
              className="min-h-11 text-action underline disabled:opacity-60"
              disabled={isSending}
              onClick={props.onHandIn}
            >
              Hand in without the questions
            </button>
          </p>
        )
      }
    >
      <p>
        {count === 0
          ? `It has no indications: you say this ${kind === "butt" ? "plate is clean on both faces" : "weld is clean"}.`
          : `It has ${count} ${count === 1 ? "indication" : "indications"}.`}{" "}
        Afterwards it cannot be changed.
      </p>
      {asks && (
        <p>
          {questionCount} questions come next. They speak of what is on the piece, which is why the report has to stand
          first. Torch, lens and gauges stay with you, and you hand in after the questions.
        </p>
      )}
      <ReportChecks kind={kind} report={report} isSentenced={isSentenced} onGoToRow={onGoToRow} />
      <p className="text-ink-2 text-sm">
        Looked at closely:{" "}
        {faces.map((face) => `${FACE_NAMES[face].toLowerCase()} ${Math.round(seen(face) * 100)} %`).join(", ")} of the
        weld.
      </p>
    </AskDialog>
  );
}
