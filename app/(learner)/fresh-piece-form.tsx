"use client";

import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { PassMarkFields } from "@/app/_ui/pass-mark-fields";
import type { NotChosen } from "@/lib/practice";
import type { Section } from "@/lib/results";
import type { PassMarks } from "@/lib/workshop";
import type { takeFreshPiece } from "./actions";
import { BeingChosen } from "./being-chosen";
import type { CriteriaChoice } from "./criteria-choice";
import { CriteriaFields } from "./criteria-fields";

export interface FreshPieceFormProps {
  readonly take: typeof takeFreshPiece;
  readonly passMarks: PassMarks;
  readonly criteria: CriteriaChoice;
  readonly canStart: boolean;
  /** Of which sections a piece was chosen for the learner and waits. */
  readonly chosen: readonly Section[];
  /** Why none is being chosen; null where one is. */
  readonly notChosen: NotChosen | null;
  /** A plate lies unfinished on the bench: the next one is chosen by what comes of it. */
  readonly hasPlate: boolean;
  readonly isSecond: boolean;
}

const NOT_CHOSEN: Readonly<Record<NotChosen, string>> = {
  "in-sitting": "No piece is chosen for you while a sitting of yours goes on. The next one is chosen after it.",
  "no-practice": "Take one, and from then on your next piece is chosen by what you find.",
};

/**
 * Takes the plate or the fillet weld that was chosen for the learner, or any fresh one, with other criteria and other marks to
 * reach for whoever wants them.
 */
export function FreshPieceForm({
  take,
  passMarks,
  criteria,
  canStart,
  chosen,
  notChosen,
  hasPlate,
  isSecond,
}: FreshPieceFormProps) {
  const [problem, send] = useActionState(take, null);
  const isPlateNext = chosen.includes("plate");
  const plain = isSecond ? "text-ink-2" : "text-bench-dim";
  const dim = isSecond ? "text-ink-2 hover:text-ink" : "text-bench-dim hover:text-bench-text";
  return (
    <form action={send} className="mt-5">
      {problem && (
        <div className="mb-4 text-ink">
          <Notice>{problem.message}</Notice>
        </div>
      )}
      <div className="flex flex-wrap gap-3 empty:hidden">
        {(isPlateNext || (!hasPlate && notChosen === null)) && (
          <Button
            type="submit"
            name="chosen"
            value="plate"
            look={isSecond ? "quiet" : "lamp"}
            isLarge={!isSecond}
            disabled={!canStart}
          >
            Inspect your next plate
          </Button>
        )}
        {chosen.includes("fillet") && (
          <Button
            type="submit"
            name="chosen"
            value="fillet"
            look={isSecond ? "quiet" : "dark"}
            isLarge={!isSecond}
            disabled={!canStart}
          >
            Inspect your next fillet weld
          </Button>
        )}
      </div>
      <div role="status" className={`mt-2 text-sm ${plain}`}>
        {isPlateNext ? (
          <p>It is kept for you alone.</p>
        ) : notChosen ? (
          <p>{NOT_CHOSEN[notChosen]}</p>
        ) : hasPlate ? (
          <p>Your next plate is chosen once you hand in the one on your bench.</p>
        ) : (
          <BeingChosen />
        )}
      </div>
      <p className={`mt-5 text-sm ${plain}`}>
        {chosen.length === 0 && notChosen ? "Take" : "Or take"} any, as chance has it:
      </p>
      <div className="mt-2 flex flex-wrap gap-3">
        {(["plate", "fillet"] as const).map((section) => (
          <Button
            key={section}
            type="submit"
            name="any"
            value={section}
            look={isSecond ? "quiet" : "dark"}
            disabled={!canStart}
          >
            {section === "plate" ? "Inspect a fresh plate" : "Inspect a fillet weld"}
          </Button>
        ))}
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
