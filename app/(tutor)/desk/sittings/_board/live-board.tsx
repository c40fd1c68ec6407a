"use client";

import Link from "next/link";
import { useEffect, useRef, useState } from "react";
import { SaveAsCsv } from "@/app/_paper/save-as-csv";
import { Notice } from "@/app/_ui/notice";
import { Sheet } from "@/app/_ui/sheet";
import { isOver, STATE_WORDS } from "../sitting-words";
import { AuditLog } from "./audit-log";
import type { Board } from "./board";
import { boardSummary } from "./board-words";
import { LearnersTable } from "./learners-table";
import { LineState } from "./line-state";
import { NextStep } from "./next-step";
import { ResultsTable } from "./results-table";
import { RunDialog } from "./run-dialog";
import { ServerTimeProvider } from "./server-time";
import { useLiveBoard } from "./use-live-board";
import { type WholeAct, WholeDialog } from "./whole-dialog";

interface LiveBoardProps {
  readonly initial: Board;
  /** The server's time when it was read. */
  readonly now: Date;
}

/** The board of a sitting: what to do next, everybody in it, and what was done. */
export function LiveBoard({ initial, now }: LiveBoardProps) {
  const { board, offset, line, refresh } = useLiveBoard(initial, now);
  const [chosen, setChosen] = useState<string | null>(null);
  const [asked, setAsked] = useState<WholeAct | null>(null);
  const [told, setTold] = useState({ sentence: "", turn: 0 });
  const notice = useRef<HTMLDivElement>(null);
  const { sitting, learners, erased, log } = board;

  // the button that was pressed may be gone: what was done takes the focus
  useEffect(() => {
    if (told.turn > 0) notice.current?.focus();
  }, [told]);

  const onDone = (sentence: string) => {
    setChosen(null);
    setAsked(null);
    setTold(({ turn }) => ({ sentence, turn: turn + 1 }));
    // the live line brings it too, unless it is down
    void refresh().catch(() => undefined);
  };
  const learner = learners.find(({ runs }) => runs.some(({ runId }) => runId === chosen));
  const run = learner?.runs.find(({ runId }) => runId === chosen);
  const state = sitting.state;
  return (
    <ServerTimeProvider first={now.getTime()} offset={offset}>
      <div className="mt-3 flex flex-wrap items-start justify-between gap-x-8 gap-y-2">
        <p>
          <span className="rounded border border-ink-2 px-2 py-0.5 font-medium">{STATE_WORDS[state]}</span>
        </p>
        <LineState line={line} />
      </div>
      <NextStep key={state} board={board} ask={setAsked} onDone={onDone} />
      {told.turn > 0 && (
        <div ref={notice} key={told.turn} tabIndex={-1} className="mt-4 outline-none">
          <Notice isGood>{told.sentence}</Notice>
        </div>
      )}
      {isOver(state) && (
        <Sheet title="Results" className="mt-5">
          <div className="mt-3 flex flex-wrap gap-3">
            <Link
              href={`/desk/sittings/${sitting.id}/paper`}
              className="inline-flex min-h-11 items-center rounded border border-ink-2 bg-sheet px-5 font-medium hover:bg-paper-2"
            >
              Print results and what was done
            </Link>
            <SaveAsCsv address={`/api/sittings/${sitting.id}/files`} />
          </div>
          <ResultsTable learners={learners} erased={erased} state={state} sittingId={sitting.id} />
        </Sheet>
      )}
      <Sheet title="Learners" className="mt-5">
        <p className="mt-1 text-ink-2">{boardSummary(board)}</p>
        <LearnersTable state={state} learners={learners} erased={erased} choose={setChosen} />
      </Sheet>
      <AuditLog log={log} learners={learners} />
      {learner && run && (
        <RunDialog
          key={run.runId}
          sittingId={sitting.id}
          state={state}
          learner={learner}
          run={run}
          onClose={() => setChosen(null)}
          onDone={onDone}
        />
      )}
      {asked && <WholeDialog act={asked} board={board} onClose={() => setAsked(null)} onDone={onDone} />}
    </ServerTimeProvider>
  );
}
