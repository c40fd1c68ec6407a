import { type Drill, type DrillAnswer, type DrillGauge, type NewDrillRound, ROUND_LENGTH, tally } from "./drills";

/** A round under way: one task after the other, each with its feedback. */
export interface Round {
  readonly drill: Drill;
  /** Name of the random stream that its tasks are drawn from. */
  readonly name: string;
  readonly gauges: readonly DrillGauge[];
  /** "asking" the task at hand, its answer "told", or all "done". */
  readonly stage: "asking" | "told" | "done";
  readonly answers: readonly DrillAnswer[];
  /** ms on whatever clock the caller has. */
  readonly begunAt: number;
  readonly toldAt: number;
}

export type RoundEvent =
  | { readonly kind: "answer"; readonly answer: DrillAnswer; readonly at: number }
  | { readonly kind: "go-on" };

export const beginRound = (drill: Drill, name: string, gauges: readonly DrillGauge[], at: number): Round => ({
  drill,
  name,
  gauges,
  stage: "asking",
  answers: [],
  begunAt: at,
  toldAt: at,
});

/** The round after an event; an answer to a task that is answered already, or going on before it, changes nothing. */
export function takeRound(round: Round, event: RoundEvent): Round {
  switch (event.kind) {
    case "answer":
      if (round.stage !== "asking") return round;
      return { ...round, stage: "told", answers: [...round.answers, event.answer], toldAt: event.at };
    case "go-on":
      if (round.stage !== "told") return round;
      return { ...round, stage: round.answers.length === ROUND_LENGTH[round.drill] ? "done" : "asking" };
  }
}

/** Number of the task at hand, from 1. */
export const taskNumber = ({ stage, answers }: Round): number => answers.length + (stage === "asking" ? 1 : 0);

/** A finished round as it is kept. */
export function toKeep({ drill, gauges, answers, begunAt, toldAt }: Round): NewDrillRound {
  const seconds = Math.min(86_400, Math.max(0, Math.round((toldAt - begunAt) / 1000)));
  return { drill, gauges: [...gauges] as NewDrillRound["gauges"], ...tally(answers), seconds };
}
