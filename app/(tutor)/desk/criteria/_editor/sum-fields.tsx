"use client";

import { LENGTHS } from "@/lib/criteria";
import { type DraftSum, EMPTY_SUM } from "./draft";
import { Choice, SmallButton, TextLine } from "./fields";
import { FormulaFields } from "./formula-fields";
import { quantityChoices } from "./limit-fields";

interface SumFieldsProps {
  /** Row in the schema: "rows 1". */
  readonly at: string;
  readonly sums: readonly DraftSum[];
  readonly onChange: (sums: readonly DraftSum[]) => void;
}

/** What the imperfections of a row may add up to. */
export function SumFields({ at, sums, onChange }: SumFieldsProps) {
  return (
    <fieldset className="min-w-0">
      <legend className="font-semibold text-sm">Several together</legend>
      {sums.length === 0 && <p className="text-ink-2 text-sm">Nothing is added up.</p>}
      {sums.map((rule, n) => (
        <OneSum
          // biome-ignore lint/suspicious/noArrayIndexKey: rules have no name, and their fields hold no state
          key={n}
          at={`${at}, sums ${n + 1}`}
          number={n + 1}
          rule={rule}
          onChange={(part) => onChange(sums.map((one, m) => (m === n ? { ...one, ...part } : one)))}
          onRemove={() => onChange(sums.filter((_, m) => m !== n))}
        />
      ))}
      <SmallButton label="Add a rule for several together" onClick={() => onChange([...sums, EMPTY_SUM])} />
    </fieldset>
  );
}

interface OneSumProps {
  readonly at: string;
  readonly number: number;
  readonly rule: DraftSum;
  readonly onChange: (part: Partial<DraftSum>) => void;
  readonly onRemove: () => void;
}

function OneSum({ at, number, rule, onChange, onRemove }: OneSumProps) {
  const isFixed = rule.most === "fixed";
  return (
    <div className="mt-2 grid gap-3 border-line border-l-2 pl-3">
      <div className="grid grid-cols-2 items-start gap-3 sm:grid-cols-[minmax(0,1fr)_minmax(0,1fr)_7rem_7rem]">
        <Choice
          label="Added up"
          value={rule.sum}
          choices={[
            ["length", "lengths"],
            ["diameter", "diameters of pores"],
            ["count", "number of pores"],
          ]}
          onChange={(sum) => onChange({ sum })}
        />
        <Choice
          label="Allowed is"
          value={rule.most}
          choices={[
            ["fixed", "a fixed figure"],
            ["share", "a share of the weld's length"],
          ]}
          onChange={(most) => onChange({ most })}
        />
        {isFixed ? (
          <>
            <TextLine
              fields={[`${at}, most, value`]}
              label="At most"
              unit={rule.sum === "count" ? undefined : "mm"}
              isNumber
              value={rule.value}
              onChange={(value) => onChange({ value })}
            />
            <TextLine
              fields={[`${at}, window`]}
              label="In any"
              unit="mm"
              hint="Empty: the whole weld."
              isNumber
              value={rule.window}
              onChange={(window) => onChange({ window })}
            />
          </>
        ) : (
          <TextLine
            fields={[`${at}, most, share`]}
            label="At most"
            unit="%"
            isNumber
            value={rule.share}
            onChange={(share) => onChange({ share })}
          />
        )}
      </div>
      <div className="grid grid-cols-2 items-start gap-3 sm:grid-cols-[minmax(0,1fr)_minmax(0,1fr)_7rem_7rem]">
        <Choice
          label="Counting"
          value={rule.counted}
          choices={[
            ["all", "all of them"],
            ["over", "those over a size"],
            ["from", "those of a size and more"],
          ]}
          onChange={(counted) => onChange({ counted })}
        />
        {rule.counted === "all" ? (
          <span className="max-sm:hidden" />
        ) : (
          <Choice
            fields={[`${at}, counted, quantity`]}
            label="Size is its"
            value={rule.quantity}
            choices={quantityChoices(LENGTHS)}
            onChange={(quantity) => onChange({ quantity })}
          />
        )}
        {isFixed && (
          <>
            <TextLine
              fields={[`${at}, most, shorterWeld, under`]}
              label="Weld under"
              unit="mm"
              hint="May be empty."
              isNumber
              value={rule.shorterUnder}
              onChange={(shorterUnder) => onChange({ shorterUnder })}
            />
            <TextLine
              fields={[`${at}, most, shorterWeld, share`]}
              label="Then at most"
              unit="%"
              isNumber
              value={rule.shorterShare}
              onChange={(shorterShare) => onChange({ shorterShare })}
            />
          </>
        )}
      </div>
      {rule.counted !== "all" && (
        <FormulaFields
          at={`${at}, counted, formula`}
          formula={rule.formula}
          onChange={(formula) => onChange({ formula })}
        />
      )}
      <div>
        <SmallButton label="Remove rule" name={`Remove rule ${number} for several together`} onClick={onRemove} />
      </div>
    </div>
  );
}
