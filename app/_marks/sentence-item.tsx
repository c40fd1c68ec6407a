"use client";
import { SENTENCE_NAMES } from "@/lib/report";
import type { SentenceLine } from "@/lib/results";
import { marks } from "./line-words";
import { sentenceStory, sentenceVerdict } from "./sentence-words";

interface SentenceItemProps {
  readonly line: SentenceLine;
  readonly title: string;
  readonly isPiece: boolean;
  readonly isChosen: boolean;
  /** What it is about, or what decides it, is a miss that is still covered. */
  readonly isCovered: boolean;
  onChoose(): void;
}

/** One sentence: closed whether it is right and its marks; open what follows from the report and from the truth. */
export function SentenceItem({ line, title, isPiece, isChosen, isCovered, onChoose }: SentenceItemProps) {
  const isRight = line.earned === line.worth;
  // the right answer to a covered miss stays covered with it
  const verdict = isCovered && !isPiece ? "missed, so there is no sentence" : sentenceVerdict(line, isPiece);
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
          <span className="block font-medium">{title}</span>
          <span className="block text-ink-2 text-sm">{verdict}</span>
        </span>
        <span className="whitespace-nowrap text-right">
          <span className="font-semibold">{marks(line.earned)}</span>
          <span className="text-ink-2 text-sm"> of {marks(line.worth)}</span>
        </span>
      </button>
      <div className={`px-3 pb-4 text-sm xl:pl-13 print:block ${isChosen ? "" : "hidden"}`}>
        {isCovered ? (
          <p>
            {isPiece ? "What decides on the piece is one that you missed" : "You missed this one"}: look for it, or
            uncover it among the indications above.
          </p>
        ) : (
          <Account line={line} isPiece={isPiece} />
        )}
      </div>
    </li>
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
