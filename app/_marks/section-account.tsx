"use client";
import { SECTION_NAMES } from "@/app/_ui/section-names";
import type { Call } from "@/lib/report";
import type { AccountLine, SectionResult } from "@/lib/results";
import { LineItem } from "./line-item";
import { marks } from "./line-words";
import type { TruthView } from "./sheet-view";

interface SectionAccountProps {
  readonly result: SectionResult;
  readonly truths: readonly TruthView[];
  readonly calls: readonly Call[];
  readonly chosen: AccountLine | null;
  isCovered(line: AccountLine): boolean;
  onChoose(line: AccountLine): void;
  onUncover(line: AccountLine): void;
}

/** The account of one section: lines in plate order that add up to its mark. */
export function SectionAccount(props: SectionAccountProps) {
  const { result, truths, calls, chosen } = props;
  return (
    <section aria-labelledby={`section-${result.section}`} className="rounded-md border border-line bg-sheet">
      <h2 id={`section-${result.section}`} className="break-after-avoid p-3 text-lg font-semibold">
        {SECTION_NAMES[result.section]}, line by line
      </h2>
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
            missNumber={result.lines.slice(0, at + 1).filter(({ kind }) => kind === "missed").length}
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
