"use client";
import { checkForHandIn } from "@/lib/bench";
import type { Report } from "@/lib/report";
import { type JointKind, nameAsked, STATEMENT_FACTS } from "@/lib/weld";
import { blankName } from "./call-words";

interface ReportChecksProps {
  readonly kind: JointKind;
  readonly report: Report;
  /** Whether there are criteria to sentence by. */
  readonly isSentenced: boolean;
  readonly onGoToRow: (number: number) => void;
}

/** What is blank or nearly alike in a report, and never whether anything is right. */
export function ReportChecks({ kind, report, isSentenced, onGoToRow }: ReportChecksProps) {
  const { blanks, alike, unmeasured, unstated, unsentenced, isPieceUnsentenced } = checkForHandIn(report, kind);
  const rowLink = (number: number) => (
    <button type="button" className="min-h-9 font-semibold text-action underline" onClick={() => onGoToRow(number)}>
      No. {number}
    </button>
  );
  return (
    <>
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
    </>
  );
}
