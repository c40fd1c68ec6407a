import type { Report } from "@/lib/report";
import type { JointFacts } from "@/lib/weld";

/** What the bench needs to know of a practice. There is no truth in it. */
export interface Practice {
  readonly id: string;
  readonly joint: JointFacts;
  readonly passMark: number;
  readonly report: Report;
  /** Number of the last saved version, 0 before the first. */
  readonly sequence: number;
}
