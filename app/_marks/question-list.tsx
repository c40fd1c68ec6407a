"use client";
import type { ReactNode } from "react";
import { CAUTION } from "@/lib/criteria";
import type { QuestionLine, QuestionsResult } from "@/lib/results";
import { type LineId, lineId } from "@/lib/review";
import { QuestionItem } from "./question-item";

interface QuestionListProps {
  readonly part: QuestionsResult;
  readonly chosen: QuestionLine | null;
  onChoose(line: QuestionLine): void;
  noteOf(id: LineId): ReactNode;
}

/** The questions that were put, in their order. */
export function QuestionList({ part: { lines }, chosen, onChoose, noteOf }: QuestionListProps) {
  const right = lines.filter(({ written, key }) => written === key).length;
  return (
    <>
      <h3 className="break-after-avoid border-line border-t px-3 pt-4 font-semibold">Questions</h3>
      <p className="px-3 pb-2 text-ink-2 text-sm">
        {right} of {lines.length} answered rightly.
      </p>
      <ol>
        {lines.map((line, n) => (
          <QuestionItem
            key={line.question}
            line={line}
            number={n + 1}
            isChosen={line === chosen}
            onChoose={() => onChoose(line)}
            note={noteOf(lineId("questions", n))}
          />
        ))}
      </ol>
      <p className="border-line border-t px-3 py-2 text-ink-2 text-xs">{CAUTION}</p>
    </>
  );
}
