"use client";
import type { ReactNode } from "react";
import { marks } from "./line-words";

interface TickedLineProps {
  readonly title: string;
  readonly verdict: string;
  readonly isRight: boolean;
  /** Thousandths of a mark. */
  readonly earned: number;
  readonly worth: number;
  readonly isChosen: boolean;
  onChoose(): void;
  /** What is told once it is open. */
  readonly children: ReactNode;
  /** What stands under it whether it is open or not. */
  readonly note?: ReactNode;
}

/** A line of the mark sheet that is right or wrong: closed a tick or a cross, its title and its marks; on paper it is open. */
export function TickedLine({
  title,
  verdict,
  isRight,
  earned,
  worth,
  isChosen,
  onChoose,
  children,
  note,
}: TickedLineProps) {
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
          <span className="font-semibold">{marks(earned)}</span>
          <span className="text-ink-2 text-sm"> of {marks(worth)}</span>
        </span>
      </button>
      <div className={`px-3 pb-4 text-sm xl:pl-13 print:block ${isChosen ? "" : "hidden"}`}>{children}</div>
      {note}
    </li>
  );
}
