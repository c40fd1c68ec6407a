"use client";
import type { ReactNode } from "react";
import { LocalTime } from "@/app/_ui/local-time";
import { Verdict } from "@/app/_ui/verdict";
import { marks } from "./line-words";
import type { ActView, MarkView, ReviewView } from "./review-view";

interface ReviewSummaryProps {
  readonly review: ReviewView;
  /** For tutors: what can be done about an act. */
  undo?(act: ActView): ReactNode;
}

/** The computed mark and the reviewed one beside it, then everything that was done to get from one to the other. */
export function ReviewSummary({ review, undo }: ReviewSummaryProps) {
  const { computed, reviewed, markedAgain, acts } = review;
  return (
    <section
      aria-labelledby="review"
      className="mt-4 rounded-md border border-line bg-sheet p-4 print:border-0 print:p-0"
    >
      <h2 id="review" className="font-semibold">
        Reviewed by a tutor
      </h2>
      <dl className="mt-2 grid max-w-xl grid-cols-[auto_auto_1fr] gap-x-4 gap-y-1">
        <Row name="Computed mark" mark={computed} note={`rule ${computed.ruleVersion}`} />
        <Row name="Reviewed mark" mark={reviewed} note="this one counts" isStrong />
      </dl>
      {markedAgain && <MarkedAgain {...markedAgain} />}
      <ol className="mt-3">
        {acts.map((act) => (
          <li
            key={act.id}
            className="flex flex-wrap items-start justify-between gap-x-4 gap-y-2 border-line border-t py-2 wrap-anywhere"
          >
            <p className="min-w-0 flex-1 basis-72">
              <span className="font-medium">{act.about}</span>: {act.what}
              {!act.stands && !act.what.startsWith("taken back") && (
                <span className="text-ink-2"> (counts no more)</span>
              )}
              <span className="block text-ink-2 text-sm">
                {act.by}, <LocalTime at={act.at} />: {act.reason}
              </span>
            </p>
            {undo?.(act)}
          </li>
        ))}
      </ol>
    </section>
  );
}

interface RowProps {
  readonly name: string;
  readonly mark: Omit<MarkView, "ruleVersion">;
  readonly note: string;
  readonly isStrong?: boolean;
}

function Row({ name, mark, note, isStrong = false }: RowProps) {
  return (
    <>
      <dt>{name}</dt>
      <dd className={`text-right tabular-nums ${isStrong ? "font-semibold" : ""}`}>{mark.shown.toFixed(1)}</dd>
      <dd>
        <Verdict isPassed={mark.passed} /> <span className="text-ink-2 text-sm">{note}</span>
      </dd>
    </>
  );
}

function MarkedAgain({ first, again, counts, lines }: NonNullable<ReviewView["markedAgain"]>) {
  const said = (mark: MarkView, isCounting: boolean) =>
    `rule ${mark.ruleVersion}: ${mark.shown.toFixed(1)}, ${mark.passed ? "passed" : "not passed"}${isCounting ? " (counts)" : ""}`;
  const earned = (thousandths: number | null) => (thousandths === null ? "no such line" : marks(thousandths));
  return (
    <div className="mt-3 border-line border-t pt-3">
      <p>
        Marked twice. First by {said(first, counts === "first")}; again by {said(again, counts === "again")}.
      </p>
      <DifferenceTable
        heads={[`Rule ${first.ruleVersion}`, `Rule ${again.ruleVersion}`]}
        rows={lines.map(({ line, before, after }) => [line, earned(before), earned(after)])}
      />
    </div>
  );
}

interface DifferenceTableProps {
  readonly heads: readonly [string, string];
  readonly rows: readonly (readonly [line: string, before: string, after: string])[];
}

/** Lines in which two marks differ. */
export function DifferenceTable({ heads, rows }: DifferenceTableProps) {
  return (
    <table className="mt-2 w-full text-left text-sm">
      <thead className="text-ink-2">
        <tr>
          <th className="py-1 pr-3 font-medium">Line</th>
          {heads.map((head) => (
            <th key={head} className="py-1 pl-3 text-right font-medium whitespace-nowrap">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([line, before, after]) => (
          <tr key={`${line} ${before} ${after}`} className="border-line border-t align-top">
            <th scope="row" className="py-1 pr-3 font-normal wrap-anywhere">
              {line}
            </th>
            <td className="py-1 pl-3 text-right whitespace-nowrap tabular-nums">{before}</td>
            <td className="py-1 pl-3 text-right whitespace-nowrap tabular-nums">{after}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
