"use client";
import { type Dispatch, Fragment } from "react";
import { SENTENCE_SIGNS } from "@/app/_ui/sentence-signs";
import { blanksOf, type Writing, type WritingEvent } from "@/lib/bench";
import { type Call, SENTENCE_NAMES } from "@/lib/report";
import { type JointKind, PIECES } from "@/lib/weld";
import { CallForm } from "./call-form";
import { acrossWords, alongWords, FACE_NAMES, SENTENCE_LETTERS, sizeWords, typeName } from "./call-words";

export interface ReportTableProps {
  readonly kind: JointKind;
  readonly writing: Writing;
  /** Whether there are criteria to sentence by. */
  readonly isSentenced: boolean;
  readonly write: Dispatch<WritingEvent>;
  readonly onShow: (call: Call) => void;
  readonly onRemove: (call: Call) => void;
}

function SentenceMark({ sentence }: { readonly sentence: Call["sentence"] }) {
  if (!sentence) return null;
  const { sign, tone } = SENTENCE_SIGNS[sentence];
  return (
    <span className={`font-semibold ${tone}`}>
      <span aria-hidden="true">{`${sign} ${SENTENCE_LETTERS[sentence]}`}</span>
      <span className="sr-only">{SENTENCE_NAMES[sentence]}</span>
    </span>
  );
}

/** The indications as they will be handed in; one row is open for writing at a time. */
export function ReportTable({ kind, writing, isSentenced, write, onShow, onRemove }: ReportTableProps) {
  const { report, openId, isClosed } = writing;
  if (report.calls.length === 0 && isClosed) return <p className="px-4 py-6 text-sm">No indications.</p>;
  if (report.calls.length === 0) {
    return (
      <p className="px-4 py-6 text-ink-2 text-sm">
        Your indications will stand here. Choose <b>Mark</b> and drag along the weld, or move the cursor and press{" "}
        <kbd>I</kbd> where one begins and again where it ends. <kbd>P</kbd> sets a point.
      </p>
    );
  }
  return (
    <table className="w-full border-collapse text-sm">
      <thead className="text-left text-ink-2 text-xs">
        <tr className="border-line border-b">
          <th scope="col" className="py-1.5 pl-3 font-normal">
            No.
          </th>
          <th scope="col" className="py-1.5 font-normal">
            What and where, mm
          </th>
          <th scope="col" className="py-1.5 font-normal">
            Across
          </th>
          <th scope="col" className="py-1.5 pr-3 text-right font-normal">
            Size
          </th>
          {isSentenced && (
            <th scope="col" className="py-1.5 pr-3 font-normal">
              <span className="sr-only">Sentence</span>
            </th>
          )}
        </tr>
      </thead>
      <tbody>
        {report.calls.map((call, index) => {
          const isOpen = call.id === openId;
          const blanks = blanksOf(call).length;
          return (
            <Fragment key={call.id}>
              <tr className={`border-line border-b align-top ${isOpen ? "bg-sheet" : "hover:bg-paper-2"}`}>
                <td className="w-12">
                  <button
                    type="button"
                    aria-expanded={isOpen}
                    aria-label={`Indication ${index + 1}: ${isOpen ? "close" : "open"} the row`}
                    data-row={call.id}
                    className="m-0.5 grid size-11 place-items-center rounded border border-ink-2 bg-sheet font-semibold tabular-nums aria-expanded:bg-lamp"
                    onClick={() => write({ kind: "open", id: isOpen ? null : call.id })}
                  >
                    {index + 1}
                  </button>
                </td>
                <td
                  className="cursor-pointer py-1.5 pr-2"
                  onPointerUp={() => !isOpen && write({ kind: "open", id: call.id })}
                >
                  <span className={call.type ? "font-medium" : "text-missed italic"}>{typeName(call)}</span>
                  <br />
                  <span className="text-ink-2 tabular-nums">
                    {PIECES[kind].faces.length > 1 && `${FACE_NAMES[call.face]}, `}
                    {alongWords(call)}
                  </span>
                  {blanks > 0 && !isOpen && !isClosed && (
                    <span className="ml-2 whitespace-nowrap rounded bg-paper-2 px-1.5 text-partly text-xs">
                      {blanks} blank
                    </span>
                  )}
                </td>
                <td className="whitespace-nowrap py-1.5 pr-2 tabular-nums">{acrossWords(call)}</td>
                <td className="whitespace-nowrap py-1.5 pr-3 text-right tabular-nums">{sizeWords(call)}</td>
                {isSentenced && (
                  <td className="whitespace-nowrap py-1.5 pr-3" data-written-sentence={call.sentence ?? ""}>
                    <SentenceMark sentence={call.sentence} />
                  </td>
                )}
              </tr>
              {isOpen && (
                <tr className="border-line border-b">
                  <td colSpan={isSentenced ? 5 : 4}>
                    <CallForm
                      kind={kind}
                      call={call}
                      number={index + 1}
                      isClosed={isClosed}
                      isSentenced={isSentenced}
                      write={write}
                      onShow={() => onShow(call)}
                      onRemove={() => onRemove(call)}
                    />
                  </td>
                </tr>
              )}
            </Fragment>
          );
        })}
      </tbody>
    </table>
  );
}
