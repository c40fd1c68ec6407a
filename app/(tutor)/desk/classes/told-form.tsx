"use client";

import { type ReactNode, useActionState } from "react";
import type { FormProblem } from "@/app/_server/form-state";
import { Notice } from "@/app/_ui/notice";
import { useFirstProblem } from "@/app/_ui/use-first-problem";

/** What came of a form: a sentence on what was done, or what is wrong. */
export type Told = { readonly done: string; readonly problem: null } | { readonly problem: FormProblem };

interface ToldFormProps {
  readonly action: (before: Told | null, form: FormData) => Promise<Told>;
  readonly children: (problem: FormProblem | null) => ReactNode;
  readonly className?: string;
}

/** A form that says above its fields what came of it. */
export function ToldForm({ action, children, className = "mt-3 space-y-4" }: ToldFormProps) {
  const [told, send] = useActionState(action, null);
  const problem = told?.problem ?? null;
  const form = useFirstProblem(problem);
  return (
    <form ref={form} action={send} className={className}>
      {problem && <Notice>{problem.message}</Notice>}
      {told?.problem === null && <Notice isGood>{told.done}</Notice>}
      {children(problem)}
    </form>
  );
}
