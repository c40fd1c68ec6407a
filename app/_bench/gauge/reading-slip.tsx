"use client";
import { useEffect, useRef, useState } from "react";
import type { Goal } from "@/lib/bench";
import { nameAsked } from "@/lib/weld";
import { SIZE_LABELS } from "../report/call-words";
import { NumberField } from "../report/number-field";

export interface ReadingSlipProps {
  readonly read: number | null;
  readonly lowest: number;
  readonly highest: number;
  /** Where the reading may go. */
  readonly goals: readonly Goal[] | null;
  /** The reading in words where it has been asked for. */
  readonly explanation: string | null;
  /** What can be asked of it; null where nothing may be. */
  readonly question: string | null;
  readonly onRead: (value: number | null) => void;
  readonly onAsk: () => void;
  readonly onTake: (goal: Goal) => void;
}

const goalWords = (goal: Goal): string =>
  goal.kind === "row" ? `No. ${goal.number}, ${SIZE_LABELS[goal.size].toLowerCase()}` : nameAsked(goal);

/** A slip of paper beside the gauge: what the learner reads, and where it goes from here. */
export function ReadingSlip(props: ReadingSlipProps) {
  const { read, lowest, highest, goals, explanation, question, onRead, onAsk, onTake } = props;
  const [takenInto, setTakenInto] = useState<string | null>(null);
  // another reading is not taken yet
  // biome-ignore lint/correctness/useExhaustiveDependencies: told by the reading alone
  useEffect(() => setTakenInto(null), [read]);
  // in a low panel the words would come up below its edge
  const words = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (explanation) words.current?.scrollIntoView({ block: "nearest" });
  }, [explanation]);
  const button = "min-h-11 w-full rounded border px-2 py-1 text-sm leading-tight";
  return (
    <div className="gauge-slip rounded bg-paper p-2 text-ink" data-reading-slip="">
      <NumberField
        label="You read"
        value={read}
        min={lowest}
        max={highest}
        onChange={onRead}
        onLeave={() => undefined}
      />
      {read !== null &&
        goals?.map((goal) => (
          <button
            key={goal.kind === "row" ? goal.id : nameAsked(goal)}
            type="button"
            className={`${button} mt-1 border-action text-action hover:bg-action hover:text-sheet`}
            onClick={() => {
              onTake(goal);
              setTakenInto(goalWords(goal));
            }}
          >
            Take {Math.abs(read)} into {goalWords(goal)}
          </button>
        ))}
      <p role="status" className="text-found text-xs">
        {takenInto && `Written into the report: ${takenInto}.`}
      </p>
      {read !== null && goals?.length === 0 && (
        <p className="mt-1 text-ink-2 text-xs">Open the row that it belongs to, and it can be taken there.</p>
      )}
      {question && (
        <button
          type="button"
          aria-expanded={explanation !== null}
          className={`${button} mt-1 border-line hover:border-ink-2`}
          onClick={onAsk}
        >
          {question}
        </button>
      )}
      {explanation && (
        <p ref={words} className="mt-1 text-sm leading-snug" role="status">
          {explanation}
        </p>
      )}
    </div>
  );
}
