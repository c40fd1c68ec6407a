"use client";
import { type Dispatch, type KeyboardEvent, useEffect, useRef } from "react";
import type { WritingEvent } from "@/lib/bench";
import { CAUTION } from "@/lib/criteria";
import type { ChosenOptions } from "@/lib/report";
import type { AskedQuestion } from "@/lib/results";

const LETTERS = ["A", "B", "C", "D"] as const;

export interface QuestionPanelProps {
  readonly questions: readonly AskedQuestion[];
  readonly answers: ChosenOptions;
  /** Which question is shown, from 0. */
  readonly at: number;
  readonly write: Dispatch<WritingEvent>;
  readonly onGoTo: (at: number) => void;
}

/** The questions on the piece, one at a time: a number key chooses, left and right go to the next. */
export function QuestionPanel({ questions, answers, at, write, onGoTo }: QuestionPanelProps) {
  const panel = useRef<HTMLDivElement>(null);
  const question = questions[at];
  const chosen = answers[question.id];
  const count = questions.filter(({ id }) => answers[id] !== undefined).length;
  const stemId = `stem-${question.id}`;
  const choose = (option: number) => write({ kind: "answer", question: question.id, option });

  // whoever goes on by keyboard, or chooses by number, goes on at the answers
  const shown = useRef({ at, chosen });
  useEffect(() => {
    const before = shown.current;
    shown.current = { at, chosen };
    const isHere = panel.current?.contains(document.activeElement);
    if (before.at !== at || (before.chosen !== chosen && isHere)) focusAnswer(panel.current);
  }, [at, chosen]);

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const option = ["1", "2", "3", "4"].indexOf(event.key);
    const next = event.key === "ArrowRight" ? at + 1 : event.key === "ArrowLeft" ? at - 1 : null;
    if (option >= 0) choose(option);
    else if (next !== null) {
      if (questions[next]) onGoTo(next);
    } else return;
    event.preventDefault();
  };

  const step =
    "h-11 flex-1 rounded border border-line bg-sheet px-3 text-sm hover:border-ink-2 disabled:cursor-default disabled:opacity-45";
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: number and arrow keys act wherever the focus is among the questions
    <div ref={panel} onKeyDown={onKeyDown} data-questions="" className="flex h-full min-h-0 flex-col">
      <div className="border-line border-b px-3 py-2">
        <p role="status" className="mb-2 text-ink-2 text-sm">
          {count} of {questions.length} answered
        </p>
        <ol className="grid grid-cols-5 gap-1.5" aria-label="Questions">
          {questions.map(({ id }, n) => {
            const isAnswered = answers[id] !== undefined;
            return (
              <li key={id}>
                <button
                  type="button"
                  aria-current={n === at ? "step" : undefined}
                  aria-label={`Question ${n + 1}, ${isAnswered ? "answered" : "not answered"}`}
                  className={`h-11 w-full rounded border font-semibold tabular-nums aria-[current]:outline-3 aria-[current]:outline-lamp ${isAnswered ? "border-ink bg-ink text-sheet" : "border-ink-2 bg-sheet"}`}
                  onClick={() => onGoTo(n)}
                >
                  {n + 1}
                </button>
              </li>
            );
          })}
        </ol>
      </div>
      <div className="min-h-0 flex-1 overflow-y-auto overscroll-contain px-3 py-3">
        <h2 className="text-ink-2 text-sm">
          Question {at + 1} of {questions.length}
        </h2>
        <p id={stemId} className="mt-1 mb-3 font-medium" data-stem="">
          {question.stem}
        </p>
        <div key={question.id} role="radiogroup" aria-labelledby={stemId} className="space-y-2" data-question={at + 1}>
          {question.options.map((option, n) => (
            <label
              key={option}
              className="relative flex min-h-11 cursor-pointer items-center gap-3 rounded border border-line bg-sheet px-2 py-1.5 text-sm has-checked:border-ink has-checked:bg-ink has-checked:text-sheet has-focus-visible:outline-3 has-focus-visible:outline-lamp"
            >
              <input
                type="radio"
                name={question.id}
                checked={chosen === n}
                onChange={() => choose(n)}
                className="sr-only"
              />
              <span
                aria-hidden="true"
                className="grid size-7 shrink-0 place-items-center rounded-full border border-current font-semibold"
              >
                {LETTERS[n]}
              </span>
              <span>{option}</span>
            </label>
          ))}
        </div>
        <div className="mt-4 flex gap-2">
          <button type="button" className={step} disabled={at === 0} onClick={() => onGoTo(at - 1)}>
            Previous
          </button>
          <button type="button" className={step} disabled={at === questions.length - 1} onClick={() => onGoTo(at + 1)}>
            Next
          </button>
        </div>
        <p className="mt-3 text-ink-2 text-xs">
          Keys 1 to 4 choose, left and right go to the question before or after. You can change your answers until you
          hand in, and go on measuring meanwhile.
        </p>
        <p className="mt-2 text-ink-2 text-xs">{CAUTION}</p>
      </div>
    </div>
  );
}

/** To the chosen option of the question that is shown, or to the first one. */
export function focusAnswer(within: Element | null): void {
  const radios = within?.querySelectorAll<HTMLInputElement>("[data-question] input");
  const checked = Array.from(radios ?? []).find((radio) => radio.checked);
  (checked ?? radios?.[0])?.focus();
}
