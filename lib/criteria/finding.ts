import type { Evidence } from "./criteria";
import type { Window } from "./windows";

/** What is decided, the worst first. Nothing is accepted because nothing is said about it. */
export const OUTCOMES = ["reject", "cannot-be-judged", "not-covered", "accept"] as const;
export type Outcome = (typeof OUTCOMES)[number];

export const OUTCOME_NAMES: Readonly<Record<Outcome, string>> = {
  reject: "reject",
  "cannot-be-judged": "cannot be judged",
  "not-covered": "no limit given",
  accept: "accept",
};

/** Why something cannot be judged. */
export type Reason = "missing-measure" | "application" | "condition" | "other-method" | "not-known";

/** What one rule says of one indication, or of several together. */
export interface Finding {
  /** Id of the row, or null where no row speaks of it. */
  readonly row: string | null;
  readonly clause: string | null;
  readonly name: string | null;
  readonly outcome: Outcome;
  /** The rule in signs or words: "h ≤ 0.1 t, at most 0.5 mm". */
  readonly rule: string | null;
  /** The rule with the numbers put in: "0.1 × 10 = 1.0, capped at 0.5 mm". */
  readonly worked: string | null;
  /** What is allowed and what is there, in the same unit; null where neither is a number. */
  readonly limit: number | null;
  readonly found: number | null;
  /** What is there in words: "measured 0.7 mm". */
  readonly foundText: string | null;
  readonly reason: Reason | null;
  /** Why it cannot be judged, or is not covered, in words. */
  readonly why: string | null;
  /** Where along the weld it was summed up, or null. */
  readonly window: Window | null;
  readonly evidence: Evidence | null;
  readonly notes: string;
}

/** The worst of some outcomes, "accept" of none. */
export const worstOutcome = (outcomes: readonly Outcome[]): Outcome =>
  OUTCOMES.find((outcome) => outcomes.includes(outcome)) ?? "accept";

/** One line: "1.7 Undercut: h ≤ 0.1 t, at most 0.5 mm: 0.1 × 10 = 1.0, capped at 0.5 mm; measured 0.7 mm: reject". */
export function findingText({ clause, name, rule, worked, foundText, why, outcome }: Finding): string {
  const where = clause === null ? [] : [`${clause} ${name}`];
  const reason = why !== null && rule?.includes(why) ? null : why;
  const told = [worked, foundText, reason].filter((part) => part !== null).join("; ");
  return [...where, ...(rule === null ? [] : [rule]), ...(told === "" ? [] : [told]), OUTCOME_NAMES[outcome]].join(
    ": ",
  );
}
