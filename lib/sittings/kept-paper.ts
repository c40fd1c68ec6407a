import type { Paper } from "./paper";

/** What a paper says from one save to another. Once a sitting has taken it, it is never changed again. */
export interface PaperVersion {
  readonly id: string;
  /** Counts up from 1 within its paper. */
  readonly number: number;
  readonly paper: Paper;
  readonly savedAt: Date;
  /** When the first sitting took it; null while none has. */
  readonly usedAt: Date | null;
}

/** A paper of the workshop as it is kept. */
export interface KeptPaper {
  readonly id: string;
  /** The one a sitting would take now: that with the highest number. */
  readonly current: PaperVersion;
  /** Name of the tutor who made it; null where the account is gone. */
  readonly madeBy: string | null;
  readonly createdAt: Date;
  /** Last saved; a later save must have seen it. */
  readonly updatedAt: Date;
  readonly archivedAt: Date | null;
}
