"use client";

import { createContext, type ReactNode, useContext } from "react";
import type { Problem } from "@/lib/criteria";
import { problemText } from "./draft";

interface Shown {
  readonly problems: readonly Problem[];
  /** Fields that have been left once; null once storing was tried, when every field is to say what is wrong. */
  readonly left: ReadonlySet<string> | null;
  readonly leave: (field: string) => void;
}

const ShownProblems = createContext<Shown>({ problems: [], left: new Set(), leave: () => undefined });

export function ProblemsAtFields({ children, ...shown }: Shown & { readonly children: ReactNode }) {
  return <ShownProblems value={shown}>{children}</ShownProblems>;
}

/** What is wrong at a field, or at one of several, once it has been left; and what to call when it is left. */
export function useProblem(...fields: readonly string[]): {
  readonly problem: string | null;
  readonly leave: () => void;
} {
  const { problems, left, leave } = useContext(ShownProblems);
  const found = problems.find(({ field }) => fields.includes(field));
  const isShown = left === null || fields.some((field) => left.has(field));
  return {
    problem: found && isShown ? problemText(found) : null,
    leave: () => {
      for (const field of fields) leave(field);
    },
  };
}
