"use client";
import { type ReactNode, useMemo, useState } from "react";
import { useGaugeOn } from "@/app/_bench/frame/use-gauge";
import { Button } from "@/app/_ui/button";
import { isStanding } from "@/lib/bench";
import {
  type DrillGauge,
  drawSeatTask,
  judgeSeat,
  SEAT_FAULT_WORDS,
  type SeatTask,
  type SeatVerdict,
  STEADY,
} from "@/lib/drills";
import { type GaugePlacement, REFUSAL_REASONS, type Refusal, type Standing } from "@/lib/gauges";
import { randomStream } from "@/lib/random";
import type { TaskProps } from "./drill-rounds";
import { inMm } from "./read-answer";
import { Told } from "./told";
import { handedOver, Workplace } from "./workplace";

/** A gauge to be seated: moved, turned and set until it sits right; then what was wrong with it. */
export function SeatDesk({ name, gauges, isTold, isLast, onAnswer, onGoOn }: TaskProps) {
  const task = useMemo(
    () => drawSeatTask(randomStream(name), gauges as readonly DrillGauge<"seat-gauge">[]),
    [name, gauges],
  );
  const [verdict, setVerdict] = useState<SeatVerdict | null>(null);
  const [shown, setShown] = useState<GaugePlacement | null>(null);
  const judge = (placement: GaugePlacement) => {
    const found = judgeSeat(task, placement);
    setVerdict(found);
    onAnswer({ isRight: found.isRight, error: found.out });
  };
  return (
    <SeatPlace
      key={shown ? "shown" : "own"}
      task={task}
      first={shown ?? task.first}
      isAsking={!isTold}
      onSeated={judge}
    >
      {isTold && verdict && (
        <Told
          isRight={verdict.isRight}
          isLast={isLast}
          onGoOn={onGoOn}
          more={
            !verdict.isRight &&
            !shown && (
              <Button look="quiet" onClick={() => setShown(task.solution)}>
                Show a right seat
              </Button>
            )
          }
        >
          <SeatTold verdict={verdict} right={task.right} />
          {shown && (
            <p className="border-found border-l-4 pl-3">
              The gauge now stands in a seat that is right. Drag its moving part down to see what it touches.
            </p>
          )}
        </Told>
      )}
    </SeatPlace>
  );
}

interface SeatPlaceProps {
  readonly task: SeatTask;
  readonly first: GaugePlacement;
  readonly isAsking: boolean;
  readonly onSeated: (placement: GaugePlacement) => void;
  readonly children: ReactNode;
}

function SeatPlace({ task, first, isAsking, onSeated, children }: SeatPlaceProps) {
  const { heights, station } = task;
  const gauge = useGaugeOn("cap", heights, STEADY, handedOver(first));
  const { standing, out } = gauge;
  return (
    <Workplace
      gauge={gauge}
      heights={heights}
      stations={[{ x: station, text: `${station}` }]}
      read={[]}
      isAsking={isAsking}
      says={standingWords(standing)}
      isRefused={standing?.ok === false}
    >
      <p>
        {goalWords(task)}{" "}
        {isAsking && "The number does not matter here: turn, move and set the gauge until it sits right."}
      </p>
      {isAsking && (
        <div className="mt-3">
          <Button onClick={() => out && isStanding(out.placement) && onSeated(out.placement)}>It sits right</Button>
        </div>
      )}
      {children && <div className="mt-3 border-line border-t pt-3">{children}</div>}
    </Workplace>
  );
}

function goalWords({ kind, station, work }: SeatTask): string {
  const at = `${station}\u00a0mm from the datum`;
  switch (kind) {
    case "height-gauge":
      return `Seat the gauge to measure how high the crown of the cap stands over the plate at ${at}.`;
    case "depth-gauge":
      return `Seat the gauge to measure the depth of the undercut along the toe on plate ${work.undercut?.side === 1 ? "A" : "B"} at ${at}.`;
    case "hook-gauge":
      return `Seat the gauge to measure the linear misalignment of the plates at ${at}.`;
  }
}

function standingWords(standing: Standing | Refusal | null): string {
  if (!standing) return "";
  if (!standing.ok) return REFUSAL_REASONS[standing.code];
  const lean = Math.round(Math.abs(standing.seat.lean));
  return `It stands${lean > 0 ? ` and leans ${lean}°` : ""}. Drag its moving part down to see where it touches.`;
}

function SeatTold({ verdict, right }: { readonly verdict: SeatVerdict; readonly right: number }) {
  const { refusal, faults } = verdict;
  return (
    <>
      {refusal && <p>{REFUSAL_REASONS[refusal]}</p>}
      {faults.length > 0 && (
        <ul className="list-disc space-y-1 pl-5">
          {faults.map((fault) => (
            <li key={fault}>{SEAT_FAULT_WORDS[fault]}</li>
          ))}
        </ul>
      )}
      <p className="tabular-nums">{readsWords(verdict, right)}</p>
    </>
  );
}

/** Differences smaller than this are none on a scale of tenths, mm. */
const ALIKE = 0.05;

function readsWords({ reads, out }: SeatVerdict, right: number): string {
  if (reads === null || out === null) return `So it cannot be read. Seated right, it reads ${inMm(right)}.`;
  if (Math.abs(out) < ALIKE) return `As it stands it reads ${inMm(reads)}, as it does when it is seated right.`;
  return `As it stands it reads ${inMm(reads)}; seated right, ${inMm(right)}. It is ${inMm(Math.abs(out))} too ${out > 0 ? "much" : "little"}.`;
}
