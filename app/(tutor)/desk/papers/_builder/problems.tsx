"use client";

import { createContext, type ReactNode, useContext } from "react";
import { type Problems, problemText } from "./draft";

interface Shown {
  readonly problems: Problems;
  /** Fields that have been left once; null once saving was tried, when every field is to say what is wrong. */
  readonly left: ReadonlySet<string> | null;
  readonly leave: (field: string) => void;
}

const ShownProblems = createContext<Shown>({ problems: {}, left: new Set(), leave: () => undefined });

export function ProblemsAtFields({ children, ...shown }: Shown & { readonly children: ReactNode }) {
  return <ShownProblems value={shown}>{children}</ShownProblems>;
}

const idOf = (field: string): string => `problem-${field.replace(/[^A-Za-z0-9]+/g, "-")}`;

/** What a control of a field needs: whether it is wrong, by what it is described, and what to call when it is left. */
export function useField(field: string) {
  const { problems, left, leave } = useContext(ShownProblems);
  const isWrong = field in problems && (left === null || left.has(field));
  return {
    onBlur: () => leave(field),
    "aria-invalid": isWrong || undefined,
    "aria-describedby": isWrong ? idOf(field) : undefined,
  };
}

/** What is wrong in the fields of a sentence, under it; `of` gives each field its name on the page. */
export function ProblemLines({ of }: { readonly of: Readonly<Record<string, string>> }) {
  const { problems, left } = useContext(ShownProblems);
  return Object.entries(of)
    .filter(([field]) => field in problems && (left === null || left.has(field)))
    .map(([field, name]) => (
      <p key={field} id={idOf(field)} className="font-medium text-missed text-sm">
        {name}: {problemText(problems[field])}
      </p>
    ));
}
