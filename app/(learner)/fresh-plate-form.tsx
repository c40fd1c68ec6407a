"use client";

import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { PassMarkField } from "@/app/_ui/pass-mark-fields";
import type { takeFreshPlate } from "./actions";

interface FreshPlateFormProps {
  readonly take: typeof takeFreshPlate;
  readonly passMark: number;
  readonly canStart: boolean;
  readonly isSecond: boolean;
}

/** Takes a fresh plate, with other marks to reach for whoever wants them. */
export function FreshPlateForm({ take, passMark, canStart, isSecond }: FreshPlateFormProps) {
  const [problem, send] = useActionState(take, null);
  const dim = isSecond ? "text-ink-2 hover:text-ink" : "text-bench-dim hover:text-bench-text";
  return (
    <form action={send} className="mt-5">
      {problem && (
        <div className="mb-4 text-ink">
          <Notice>{problem.message}</Notice>
        </div>
      )}
      <Button type="submit" look={isSecond ? "quiet" : "lamp"} isLarge={!isSecond} disabled={!canStart}>
        Inspect a fresh plate
      </Button>
      {!canStart && <p className={`mt-3 ${dim}`}>Your bench is full. Hand in one of the unfinished plates first.</p>}
      <details className="mt-4">
        <summary className={`cursor-pointer rounded text-sm ${dim}`}>Marks needed to pass: {passMark}. Change</summary>
        <div className="mt-3 max-w-sm rounded bg-sheet p-4 text-ink">
          <PassMarkField name="passMark" label="Marks needed" passMark={passMark} />
          <p className="mt-2 text-sm text-ink-2">For this plate only, both faces and all dimensions together.</p>
        </div>
      </details>
    </form>
  );
}
