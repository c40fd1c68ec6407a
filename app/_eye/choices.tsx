"use client";
import { useEffect } from "react";

export interface Choice<Value> {
  readonly value: Value;
  readonly words: string;
}

interface ChoicesProps<Value> {
  readonly choices: readonly Choice<Value>[];
  /** What was chosen, once it is told; null before. */
  readonly chosen: Value | null;
  /** What is right, once it is told; null before. */
  readonly right: Value | null;
  readonly onChoose: (value: Value) => void;
  readonly isInRow?: boolean;
}

/** A few answers to choose from by pointer, by touch or by their number. Once it is told, signs say which is right and which was chosen. */
export function Choices<Value extends string | number | boolean>(props: ChoicesProps<Value>) {
  const { choices, chosen, right, onChoose, isInRow = false } = props;
  const isTold = right !== null;
  useNumberKeys(
    isTold
      ? []
      : choices.map(
          ({ value }) =>
            () =>
              onChoose(value),
        ),
  );
  return (
    <ul className={`grid gap-2 ${isInRow ? "grid-cols-2" : ""}`}>
      {choices.map(({ value, words }, n) => {
        const sign = !isTold ? null : value === right ? "right" : value === chosen ? "wrong" : "other";
        return (
          <li key={String(value)}>
            <button
              type="button"
              disabled={isTold}
              data-choice={n + 1}
              onClick={() => onChoose(value)}
              className={`flex min-h-12 w-full items-center gap-3 rounded border px-3 py-2 text-left font-medium ${looks(sign)}`}
            >
              <kbd className="grid size-6 shrink-0 place-items-center rounded border border-current text-sm">
                {n + 1}
              </kbd>
              <span className="min-w-0 flex-1">{words}</span>
              {sign === "right" && (
                <Sign words={value === chosen ? "right, your answer" : "right"} path="M2 6.5 5 9.5 10 3" />
              )}
              {sign === "wrong" && <Sign words="your answer" path="M3 3 9 9M9 3 3 9" />}
            </button>
          </li>
        );
      })}
    </ul>
  );
}

function looks(sign: "right" | "wrong" | "other" | null): string {
  switch (sign) {
    case null:
      return "cursor-pointer border-ink-2 bg-sheet hover:bg-paper-2";
    case "right":
      return "border-2 border-found bg-sheet text-found";
    case "wrong":
      return "border-2 border-missed border-dashed bg-sheet text-missed";
    case "other":
      return "border-line bg-sheet text-ink-2";
  }
}

const Sign = ({ words, path }: { readonly words: string; readonly path: string }) => (
  <>
    <span className="sr-only">({words})</span>
    <svg viewBox="0 0 12 12" className="size-4 shrink-0" aria-hidden="true">
      <path d={path} fill="none" stroke="currentColor" strokeWidth="2" />
    </svg>
  </>
);

/** The keys 1, 2, 3... do the acts in their order, wherever the focus is, unless somebody types. */
function useNumberKeys(acts: readonly (() => void)[]) {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.repeat) return;
      if (event.target instanceof HTMLInputElement) return;
      const act = acts[Number(event.key) - 1];
      if (!act) return;
      event.preventDefault();
      act();
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  });
}
