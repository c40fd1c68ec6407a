"use client";

import { SYMBOL_FACTS, SYMBOLS, type SymbolName } from "@/lib/criteria";
import type { DraftFormula } from "./draft";
import { Choice, TextLine } from "./fields";

export const SYMBOL_CHOICES = SYMBOLS.map((symbol): readonly [SymbolName, string] => [
  symbol,
  `${SYMBOL_FACTS[symbol].sign}: ${SYMBOL_FACTS[symbol].name}`,
]);

interface FormulaFieldsProps {
  /** Where it stands in the schema: "rows 1, limit, formula". */
  readonly at: string;
  readonly formula: DraftFormula;
  readonly onChange: (formula: DraftFormula) => void;
}

/** Constant + coefficient × symbol, and at most so much. */
export function FormulaFields({ at, formula, onChange }: FormulaFieldsProps) {
  const field = (name: keyof DraftFormula) => [`${at}, ${name}`];
  return (
    <div className="grid grid-cols-2 gap-3 sm:grid-cols-[7rem_7rem_minmax(0,1fr)_7rem]">
      <TextLine
        fields={field("constant")}
        label="Constant"
        unit="mm"
        isNumber
        value={formula.constant}
        onChange={(constant) => onChange({ ...formula, constant })}
      />
      <TextLine
        fields={field("coefficient")}
        label="+ coefficient"
        isNumber
        value={formula.coefficient}
        onChange={(coefficient) => onChange({ ...formula, coefficient })}
      />
      <Choice<SymbolName | "">
        fields={field("symbol")}
        label="× symbol"
        value={formula.symbol}
        choices={[["", "none"], ...SYMBOL_CHOICES]}
        onChange={(symbol) => onChange({ ...formula, symbol })}
      />
      <TextLine
        fields={field("atMost")}
        label="Capped at"
        unit="mm"
        isNumber
        value={formula.atMost}
        onChange={(atMost) => onChange({ ...formula, atMost })}
      />
    </div>
  );
}
