"use client";
import { useState } from "react";
import {
  DRILL_GAUGES,
  type Drill,
  type DrillAnswer,
  type DrillGauge,
  ROUND_LENGTH,
  type Round,
  taskNumber,
} from "@/lib/drills";
import { ChooseGauges } from "./choose-gauges";
import { LargestDesk } from "./largest-desk";
import { ReadingDesk } from "./reading-desk";
import { RoundEnd } from "./round-end";
import { SeatDesk } from "./seat-desk";
import { TallyLine } from "./tally-line";
import { useRound } from "./use-round";

/** What the desk of one task is given. */
export interface TaskProps {
  /** Name of the random stream of this task. */
  readonly name: string;
  readonly gauges: readonly DrillGauge[];
  readonly isTold: boolean;
  readonly isLast: boolean;
  readonly onAnswer: (answer: DrillAnswer) => void;
  readonly onGoOn: () => void;
}

const DESKS = { "read-scale": ReadingDesk, "seat-gauge": SeatDesk, "find-largest": LargestDesk } as const;

/** Rounds of one drill: choose the gauges, answer task by task, see how it went. */
export function DrillRounds({ drill, name }: { readonly drill: Drill; readonly name: string }) {
  const handling = useRound(drill, name);
  const [chosen, setChosen] = useState<readonly DrillGauge[]>(DRILL_GAUGES[drill]);
  const { round } = handling;
  if (!round) return <ChooseGauges drill={drill} chosen={chosen} onChoose={setChosen} onBegin={handling.begin} />;
  if (round.stage === "done") return <RoundEnd round={round} handling={handling} />;
  return <OneTask round={round} onAnswer={handling.answer} onGoOn={handling.goOn} />;
}

function OneTask({ round, onAnswer, onGoOn }: { readonly round: Round } & Pick<TaskProps, "onAnswer" | "onGoOn">) {
  const { drill, name, gauges, stage } = round;
  const number = taskNumber(round);
  const Desk = DESKS[drill];
  return (
    <div data-task={`${name}/${number}`}>
      <TallyLine round={round} />
      <Desk
        key={`${name}/${number}`}
        name={`${name}/${number}`}
        gauges={gauges}
        isTold={stage === "told"}
        isLast={number === ROUND_LENGTH[drill]}
        onAnswer={onAnswer}
        onGoOn={onGoOn}
      />
    </div>
  );
}
