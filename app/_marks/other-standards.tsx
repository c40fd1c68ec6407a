"use client";
import { useMemo, useState } from "react";
import { CAUTION, OUTCOME_NAMES, type Outcome } from "@/lib/criteria";
import { imperfection } from "@/lib/imperfections";
import { COMPARED_SETS, judgedBy } from "./compared-sets";
import { extentWords } from "./line-words";
import type { SheetView } from "./sheet-view";

interface OtherStandardsProps {
  readonly sheet: SheetView;
}

/** What differs in shape as well as in colour. */
const OUTCOME_SIGNS: Readonly<Record<Outcome, { readonly sign: string; readonly tone: string }>> = {
  accept: { sign: "✓", tone: "text-found" },
  reject: { sign: "✗", tone: "text-missed" },
  "cannot-be-judged": { sign: "?", tone: "text-partly" },
  "not-covered": { sign: "–", tone: "text-ink-2" },
};

/** How each standard would have judged what was really on the piece; it names everything that was there. */
export function OtherStandards({ sheet }: OtherStandardsProps) {
  const [isOpen, setIsOpen] = useState(false);
  return (
    <details
      className="mt-5 rounded-md border border-line bg-sheet print:hidden"
      onToggle={(event) => setIsOpen(event.currentTarget.open)}
    >
      <summary className="min-h-11 cursor-pointer p-3 font-semibold">
        How would standards judge this piece?{" "}
        <span className="font-normal text-ink-2 text-sm">It names everything that was there, your misses too.</span>
      </summary>
      {isOpen && <Judged sheet={sheet} />}
    </details>
  );
}

function Judged({ sheet }: OtherStandardsProps) {
  const truths = useMemo(() => sheet.truths.filter(({ neutral }) => !neutral), [sheet.truths]);
  const judged = useMemo(
    () => COMPARED_SETS.map((set) => ({ set, sentence: judgedBy(sheet, truths, set.criteria) })),
    [sheet, truths],
  );
  const [asked, setAsked] = useState<{ readonly row: number; readonly set: number } | null>(null);
  return (
    <div className="border-line border-t p-3">
      <p className="mb-2 max-w-4xl text-ink-2 text-sm">
        Each imperfection as it really was, under the limits of each standard. Choose a sign to read the limit with the
        numbers put in. ✓ accept, ✗ reject, ? cannot be judged with the eye and these measures, – no limit given.
      </p>
      <div className="overflow-x-auto">
        <table className="w-full border-collapse text-sm">
          <thead className="text-left text-ink-2 text-xs">
            <tr>
              <th scope="col" className="py-1 pr-2 font-medium">
                Imperfection
              </th>
              {COMPARED_SETS.map(({ short, criteria }) => (
                <th key={criteria.id} scope="col" className="px-1 py-1 text-center font-medium" title={criteria.name}>
                  {short}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {truths.map((truth, row) => (
              <tr key={truth.id} className="border-line/70 border-t">
                <th scope="row" className="py-1 pr-2 text-left font-normal">
                  {imperfection(truth.type).name}, {extentWords(truth.start, truth.end)}
                  {truth.size !== null && <span className="text-ink-2"> · {truth.size.toFixed(1)} mm</span>}
                </th>
                {judged.map(({ set, sentence }, at) => (
                  <td key={set.criteria.id} className="px-1 text-center">
                    <OutcomeButton
                      outcome={sentence.sentences[row].outcome}
                      label={`${set.criteria.name}, ${imperfection(truth.type).name}`}
                      isPressed={asked?.row === row && asked.set === at}
                      onClick={() => setAsked({ row, set: at })}
                    />
                  </td>
                ))}
              </tr>
            ))}
            <tr className="border-ink-2 border-t-2 font-semibold">
              <th scope="row" className="py-2 pr-2 text-left">
                The piece as a whole
              </th>
              {judged.map(({ set, sentence }) => (
                <td key={set.criteria.id} className="px-1 text-center">
                  <OutcomeSign outcome={sentence.outcome} />
                </td>
              ))}
            </tr>
          </tbody>
        </table>
      </div>
      <p role="status" className="mt-2 min-h-12 max-w-4xl text-sm">
        {asked && (
          <>
            <b>{judged[asked.set].set.criteria.name}.</b> {judged[asked.set].sentence.sentences[asked.row].text}
          </>
        )}
      </p>
      <p className="mt-1 max-w-4xl text-ink-2 text-xs">{CAUTION}</p>
    </div>
  );
}

interface OutcomeButtonProps {
  readonly outcome: Outcome;
  readonly label: string;
  readonly isPressed: boolean;
  readonly onClick: () => void;
}

function OutcomeButton({ outcome, label, isPressed, onClick }: OutcomeButtonProps) {
  return (
    <button
      type="button"
      aria-pressed={isPressed}
      aria-label={`${label}: ${OUTCOME_NAMES[outcome]}`}
      className="mx-auto grid size-11 cursor-pointer place-items-center rounded hover:bg-paper-2 aria-pressed:bg-paper-2 aria-pressed:outline-2 aria-pressed:outline-ink"
      onClick={onClick}
    >
      <OutcomeSign outcome={outcome} isQuiet />
    </button>
  );
}

function OutcomeSign({ outcome, isQuiet = false }: { readonly outcome: Outcome; readonly isQuiet?: boolean }) {
  const { sign, tone } = OUTCOME_SIGNS[outcome];
  return (
    <>
      <span aria-hidden="true" className={`text-base ${tone}`}>
        {sign}
      </span>
      {!isQuiet && <span className="sr-only">{OUTCOME_NAMES[outcome]}</span>}
    </>
  );
}
