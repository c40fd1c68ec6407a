"use client";

import Link from "next/link";
import { type ReactNode, useState } from "react";
import { Button } from "@/app/_ui/button";
import { LocalTime } from "@/app/_ui/local-time";
import { Notice } from "@/app/_ui/notice";
import type { Board } from "./board";
import { ClockTime } from "./clock-time";
import { sendAct } from "./send-act";
import type { WholeAct } from "./whole-dialog";

interface NextStepProps {
  readonly board: Board;
  /** Asks first, in a dialog. */
  readonly ask: (act: WholeAct) => void;
  /** Called with a sentence on what was done. */
  readonly onDone: (told: string) => void;
}

type DirectAct = "open" | "begin" | "pause" | "resume" | "renew-pieces";

const DONE: Readonly<Record<DirectAct, string>> = {
  open: "The sitting is open: learners can come in.",
  begin: "The sitting has begun: learners can start their sections.",
  pause: "Everybody is paused: all clocks stand.",
  resume: "The clocks go on.",
  "renew-pieces": "Other pieces are being made for those that could not be.",
};

/** The one thing to do next with the sitting, how far its pieces are, and what else can be done to all. */
export function NextStep({ board, ask, onDone }: NextStepProps) {
  const { sitting, pieces, learners } = board;
  const [refused, setRefused] = useState<string | null>(null);
  const [sending, setSending] = useState<DirectAct | null>(null);
  const act = async (what: DirectAct) => {
    setSending(what);
    const acted = await sendAct(`/api/sittings/${sitting.id}/${what}`);
    setSending(null);
    setRefused(acted.ok ? null : acted.message);
    if (acted.ok) onDone(DONE[what]);
  };
  const main = (what: DirectAct, label: string) => (
    <Button isLarge disabled={sending !== null} onClick={() => void act(what)}>
      {label}
    </Button>
  );
  const quiet = (what: WholeAct, label: string) => (
    <Button look="quiet" onClick={() => ask(what)}>
      {label}
    </Button>
  );
  const counting = learners.flatMap(({ runs }) => runs).filter(({ state }) => state !== "void");
  const isEverythingClosed = counting.every(({ state }) => state === "handed-in" || state === "expired");
  const isMarked = counting.every(({ state, mark }) => mark !== null || state === "waiting");
  const { state } = sitting;
  const isOn = state === "running" || state === "paused";
  return (
    <section aria-label="Next step" className="mt-4 rounded-md border border-line bg-sheet p-5">
      <div className="grid items-center gap-x-8 gap-y-4 md:grid-cols-[1fr_auto]">
        <div>{STEPS[state]({ board, isEverythingClosed, isMarked })}</div>
        <div className="flex flex-wrap gap-3 md:justify-end">
          {state === "planned" && main("open", "Open the sitting")}
          {state === "open" && main("begin", "Begin")}
          {state === "running" && !isEverythingClosed && (
            <Button isLarge look="quiet" disabled={sending !== null} onClick={() => void act("pause")}>
              Pause everybody
            </Button>
          )}
          {state === "running" && isEverythingClosed && (
            <Button isLarge onClick={() => ask("close")}>
              Close the sitting
            </Button>
          )}
          {state === "paused" && main("resume", "Resume")}
          {state === "closed" && (
            <Button isLarge disabled={!isMarked} onClick={() => ask("release")}>
              Release the marks
            </Button>
          )}
          {state === "released" && sitting.resits === "due" && (
            <Link
              href={`/desk/sittings/new?class=${sitting.classId}&paper=${sitting.paperId}&who=due`}
              className="inline-flex items-center rounded bg-action px-8 py-4 font-medium text-lg text-white hover:bg-action-2"
            >
              Plan the re-sits
            </Link>
          )}
        </div>
      </div>
      {refused && (
        <div className="mt-4">
          <Notice>{refused}</Notice>
        </div>
      )}
      {(state === "planned" || state === "open" || isOn) && (
        <Pieces pieces={pieces} renew={() => void act("renew-pieces")} isSending={sending !== null} />
      )}
      {state !== "void" && (
        <div className="mt-4 flex flex-wrap gap-3 border-line border-t pt-4">
          {isOn && quiet("add-time", "More time for all")}
          {((state === "running" && !isEverythingClosed) || state === "paused") && quiet("close", "Close the sitting")}
          {(state === "planned" || state === "open") && quiet("move", "Set another time")}
          {quiet("void", "Make the sitting void")}
        </div>
      )}
    </section>
  );
}

