import type { ReactNode } from "react";
import { Button } from "@/app/_ui/button";
import type { SittingState } from "@/lib/sittings";
import { isBeingSat, isOver } from "../sitting-words";
import type { BoardLearner, BoardRun, ErasedLearner } from "./board";
import { runName, runWords } from "./board-words";
import { ClockTime } from "./clock-time";
import { ErasedRows } from "./erased-rows";
import { TimeLeft } from "./server-time";

interface LearnersTableProps {
  readonly state: SittingState;
  readonly learners: readonly BoardLearner[];
  readonly erased: readonly ErasedLearner[];
  readonly choose: (runId: string) => void;
}

/** One row a section of a learner: what they are at, never what it earns. */
export function LearnersTable({ state, learners, erased, choose }: LearnersTableProps) {
  if (learners.length + erased.length === 0) {
    return <p className="mt-3 text-ink-2">Everybody expected stands here with their sections. Nobody is yet.</p>;
  }
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by the keyboard
    <section aria-label="Table of learners" tabIndex={0} className="relative mt-2 overflow-x-auto">
      <table className="w-full text-left">
        <thead className="text-ink-2 text-sm">
          <tr className="align-bottom">
            <Heading>Learner</Heading>
            <Heading>Section</Heading>
            <Heading>State</Heading>
            <Heading>Time left</Heading>
            <Heading>Last saved</Heading>
            <Heading isNumber>Indications</Heading>
            <Heading isNumber>Answers</Heading>
            <th>
              <span className="sr-only">What you can do</span>
            </th>
          </tr>
        </thead>
        {learners.map((learner) => (
          <tbody key={learner.userId} className="border-line border-t [&_td]:align-top [&_th]:align-top">
            {learner.runs.map((run, n) => (
              <tr key={run.runId} data-run={run.runId}>
                {n === 0 && (
                  <th
                    scope="rowgroup"
                    rowSpan={learner.runs.length}
                    className="min-w-36 py-3 pr-4 font-medium wrap-anywhere"
                  >
                    {learner.name}
                    <Presence learner={learner} isOver={isOver(state)} />
                  </th>
                )}
                <RunCells run={run} state={state} name={learner.name} choose={choose} />
              </tr>
            ))}
          </tbody>
        ))}
        <ErasedRows erased={erased} columns={6} />
      </table>
    </section>
  );
}

interface RunCellsProps {
  readonly run: BoardRun;
  readonly state: SittingState;
  readonly name: string;
  readonly choose: (runId: string) => void;
}

function RunCells({ run, state, name, choose }: RunCellsProps) {
  const { startedAt, savedAt, closedAt, addedMinutes, written } = run;
  return (
    <>
      <td className="py-3 pr-4 lg:whitespace-nowrap">{runName(run)}</td>
      <td className="py-3 pr-4">
        <span className={`lg:whitespace-nowrap ${isBeingSat(run.state) ? "font-semibold" : ""}`}>
          {runWords(run, state)}
        </span>
        {closedAt ? (
          <Under>
            at <ClockTime at={closedAt} />
          </Under>
        ) : (
          startedAt && (
            <Under>
              started at <ClockTime at={startedAt} />
            </Under>
          )
        )}
        {addedMinutes > 0 && <Under>{addedMinutes} min on top</Under>}
        {run.isReopened && <Under>opened again</Under>}
        {run.voidReason !== null && <Under>{run.voidReason}</Under>}
      </td>
      <td className="py-3 pr-4 whitespace-nowrap">
        {isOver(state) ? <span className="text-ink-2">–</span> : <TimeLeft clock={run.clock} />}
      </td>
      <td className="py-3 pr-4 whitespace-nowrap">
        {savedAt ? <ClockTime at={savedAt} withSeconds /> : <span className="text-ink-2">nothing yet</span>}
      </td>
      <td className="py-3 pr-4 text-right tabular-nums">{written.indications}</td>
      <td className="py-3 pr-4 text-right tabular-nums">{written.answers}</td>
      <td className="py-1.5 text-right">
        {run.state !== "void" && state !== "void" && (
          <Button
            look="quiet"
            aria-label={`Act on ${name}, ${runName(run).toLowerCase()}`}
            onClick={() => choose(run.runId)}
          >
            Act
          </Button>
        )}
      </td>
    </>
  );
}

/** In or not, by shape and word, and extra time where there is any. */
function Presence({ learner, isOver }: { readonly learner: BoardLearner; readonly isOver: boolean }) {
  const { isIn, enteredAt, factor } = learner;
  return (
    <span className="mt-0.5 block font-normal text-sm">
      <span className={`items-center gap-1.5 ${isOver ? "hidden" : "inline-flex"}`}>
        <svg viewBox="0 0 12 12" className="size-2.5" aria-hidden="true">
          <circle
            cx="6"
            cy="6"
            r="4.5"
            strokeWidth="2"
            className={isIn ? "fill-found stroke-found" : "fill-none stroke-ink-2"}
          />
        </svg>
        {isIn ? "in" : enteredAt ? "was in, away now" : "not in"}
      </span>
      {factor !== 1 && <span className="block text-ink-2">× {factor} time</span>}
    </span>
  );
}

function Heading({ children, isNumber = false }: { readonly children: string; readonly isNumber?: boolean }) {
  return (
    <th scope="col" className={`py-2 pr-4 font-medium ${isNumber ? "text-right" : ""}`}>
      {children}
    </th>
  );
}

function Under({ children }: { readonly children: ReactNode }) {
  return <span className="block max-w-56 text-ink-2 text-sm wrap-anywhere">{children}</span>;
}
