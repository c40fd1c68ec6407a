"use client";
import type { ReactNode } from "react";
import { FACE_WORDS } from "@/app/_ui/section-names";
import type { QuestionLine } from "@/lib/results";
import { extentWords } from "./line-words";
import { TickedLine } from "./ticked-line";

const LETTERS = ["A", "B", "C", "D"] as const;

interface QuestionItemProps {
  readonly line: QuestionLine;
  readonly number: number;
  readonly isChosen: boolean;
  onChoose(): void;
  readonly note?: ReactNode;
}

/** One question: closed whether it was answered rightly and its marks; open the options, which was right, and why. */
export function QuestionItem({ line, number, isChosen, onChoose, note }: QuestionItemProps) {
  const { stem, options, key, written, explanation, place } = line;
  const isRight = written === key;
  const verdict = written === null ? "not answered" : `${LETTERS[written]}: ${isRight ? "right" : "wrong"}`;
  return (
    <TickedLine
      title={`${number}. ${stem}`}
      verdict={verdict}
      isRight={isRight}
      earned={line.earned}
      worth={line.worth}
      isChosen={isChosen}
      onChoose={onChoose}
      note={note}
    >
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
    </TickedLine>
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
