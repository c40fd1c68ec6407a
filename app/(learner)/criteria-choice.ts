import type { Book } from "@/lib/practice";

/** Criteria to choose from, and what is chosen at first. */
export interface CriteriaChoice {
  readonly groups: readonly {
    readonly title: string;
    readonly sets: readonly { readonly id: string; readonly name: string; readonly edition: string }[];
  }[];
  readonly choice: { readonly criteriaId: string; readonly book: Book };
}
