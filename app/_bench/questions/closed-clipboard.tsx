"use client";
import { type ReactNode, useState } from "react";
import { QuestionPanel, type QuestionPanelProps } from "./question-panel";

interface ClosedClipboardProps extends QuestionPanelProps {
  /** The report as it was closed. */
  readonly report: ReactNode;
}

/** The clipboard once the report is closed: the questions, and behind them the report to look things up in. */
export function ClosedClipboard({ report, ...asking }: ClosedClipboardProps) {
  const [shows, setShows] = useState<"questions" | "report">("questions");
  const side = (which: typeof shows, words: string) => (
    <button
      type="button"
      aria-pressed={shows === which}
      className="h-11 flex-1 rounded border border-line bg-sheet px-2 text-sm aria-pressed:border-ink aria-pressed:bg-ink aria-pressed:font-semibold aria-pressed:text-sheet"
      onClick={() => setShows(which)}
    >
      {words}
    </button>
  );
  return (
    <section aria-label="Questions" className="flex h-full min-h-0 flex-col bg-paper text-ink">
      <header className="flex gap-2 border-line border-b px-3 py-2">
        {side("questions", "Questions")}
        {side("report", "Report, closed")}
      </header>
      <div className="min-h-0 flex-1">{shows === "questions" ? <QuestionPanel {...asking} /> : report}</div>
    </section>
  );
}
