import type { Paper } from "./paper";
import type { SectionRun, Voided } from "./run";
import type { Pause } from "./stopped-time";

/**
 * "open": learners may come in, and nothing starts; "running": they may start; "closed": every section is closed with its
 * last save; "released": learners see their marks, for good.
 */
export const SITTING_STATES = ["planned", "open", "running", "paused", "closed", "released", "void"] as const;
export type SittingState = (typeof SITTING_STATES)[number];

/** A paper set by a tutor for a class at a time. */
export interface Sitting {
  readonly id: string;
  /** As it was when the sitting was planned; a later change of the paper changes no sitting. */
  readonly paper: Paper;
  readonly state: SittingState;
  readonly plannedAt: Date;
  readonly openedAt: Date | null;
  readonly begunAt: Date | null;
  /** Of everybody at once. */
  readonly pauses: readonly Pause[];
  readonly closedAt: Date | null;
  /** Closed once and opened again for single learners: nobody starts anything any more. */
  readonly wasClosed: boolean;
  readonly releasedAt: Date | null;
  readonly voided: Voided | null;
  /** For so long after a clock stopped, saves are taken that were made before. */
  readonly graceSeconds: number;
}

/** A sitting with the runs of its learners. */
export interface SittingWithRuns {
  readonly sitting: Sitting;
  readonly runs: readonly SectionRun[];
}

/** A save may be under way for so long when a connection is slow. Common practice, no source. */
const GRACE_SECONDS = 10;

export const newSitting = (
  { id, paper, plannedAt }: Pick<Sitting, "id" | "paper" | "plannedAt">,
  graceSeconds = GRACE_SECONDS,
): Sitting => ({
  id,
  paper,
  plannedAt,
  state: "planned",
  openedAt: null,
  begunAt: null,
  pauses: [],
  closedAt: null,
  wasClosed: false,
  releasedAt: null,
  voided: null,
  graceSeconds,
});
