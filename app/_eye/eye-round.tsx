"use client";
import { useCallback, useEffect, useRef, useState } from "react";
import { FIRST_TORCH, type Torch } from "@/lib/bench";
import type { EyeRoundView } from "@/lib/eye";
import { keyedTorch } from "../_bench/viewer/torch";
import { BurstClock } from "./burst-clock";
import { type BeginRound, EyeEnd } from "./eye-end";
import { ProgressDots } from "./progress-dots";
import { TaskDesk } from "./task-desk";
import { type EyeRoundHandling, useEyeRound } from "./use-eye-round";
import { useWindowLinks } from "./use-window-links";

export interface EyeRoundProps {
  readonly first: EyeRoundView;
  readonly begin: BeginRound;
}

/** Against the clock it goes on by itself, ms: at once after what was right, later after what was not, so that it can be read. */
const GO_ON_MS = { right: 900, wrong: 3000 } as const;

/** One round: task after task, each told at once, and how it went. */
export function EyeRound({ first, begin }: EyeRoundProps) {
  const handling = useEyeRound(first);
  const { round, task, told } = handling;
  const [torch, setTorch] = useState<Torch>(FIRST_TORCH);
  const [isSeen, setIsSeen] = useState(false);
  const onPainted = useCallback(() => setIsSeen(true), []);
  const linkFor = useWindowLinks(task ? [task, ...round.tasks.filter(({ id }) => id !== task.id)] : []);
  const isAgainstClock = round.drill === "burst" && round.isTimed;
  useGoingOn(handling, isAgainstClock);
  useTorchKeys(torch, setTorch);

  if (!task)
    return round.stage === "done" ? <EyeEnd round={round} begin={begin} isAtOnce={!isAgainstClock} /> : <Waiting />;
  return (
    <>
      <div className="my-2 flex flex-wrap items-center justify-between gap-x-8 gap-y-1">
        {isAgainstClock ? <Answered round={round} /> : <ProgressDots marks={round.marks} number={task.number} />}
        {isAgainstClock && <BurstClock isRunning={isSeen} onOver={() => void handling.finish()} />}
      </div>
      <TaskDesk
        key={task.id}
        task={task}
        told={told}
        isLast={round.stage === "done"}
        problem={handling.problem}
        linkOf={(window) => linkFor(task, window)}
        torch={torch}
        onTorch={setTorch}
        onAnswer={handling.answer}
        onGoOn={handling.goOn}
        onPainted={onPainted}
      />
    </>
  );
}

/** How a burst stands: how many there will be is not known. */
function Answered({ round }: { readonly round: EyeRoundView }) {
  const right = round.results.filter(({ isRight }) => isRight).length;
  return (
    <p className="tabular-nums" data-tally="">
      <b>{right}</b> of {round.results.length} right
    </p>
  );
}

/** Where arrow keys have a use of their own. */
const OWN_ARROWS = "input, select, textarea, [role=slider], [data-window], button[aria-label^=Torch]";

/** Arrow keys carry the torch from wherever the focus is, so that nobody has to leave the answers for it. */
function useTorchKeys(torch: Torch, onTorch: (torch: Torch) => void) {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return;
      if (event.target instanceof Element && event.target.closest(OWN_ARROWS)) return;
      const next = keyedTorch(torch, event.key);
      if (!next || !document.querySelector("[data-window]")) return;
      event.preventDefault();
      onTorch(next);
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [torch, onTorch]);
}

function useGoingOn({ told, goOn }: EyeRoundHandling, isAgainstClock: boolean) {
  const newest = useRef(goOn);
  newest.current = goOn;
  useEffect(() => {
    if (!told || !isAgainstClock) return;
    const timer = setTimeout(() => newest.current(), told.isRight ? GO_ON_MS.right : GO_ON_MS.wrong);
    return () => clearTimeout(timer);
  }, [told, isAgainstClock]);
}

const Waiting = () => (
  <section className="mt-4 max-w-2xl rounded-md border border-line bg-sheet p-5" role="status">
    <h2 className="font-semibold text-lg">A plate is being welded for the drills</h2>
    <p className="mt-2 text-ink-2">
      It is the first one, and takes some ten seconds, longer while others wait for theirs. The round begins by itself;
      you can also leave this page and come back.
    </p>
  </section>
);
