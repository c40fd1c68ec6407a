import type { Criteria } from "@/lib/criteria";

/** By what is sentenced, as far as the bench may know it. */
export interface BenchCriteria {
  readonly name: string;
  readonly edition: string;
  /** The table, or null with a closed book: then it never reaches the browser. */
  readonly table: Criteria | null;
}
