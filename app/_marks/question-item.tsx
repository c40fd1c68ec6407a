"use client";
import { FACE_WORDS } from "@/app/_ui/section-names";
import type { QuestionLine } from "@/lib/results";
import { extentWords, marks } from "./line-words";

const LETTERS = ["A", "B", "C", "D"] as const;

interface QuestionItemProps {
  readonly line: QuestionLine;
  readonly number: number;
  readonly isChosen: boolean;
  onChoose(): void;
}

/** One question: closed whether it was answered rightly and its marks; open the options, which was right, and why. */
export function QuestionItem({ line, number, isChosen, onChoose }: QuestionItemProps) {
  const { stem, options, key, written, explanation, place } = line;
  const isRight = written === key;
  const verdict = written === null ? "not answered" : `${LETTERS[written]}: ${isRight ? "right" : "wrong"}`;
  return (
    <li className={`break-inside-avoid border-line border-t ${isChosen ? "bg-paper-2" : ""}`}>
      <button
        type="button"
        aria-expanded={isChosen}
        onClick={onChoose}
        className="flex min-h-12 w-full cursor-pointer items-center gap-3 px-3 py-2 text-left hover:bg-paper-2"
      >
        <span
          aria-hidden="true"
          className={`grid size-7 shrink-0 place-items-center rounded border-2 border-current bg-sheet font-bold ${isRight ? "text-found" : "text-missed"}`}
        >
          {isRight ? "✓" : "✗"}
        </span>
        <span className="min-w-0 flex-1">
          <span className="block font-medium">
            {number}. {stem}
          </span>
          <span className="block text-ink-2 text-sm">{verdict}</span>
        </span>
        <span className="whitespace-nowrap text-right">
          <span className="font-semibold">{marks(line.earned)}</span>
          <span className="text-ink-2 text-sm"> of {marks(line.worth)}</span>
        </span>
      </button>
      <div className={`px-3 pb-4 text-sm xl:pl-13 print:block ${isChosen ? "" : "hidden"}`}>
        <ol>
          {options.map((option, n) => (
            <li key={option} className="grid grid-cols-[1.75rem_1fr_auto] gap-x-2 border-line/70 border-t py-1.5">
              <span className={n === key ? "font-semibold" : "text-ink-2"}>{LETTERS[n]}</span>
              <span className={n === key ? "font-semibold" : ""}>{option}</span>
              <OptionNote isRight={n === key} isWritten={n === written} />
            </li>
          ))}
        </ol>
        <p className="mt-2">{explanation}</p>
        {place && (
          <p className="mt-2 text-ink-2 print:hidden">
            Shown on the piece: {FACE_WORDS[place.face]}, {extentWords(place.start, place.end)}.
          </p>
        )}
      </div>
    </li>
  );
}

function OptionNote({ isRight, isWritten }: { readonly isRight: boolean; readonly isWritten: boolean }) {
  if (!isRight && !isWritten) return <span />;
  return (
    <span className={`whitespace-nowrap font-semibold ${isRight ? "text-found" : "text-missed"}`}>
      <span aria-hidden="true">{isRight ? "✓ " : "✗ "}</span>
      {isRight && isWritten ? "yours, right" : isRight ? "right" : "yours, wrong"}
    </span>
  );
}
