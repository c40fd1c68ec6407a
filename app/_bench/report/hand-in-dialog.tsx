"use client";
import { useEffect, useRef } from "react";
import { checkForHandIn } from "@/lib/bench";
import type { Report } from "@/lib/report";
import { type JointKind, nameAsked, PIECES, STATEMENT_FACTS, type SurfaceFace } from "@/lib/weld";
import { blankName, FACE_NAMES } from "./call-words";

export interface HandInDialogProps {
  readonly kind: JointKind;
  readonly report: Report;
  /** Whether there are criteria to sentence by. */
  readonly isSentenced: boolean;
  /** Share of a face's weld that was looked at closely, 0 to 1. */
  readonly seen: (face: SurfaceFace) => number;
  readonly isSending: boolean;
  readonly problem: string | null;
  readonly onHandIn: () => void;
  readonly onClose: () => void;
  readonly onGoToRow: (number: number) => void;
}

/** Asks once. It shows what is blank or nearly alike, and never whether anything is right. */
export function HandInDialog(props: HandInDialogProps) {
  const { kind, report, isSentenced, seen, isSending, problem, onHandIn, onClose, onGoToRow } = props;
  const dialog = useRef<HTMLDialogElement>(null);
  const { blanks, alike, unmeasured, unstated, unsentenced, isPieceUnsentenced } = checkForHandIn(report, kind);
  const { faces } = PIECES[kind];
  const count = report.calls.length;

  useEffect(() => {
    const element = dialog.current;
    if (element && !element.open) element.showModal();
  }, []);

  const rowLink = (number: number) => (
    <button type="button" className="min-h-9 font-semibold text-action underline" onClick={() => onGoToRow(number)}>
      No. {number}
    </button>
  );

  return (
    <dialog
      ref={dialog}
      aria-labelledby="hand-in-title"
      onClose={onClose}
      className="m-auto w-[min(34rem,92vw)] rounded-lg bg-sheet p-0 text-ink shadow-2xl backdrop:bg-[#000a]"
    >
      <div className="max-h-[80vh] space-y-4 overflow-y-auto p-5">
        <h2 id="hand-in-title" className="font-semibold text-xl">
          Hand in this report?
        </h2>
        <p>
          {count === 0
            ? `It has no indications: you say this ${kind === "butt" ? "plate is clean on both faces" : "weld is clean"}.`
            : `It has ${count} ${count === 1 ? "indication" : "indications"}.`}{" "}
          Afterwards it cannot be changed.
        </p>
        {blanks.length > 0 && (
          <div>
            <h3 className="font-semibold">Still blank</h3>
            <ul>
              {blanks.map(({ call, number, fields }) => (
                <li key={call.id}>
                  {rowLink(number)}: {fields.map((field) => blankName(field, call)).join(", ")}
                </li>
              ))}
            </ul>
          </div>
        )}
        {unmeasured.length > 0 && (
          <p>
            <b>Not measured:</b> {unmeasured.map((asked) => nameAsked(asked).toLowerCase()).join("; ")}.
          </p>
        )}
        {unstated.length > 0 && (
          <p>
            <b>Not stated:</b> {unstated.map((one) => STATEMENT_FACTS[one].name.toLowerCase()).join("; ")}.
          </p>
        )}
        {isSentenced && (unsentenced.length > 0 || isPieceUnsentenced) && (
          <p>
            <b>Not sentenced:</b>{" "}
            {unsentenced.map((number, n) => (
              <span key={number}>
                {n > 0 && ", "}
                {rowLink(number)}
              </span>
            ))}
            {unsentenced.length > 0 && isPieceUnsentenced && "; "}
            {isPieceUnsentenced && `the ${kind === "butt" ? "plate" : "weld"} as a whole`}.
          </p>
        )}
        {alike.length > 0 && (
          <div>
            <h3 className="font-semibold">Nearly alike: the same thing written twice?</h3>
            <ul>
              {alike.map(([one, other]) => (
                <li key={`${one}-${other}`}>
                  {rowLink(one)} and {rowLink(other)}
                </li>
              ))}
            </ul>
          </div>
        )}
        <p className="text-ink-2 text-sm">
          Looked at closely:{" "}
          {faces.map((face) => `${FACE_NAMES[face].toLowerCase()} ${Math.round(seen(face) * 100)} %`).join(", ")} of the
          weld.
        </p>
        {problem && (
          <p role="alert" className="text-missed">
            {problem}
          </p>
        )}
        <div className="flex flex-wrap justify-end gap-3 pt-1">
          <button
            type="button"
            className="h-11 rounded border border-line px-4"
            onClick={() => dialog.current?.close()}
          >
            Go on inspecting
          </button>
          <button
            type="button"
            className="h-11 rounded bg-action px-5 font-semibold text-sheet hover:bg-action-2 disabled:opacity-60"
            disabled={isSending}
            onClick={onHandIn}
          >
            {isSending ? "Handing in..." : "Hand in"}
          </button>
        </div>
      </div>
    </dialog>
  );
}
