import type { AskedTask } from "./asked";
import type { EyeChoice } from "./kinds";
import type { SetDrill } from "./set-drill";
import type { EyeResult } from "./sums";

/** A round of a drill for the eye, as it is kept. */
export interface EyeRound extends EyeChoice {
  readonly id: string;
  readonly userId: string;
  /** The drill that it was begun for, where a tutor had set one. */
  readonly setDrillId: string | null;
  readonly begunAt: Date;
  readonly finishedAt: Date | null;
}

/** A finished round with what became of its tasks. */
export interface FinishedEyeRound extends EyeRound {
  readonly finishedAt: Date;
  readonly results: readonly EyeResult[];
}

/** A drill that is set a class. */
export interface KeptSetDrill extends SetDrill {
  readonly id: string;
  readonly classId: string;
  readonly className: string;
  /** Who set it; null where the account is gone. */
  readonly setBy: string | null;
  readonly setAt: Date;
  readonly withdrawnAt: Date | null;
}

/** A round as its learner sees it. */
export interface EyeRoundView extends EyeChoice {
  readonly id: string;
  /** "waiting" for a piece that windows can be cut from, "asking" the first of `tasks`, or "done". */
  readonly stage: "waiting" | "asking" | "done";
  /** Whether each task was answered right, in their order; null before. Empty while there are none. */
  readonly marks: readonly (boolean | null)[];
  /** The one at hand, and the next one, so that it can be fetched meanwhile. */
  readonly tasks: readonly AskedTask[];
  /** What became of the tasks that are answered. */
  readonly results: readonly EyeResult[];
}
