"use client";

import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { PassMarkFields } from "@/app/_ui/pass-mark-fields";
import type { PassMarks } from "@/lib/workshop";
import type { takeFreshPiece } from "./actions";
import type { CriteriaChoice } from "./criteria-choice";
import { CriteriaFields } from "./criteria-fields";

interface FreshPieceFormProps {
  readonly take: typeof takeFreshPiece;
  readonly passMarks: PassMarks;
  readonly criteria: CriteriaChoice;
  readonly canStart: boolean;
  readonly isSecond: boolean;
}

/** Takes a fresh plate or a fresh fillet weld, with other criteria and other marks to reach for whoever wants them. */
export function FreshPieceForm({ take, passMarks, criteria, canStart, isSecond }: FreshPieceFormProps) {
  const [problem, send] = useActionState(take, null);
  const dim = isSecond ? "text-ink-2 hover:text-ink" : "text-bench-dim hover:text-bench-text";
  return (
    <form action={send} className="mt-5">
      {problem && (
        <div className="mb-4 text-ink">
          <Notice>{problem.message}</Notice>
        </div>
      )}
      <div className="flex flex-wrap gap-3">
        <Button
          type="submit"
          name="section"
          value="plate"
          look={isSecond ? "quiet" : "lamp"}
          isLarge={!isSecond}
          disabled={!canStart}
        >
          Inspect a fresh plate
        </Button>
        <Button
          type="submit"
          name="section"
          value="fillet"
          look={isSecond ? "quiet" : "dark"}
          isLarge={!isSecond}
          disabled={!canStart}
        >
          Inspect a fillet weld
        </Button>
      </div>
      {!canStart && <p className={`mt-3 ${dim}`}>Your bench is full. Hand in one of the unfinished pieces first.</p>}
      <CriteriaFields {...criteria} dim={dim} problem={problem?.fields.criteriaId} />
      <details className="mt-2">
        <summary className={`min-h-6 cursor-pointer rounded text-sm ${dim}`}>
          Marks needed to pass: plate {passMarks.plate}, fillet weld {passMarks.fillet}. Change
        </summary>
        <div className="mt-3 max-w-sm rounded bg-sheet p-4 text-ink">
          <PassMarkFields passMarks={passMarks} />
          <p className="mt-2 text-sm text-ink-2">For the piece that you take now only.</p>
        </div>
      </details>
    </form>
  );
}
