"use client";

import { type DraftRange, EMPTY_RANGE } from "./draft";
import { Choice, SmallButton, TextLine } from "./fields";
import { SYMBOL_CHOICES } from "./formula-fields";

interface RangeFieldsProps {
  /** Row in the schema: "rows 1". */
  readonly at: string;
  readonly ranges: readonly DraftRange[];
  readonly onChange: (ranges: readonly DraftRange[]) => void;
}

/** Where a row holds: none, or ranges that must all hold. */
export function RangeFields({ at, ranges, onChange }: RangeFieldsProps) {
  const change = (n: number, part: Partial<DraftRange>) =>
    onChange(ranges.map((range, m) => (m === n ? { ...range, ...part } : range)));
  return (
    <fieldset className="min-w-0">
      <legend className="font-semibold text-sm">Where it holds</legend>
      {ranges.length === 0 && <p className="text-ink-2 text-sm">On every thickness.</p>}
      {ranges.map((range, n) => {
        const place = `${at}, ranges ${n + 1}`;
        return (
          <div
            // biome-ignore lint/suspicious/noArrayIndexKey: ranges have no name, and their fields hold no state
            key={n}
            className="mt-2 grid grid-cols-2 items-start gap-3 sm:grid-cols-[repeat(4,minmax(0,1fr))_auto]"
          >
            <div className="col-span-full">
              <Choice
                label="Range of"
                value={range.symbol}
                choices={SYMBOL_CHOICES}
                onChange={(symbol) => change(n, { symbol })}
              />
            </div>
            <Choice
              label="Lower edge"
              value={range.lowEdge}
              choices={[
                ["over", "over"],
                ["from", "from"],
              ]}
              onChange={(lowEdge) => change(n, { lowEdge })}
            />
            <TextLine
              fields={[`${place}, from`, `${place}, over`]}
              label="Least"
              unit="mm"
              isNumber
              value={range.low}
              onChange={(low) => change(n, { low })}
            />
            <Choice
              label="Upper edge"
              value={range.highEdge}
              choices={[
                ["upTo", "up to"],
                ["under", "under"],
              ]}
              onChange={(highEdge) => change(n, { highEdge })}
            />
            <TextLine
              fields={[`${place}, upTo`, `${place}, under`]}
              label="Most"
              unit="mm"
              isNumber
              value={range.high}
              onChange={(high) => change(n, { high })}
            />
            <div className="sm:mt-6">
              <SmallButton
                label="Remove"
                name={`Remove range ${n + 1}`}
                onClick={() => onChange(ranges.filter((_, m) => m !== n))}
              />
            </div>
          </div>
        );
      })}
      <SmallButton label="Add a range of thickness" onClick={() => onChange([...ranges, EMPTY_RANGE])} />
    </fieldset>
  );
}
