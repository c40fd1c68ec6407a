"use client";
import type { ReactNode } from "react";
import { CLUTTER_WORDS } from "@/lib/imperfections";
import type { Call } from "@/lib/report";
import type { AccountLine } from "@/lib/results";
import { lineWords, marks, vagueStretch } from "./line-words";
import { PartTable } from "./part-table";
import type { TruthView } from "./sheet-view";
import { SIGNS, Sign } from "./sign";
import { LookAtMiss } from "./trail/miss-looks";

interface LineItemProps {
  readonly line: AccountLine;
  readonly truths: readonly TruthView[];
  readonly calls: readonly Call[];
  readonly isChosen: boolean;
  /** A miss keeps its answer covered until the reader asks for it. */
  readonly isCovered: boolean;
  /** Which of the section's misses it is, counted along the weld. */
  readonly missNumber: number;
  onChoose(): void;
  onUncover(): void;
  /** What stands under it whether it is open or not. */
  readonly note?: ReactNode;
}

/** One line of the account: closed a sign, a title and its marks; open the whole arithmetic. */
export function LineItem({
  line,
  truths,
  calls,
  isChosen,
  isCovered,
  missNumber,
  onChoose,
  onUncover,
  note,
}: LineItemProps) {
  const { title, story } = lineWords(line, truths, calls);
  const signWords = line.clutter
    ? `no imperfection, but ${CLUTTER_WORDS[line.clutter.kind].name}`
    : SIGNS[line.kind].words;
  const hasArithmetic = line.parts.length > 0 || line.cost !== 0;
  return (
    <li className={`break-inside-avoid border-t border-line ${isChosen ? "bg-paper-2" : ""}`}>
      <button
        type="button"
        aria-expanded={isChosen}
        onClick={onChoose}
        className="flex min-h-12 w-full cursor-pointer items-center gap-3 px-3 py-2 text-left hover:bg-paper-2"
      >
        <Sign kind={line.kind} />
        <span className="min-w-0 flex-1">
          <span className="block font-medium">
            {isCovered ? `Miss ${missNumber}: look again ${vagueStretch(truths[0]).words}` : title}
          </span>
          <span className="block text-sm text-ink-2">{signWords}</span>
        </span>
        <span className="text-right whitespace-nowrap">
          <span className="font-semibold">{marks(line.earned)}</span>
          {line.worth > 0 && <span className="text-sm text-ink-2"> of {marks(line.worth)}</span>}
        </span>
      </button>
      {!isChosen && !isCovered && hasArithmetic && (
        <div className="hidden px-3 pb-3 print:block">
          <p className="text-sm">{story}</p>
          <PartTable line={line} />
        </div>
      )}
      {isChosen && (
        <div className="px-3 pb-4 xl:pl-13">
          {isCovered ? (
            <>
              <p className="text-sm">
                You missed one here. Take the torch and look for it on the plate before you read on.
              </p>
              <button
                type="button"
                onClick={(event) => {
                  // the button goes away: the focus belongs on its line, not on the page
                  event.currentTarget.closest("li")?.querySelector("button")?.focus();
                  onUncover();
                }}
                className="mt-2 min-h-11 cursor-pointer rounded border border-ink-2 bg-sheet px-4 font-medium hover:bg-paper"
              >
                Show me what was there
              </button>
            </>
          ) : (
            <>
              <p className="text-sm">{story}</p>
              <LookAtMiss line={line} truths={truths} />
              {hasArithmetic && <PartTable line={line} />}
            </>
          )}
        </div>
      )}
      {note}
    </li>
  );
}
