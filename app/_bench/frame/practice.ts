import type { Report } from "@/lib/report";
import type { JointFacts } from "@/lib/weld";
import type { BenchCriteria } from "../criteria/bench-criteria";

/** What the bench needs to know of a practice. There is no truth in it. */
export interface Practice {
  readonly id: string;
  readonly joint: JointFacts;
  readonly passMark: number;
  /** By what indications and piece are sentenced; null where nothing is. */
  readonly criteria: BenchCriteria | null;
  readonly report: Report;
  /** Number of the last saved version, 0 before the first. */
  readonly sequence: number;
}
