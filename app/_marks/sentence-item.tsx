"use client";
import type { ReactNode } from "react";
import { SENTENCE_NAMES } from "@/lib/report";
import type { SentenceLine } from "@/lib/results";
import { sentenceStory, sentenceVerdict } from "./sentence-words";
import { TickedLine } from "./ticked-line";

interface SentenceItemProps {
  readonly line: SentenceLine;
  readonly title: string;
  readonly isPiece: boolean;
  readonly isChosen: boolean;
  /** What it is about, or what decides it, is a miss that is still covered. */
  readonly isCovered: boolean;
  onChoose(): void;
  readonly note?: ReactNode;
}

/** One sentence: closed whether it is right and its marks; open what follows from the report and from the truth. */
export function SentenceItem({ line, title, isPiece, isChosen, isCovered, onChoose, note }: SentenceItemProps) {
  const isRight = line.earned === line.worth;
  // the right answer to a covered miss stays covered with it
  const verdict = isCovered && !isPiece ? "missed, so there is no sentence" : sentenceVerdict(line, isPiece);
  return (
    <TickedLine
      title={title}
      verdict={verdict}
      isRight={isRight}
      earned={line.earned}
      worth={line.worth}
      isChosen={isChosen}
      onChoose={onChoose}
      note={note}
    >
      {isCovered ? (
        <p>
          {isPiece ? "What decides on the piece is one that you missed" : "You missed this one"}: look for it, or
          uncover it among the indications above.
        </p>
      ) : (
        <Account line={line} isPiece={isPiece} />
      )}
    </TickedLine>
  );
}

function Account({ line, isPiece }: { readonly line: SentenceLine; readonly isPiece: boolean }) {
  const { written, fromWritten, fromTruth } = line;
  const rows = [
    ["You wrote", written ? SENTENCE_NAMES[written] : "nothing"],
    [
      "From your report",
      fromWritten?.text ?? (line.callIds.length === 0 ? "nothing: it is not in it" : "nothing: it has no name"),
    ],
    ["From what is there", fromTruth.text],
  ] as const;
  return (
    <>
      <p>{sentenceStory(line, isPiece)}</p>
      <dl className="mt-2">
        {rows.map(([term, text]) => (
          <div key={term} className="grid gap-x-3 border-line/70 border-t py-1 sm:grid-cols-[9rem_1fr]">
            <dt className="text-ink-2">{term}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}
