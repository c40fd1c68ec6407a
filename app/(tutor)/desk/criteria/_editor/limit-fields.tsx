"use client";

import { LENGTHS, type Limit, QUANTITIES, QUANTITY_FACTS, type Quantity } from "@/lib/criteria";
import type { DraftLimit } from "./draft";
import { Choice, TextLine, Tick } from "./fields";
import { FormulaFields } from "./formula-fields";

const KINDS: readonly (readonly [Limit["kind"], string])[] = [
  ["not-permitted", "Not permitted"],
  ["at-most", "At most so large"],
  ["at-least", "At least so large"],
  ["permitted", "Permitted by itself, whatever its size"],
  ["depends", "Needs a decision or a condition"],
  ["not-by-eye", "Not judged by eye"],
  ["area-at-most", "At most a share of the area"],
];

export const quantityChoices = <Q extends Quantity>(quantities: readonly Q[]) =>
  quantities.map((quantity): readonly [Q, string] => [quantity, QUANTITY_FACTS[quantity].name]);

interface LimitFieldsProps {
  /** Where it stands in the schema: "rows 1, limit". */
  readonly at: string;
  readonly limit: DraftLimit;
  readonly onChange: (limit: DraftLimit) => void;
}

/** What is said of one imperfection by itself. */
export function LimitFields({ at, limit, onChange }: LimitFieldsProps) {
  return (
    <div className="grid gap-3">
      <div className="grid gap-3 sm:grid-cols-2">
        <Choice
          label="Limit"
          value={limit.kind}
          choices={KINDS}
          onChange={(kind) => {
            const isLength = LENGTHS.some((one) => one === limit.quantity);
            onChange({ ...limit, kind, quantity: kind === "at-most" && !isLength ? "depth" : limit.quantity });
          }}
        />
        {(limit.kind === "at-most" || limit.kind === "at-least") && (
          <Choice
            fields={[`${at}, quantity`]}
            label="What is measured"
            value={limit.quantity}
            choices={limit.kind === "at-most" ? quantityChoices(LENGTHS) : quantityChoices(QUANTITIES)}
            onChange={(quantity: Quantity) => onChange({ ...limit, quantity })}
          />
        )}
      </div>
      <OfKind at={at} limit={limit} onChange={onChange} />
    </div>
  );
}

function OfKind({ at, limit, onChange }: LimitFieldsProps) {
  switch (limit.kind) {
    case "not-permitted":
    case "permitted":
      return null;
    case "at-most":
      return (
        <>
          <FormulaFields
            at={`${at}, formula`}
            formula={limit.formula}
            onChange={(formula) => onChange({ ...limit, formula })}
          />
          <Tick
            label="Only as a short imperfection"
            note="(ISO 5817: 25 mm in any 100 mm)"
            isOn={limit.shortOnly}
            onChange={(shortOnly) => onChange({ ...limit, shortOnly })}
          />
        </>
      );
    case "at-least":
      return (
        <div className="w-40">
          <TextLine
            fields={[`${at}, value`]}
            label="At least"
            unit={QUANTITY_FACTS[limit.quantity].unit}
            isNumber
            value={limit.value}
            onChange={(value) => onChange({ ...limit, value })}
          />
        </div>
      );
    case "depends":
      return (
        <div className="grid gap-3 sm:grid-cols-2">
          <Choice
            label="It depends on"
            value={limit.on}
            choices={[
              ["application", "what the piece is for"],
              ["condition", "a condition that the bench does not know"],
            ]}
            onChange={(on) => onChange({ ...limit, on })}
          />
          <TextLine
            fields={[`${at}, text`]}
            label="In words"
            value={limit.text}
            hint="Read as the limit: “for the designer to decide”."
            onChange={(text) => onChange({ ...limit, text })}
          />
        </div>
      );
    case "not-by-eye":
      return (
        <TextLine
          fields={[`${at}, needs`]}
          label="What it takes instead"
          value={limit.needs}
          hint="Another test, such as “a macro section”."
          onChange={(needs) => onChange({ ...limit, needs })}
        />
      );
    case "area-at-most":
      return (
        <div className="w-40">
          <TextLine
            fields={[`${at}, percent`]}
            label="At most"
            unit="%"
            isNumber
            value={limit.percent}
            onChange={(percent) => onChange({ ...limit, percent })}
          />
        </div>
      );
  }
}
