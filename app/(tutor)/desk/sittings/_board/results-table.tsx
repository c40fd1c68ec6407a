import Link from "next/link";
import { Verdict } from "@/app/_ui/verdict";
import type { SittingState } from "@/lib/sittings";
import { standingWords } from "../standing-words";
import type { BoardLearner, BoardRun, ErasedLearner } from "./board";
import { runName, runWords } from "./board-words";
import { ErasedRows } from "./erased-rows";

/** After closing: each section's mark against its own pass mark, and where that leaves the learner in the course. */
export function ResultsTable({
  learners,
  erased,
  state,
  sittingId,
}: {
  readonly learners: readonly BoardLearner[];
  readonly erased: readonly ErasedLearner[];
  readonly state: SittingState;
  readonly sittingId: string;
}) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by the keyboard
    <section aria-label="Table of results" tabIndex={0} className="relative mt-2 overflow-x-auto">
      <table className="w-full text-left">
        <thead className="text-ink-2 text-sm">
          <tr>
            {["Learner", "Section", "Mark", "Verdict", "Mark sheet", "In the course"].map((heading) => (
              <th key={heading} scope="col" className="py-2 pr-4 font-medium">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        {learners.map(({ userId, name, runs, standing }) => (
          <tbody key={userId} className="border-line border-t [&_td]:align-top [&_th]:align-top">
            {runs.map((run, n) => (
              <tr key={run.runId}>
                {n === 0 && (
                  <th scope="rowgroup" rowSpan={runs.length} className="min-w-36 py-3 pr-4 font-medium wrap-anywhere">
                    {name}
                  </th>
                )}
                <td className="py-3 pr-4 lg:whitespace-nowrap">{runName(run)}</td>
                <Marked run={run} state={state} name={name} sittingId={sittingId} />
                {n === 0 && (
                  <td rowSpan={runs.length} className="py-3">
                    {standing ? standingWords(standing) : <span className="text-ink-2">not known yet</span>}
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        ))}
        <ErasedRows erased={erased} columns={4} />
      </table>
    </section>
  );
}

interface MarkedProps {
  readonly run: BoardRun;
  readonly state: SittingState;
  readonly name: string;
  readonly sittingId: string;
}

function Marked({ run, state, name, sittingId }: MarkedProps) {
  const { mark, placed, practiceId } = run;
  if (!mark) {
    const isAwaited = run.state === "handed-in" || run.state === "expired";
    return (
      <td colSpan={3} className="py-3 pr-4 text-ink-2">
        {isAwaited ? "being marked: the last saves may still be coming in" : runWords(run, state)}
      </td>
    );
  }
  return (
    <>
      <td className="py-3 pr-4 whitespace-nowrap">
        <span className="font-semibold">{mark.shown.toFixed(1)}</span>{" "}
        <span className="text-ink-2">of {mark.passMark} needed</span>
        {mark.computed && (
          <span className="block text-ink-2 text-sm">reviewed; computed {mark.computed.shown.toFixed(1)}</span>
        )}
      </td>
      <td className="py-3 pr-4">
        {run.state === "void" ? (
          <span className="text-ink-2">
            void, counts for nothing{run.voidReason !== null && <span className="block text-sm">{run.voidReason}</span>}
          </span>
        ) : (
          <Verdict isPassed={mark.isPassed} />
        )}
        {placed?.kind === "borderline" && placed.decidedOn !== null && (
          <span className="block text-ink-2 text-sm">
            decided on the mean of both, {placed.decidedOn.toFixed(1)}:{" "}
            {placed.outcome === "passed" ? "passed" : "not passed"}
          </span>
        )}
        {placed?.kind === "extra" && (
          <span className="block text-ink-2 text-sm">had been passed before: changes nothing</span>
        )}
        {placed?.kind === "re-sit" && <span className="block text-ink-2 text-sm">re-sit</span>}
      </td>
      <td className="py-0.5 pr-4">
        <Link
          href={
            run.state === "void" ? `/practice/${practiceId}/marks` : `/desk/sittings/${sittingId}/marks/${run.runId}`
          }
          aria-label={`Mark sheet of ${name}, ${runName(run).toLowerCase()}`}
          className="inline-flex min-h-11 items-center rounded font-medium text-action underline underline-offset-4 whitespace-nowrap"
        >
          Mark sheet
        </Link>
      </td>
    </>
  );
}
