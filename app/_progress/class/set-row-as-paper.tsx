"use client";

import { useActionState } from "react";
import type { FormProblem } from "@/app/_server/form-state";
import { type ImperfectionType, imperfection } from "@/lib/imperfections";

type Told = { readonly done: string; readonly problem: null } | { readonly problem: FormProblem };

/** Makes a paper of the types that a form names and leads to it, or tells what is wrong. */
export type SetAsPaper = (before: Told | null, form: FormData) => Promise<Told>;

interface SetRowAsPaperProps {
  readonly classId: string;
  readonly type: ImperfectionType;
  readonly set: SetAsPaper;
}

/** Makes a paper of one type that a class misses. */
export function SetRowAsPaper({ classId, type, set }: SetRowAsPaperProps) {
  const [told, send, isSending] = useActionState(set, null);
  return (
    <form action={send}>
      <input type="hidden" name="class" value={classId} />
      <input type="hidden" name="types" value={type} />
      <button
        type="submit"
        disabled={isSending}
        aria-label={`Set as a paper: ${imperfection(type).name}`}
        className="flex min-h-8 cursor-pointer items-center rounded text-action underline underline-offset-4 disabled:cursor-wait disabled:opacity-60 pointer-coarse:min-h-11"
      >
        Set as a paper
      </button>
      {told?.problem && (
        <p role="alert" className="max-w-56 whitespace-normal font-medium text-missed">
          {told.problem.message}
        </p>
      )}
    </form>
  );
}
