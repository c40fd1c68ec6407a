import type { Report } from "@/lib/report";
import type { AskedQuestion } from "@/lib/results";
import type { JointFacts } from "@/lib/weld";
import type { BenchCriteria } from "../criteria/bench-criteria";
import type { SatRun } from "../sitting/use-sitting-run";

/** What the bench needs to know of a practice. There is no truth in it. */
export interface Practice {
  readonly id: string;
  readonly joint: JointFacts;
  readonly passMark: number;
  /** By what indications and piece are sentenced; null where nothing is. */
  readonly criteria: BenchCriteria | null;
  readonly report: Report;
  /** How many questions follow once the report is closed; 0 where none are asked. */
  readonly questionCount: number;
  /** What is asked about the piece; null while the report is not closed. */
  readonly questions: readonly AskedQuestion[] | null;
  /** Number of the last saved version, 0 before the first. */
  readonly sequence: number;
  /** The window that saved it, and when; null before the first. */
  readonly savedBy: string | null;
  readonly savedAt: string | null;
  /** The section of a sitting that it is; null for practice. */
  readonly sat: SatRun | null;
}
