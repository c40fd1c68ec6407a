"use client";
import type { Call } from "@/lib/report";
import type { AccountLine, SectionResult } from "@/lib/results";
import { LineItem } from "./line-item";
import { marks } from "./line-words";
import type { TruthView } from "./sheet-view";
import { verdictWords } from "./summary-words";

interface SectionAccountProps {
  readonly result: SectionResult;
  readonly truths: readonly TruthView[];
  readonly calls: readonly Call[];
  readonly chosen: AccountLine | null;
  isCovered(line: AccountLine): boolean;
  onChoose(line: AccountLine): void;
  onUncover(line: AccountLine): void;
}

/** One section: its verdict against its own threshold, then the account that adds up to it. */
export function SectionAccount(props: SectionAccountProps) {
  const { result, truths, calls, chosen } = props;
  const name = result.section === "cap" ? "Cap face" : "Root face";
  return (
    <section aria-labelledby={`section-${result.section}`} className="rounded-md border border-line bg-sheet">
      <div className="p-4">
        <div className="flex items-baseline justify-between gap-4">
          <h2 id={`section-${result.section}`} className="text-lg font-semibold">
            {name}
          </h2>
          <p className={`text-lg font-bold ${result.passed ? "text-found" : "text-missed"}`}>
            {result.passed ? "✓ Passed" : "✗ Not passed"}
          </p>
        </div>
        <ThresholdBar result={result} />
        <p className="mt-2 text-sm text-ink-2">{verdictWords(result)}</p>
      </div>
      <ol>
        {result.lines.map((line, at) => (
          <LineItem
            // biome-ignore lint/suspicious/noArrayIndexKey: the account is a stored value and never changes its order
            key={at}
            line={line}
            truths={truths.filter((truth) => line.truthIds.includes(truth.id))}
            calls={calls.filter((call) => line.callIds.includes(call.id))}
            isChosen={line === chosen}
            isCovered={props.isCovered(line)}
            onChoose={() => props.onChoose(line)}
            onUncover={() => props.onUncover(line)}
          />
        ))}
      </ol>
      <p className="flex justify-between border-t-2 border-ink-2 px-3 py-2 font-semibold">
        <span>All lines together</span>
        <span>
          {marks(result.mark)} <span className="font-normal text-ink-2">shown as {result.shown.toFixed(1)}</span>
        </span>
      </p>
    </section>
  );
}

function ThresholdBar({ result }: { readonly result: SectionResult }) {
  const { shown, passMark, passed } = result;
  return (
    <div className="mt-3">
      <div className="relative h-5 bg-paper-2" aria-hidden="true">
        <div className={`h-full ${passed ? "bg-found" : "bg-missed"}`} style={{ width: `${shown}%` }} />
        <div className="absolute -top-1 -bottom-1 w-0.5 bg-ink" style={{ left: `${passMark}%` }} />
      </div>
      <div className="relative mt-1 h-5 text-xs text-ink-2" aria-hidden="true">
        <span
          className="absolute -translate-x-1/2 whitespace-nowrap"
          style={{ left: `${Math.min(92, Math.max(8, passMark))}%` }}
        >
          needs {passMark}
        </span>
      </div>
    </div>
  );
}
