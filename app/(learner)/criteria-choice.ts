import type { CriteriaGroup } from "@/lib/criteria";
import type { Book } from "@/lib/practice";

/** Criteria to choose from, and what is chosen at first. */
export interface CriteriaChoice {
  readonly groups: readonly CriteriaGroup[];
  readonly choice: { readonly criteriaId: string; readonly book: Book };
}
