import type { Course, PlacedAttempt } from "./course";

/** One round of a course, to be drawn. */
export interface TimelineRound {
  /** From 1. */
  readonly round: number;
  /** In the order of time; `repeats` says what to join each of them to. */
  readonly attempts: readonly PlacedAttempt[];
  /** "failed": a last re-sit was failed, and the next round began. */
  readonly outcome: "passed" | "failed" | "open";
}

/** The rounds of a course in order, the one that is on included even where nothing has been sat in it. */
export function timeline({ attempts, round, isPassed }: Course): readonly TimelineRound[] {
  return Array.from({ length: round }, (_, n) => ({
    round: n + 1,
    attempts: attempts.filter((one) => one.round === n + 1),
    outcome: n + 1 < round ? "failed" : isPassed ? "passed" : "open",
  }));
}