interface StepView {
  readonly board: Board;
  readonly isEverythingClosed: boolean;
  readonly isMarked: boolean;
}

const RESITS: Readonly<Record<NonNullable<Board["sitting"]["resits"]>, { title: string; words: string }>> = {
  none: { title: "Done: the marks are released", words: "Nothing is due again from anybody who sat it." },
  due: {
    title: "Some sections are due again",
    words: "A re-sit is a sitting of its own, on fresh pieces, for those who need it and the sections that they need.",
  },
  planned: {
    title: "Done: the marks are released, and the re-sits are planned",
    words: "Everybody who has something due again has a sitting of this paper to come; it is among all sittings.",
  },
};

const STEPS: Readonly<Record<Board["sitting"]["state"], (view: StepView) => ReactNode>> = {
  planned: ({ board: { sitting } }) => (
    <Step title="Open it when you want learners to come in">
      Planned for <LocalTime at={sitting.plannedAt} />. Until you open it, learners see that it is planned, and nothing
      else. Opening starts no clock.
    </Step>
  ),
  open: ({ board: { learners } }) => (
    <Step title="Begin when everybody is ready">
      {learners.filter(({ isIn }) => isIn).length} of {learners.length} learners in. Once it has begun, learners may
      start their sections; each clock starts when its learner starts, with the piece on the bench.
    </Step>
  ),
  running: ({ board, isEverythingClosed }) =>
    isEverythingClosed ? (
      <Step title="Everybody is done: close the sitting">
        Then you see every mark, and decide when learners see theirs.
      </Step>
    ) : (
      <Step title="The sitting is running">
        {board.sitting.endsAt ? (
          <>
            It is over for everybody by <ClockTime at={board.sitting.endsAt} /> at the latest, and closes by itself
            then.
          </>
        ) : (
          "Each section closes by itself when its time is up."
        )}{" "}
        Act on one learner in their row, or on all from here.
      </Step>
    ),
  paused: () => <Step title="Everybody is paused">All clocks stand and every bench is covered until you resume.</Step>,
  closed: ({ isMarked }) =>
    isMarked ? (
      <Step title="Look through the marks, then release them">
        Open a mark sheet to overrule a line or annul a question. Learners see nothing until you release. Before that
        you can open a single section again; after it, no more.
      </Step>
    ) : (
      <Step title="The last saves may still be coming in">
        Marks are made within a few seconds; then you release them.
      </Step>
    ),
  released: ({ board: { sitting } }) => (
    <Step title={RESITS[sitting.resits ?? "none"].title}>
      {sitting.releasedAt && (
        <>
          Released on <LocalTime at={sitting.releasedAt} />.{" "}
        </>
      )}
      {RESITS[sitting.resits ?? "none"].words}
    </Step>
  ),
  void: ({ board: { sitting } }) => (
    <Step title="This sitting is void">
      It counts for nothing: {sitting.voidReason}. What was written is kept. Plan another one if it is to be sat.
    </Step>
  ),
};

function Step({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <>
      <h2 className="font-semibold text-lg">{title}</h2>
      <p className="mt-1 max-w-2xl text-ink-2 wrap-anywhere">{children}</p>
    </>
  );
}

interface PiecesProps {
  readonly pieces: Board["pieces"];
  readonly renew: () => void;
  readonly isSending: boolean;
}

/** How many pieces are made. */
function Pieces({ pieces: { all, ready, failed }, renew, isSending }: PiecesProps) {
  return (
    <div className="mt-4 flex flex-wrap items-center gap-x-4 gap-y-2 border-line border-t pt-4">
      <svg viewBox="0 0 100 8" preserveAspectRatio="none" className="h-2 w-40" aria-hidden="true">
        <rect width="100" height="8" className="fill-paper-2 forced-colors:stroke-[CanvasText]" />
        <rect width={all === 0 ? 0 : (100 * ready) / all} height="8" className="fill-action" />
      </svg>
      <span>
        {ready} of {all} {all === 1 ? "piece is" : "pieces are"} ready
        {ready + failed < all && ", the others are being made"}.
      </span>
      {failed > 0 && (
        <>
          <span>{failed === 1 ? "One could not be made." : `${failed} could not be made.`}</span>
          <Button look="quiet" disabled={isSending} onClick={renew}>
            Make {failed === 1 ? "another" : "others"}
          </Button>
        </>
      )}
    </div>
  );
}
