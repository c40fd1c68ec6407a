import {
  type Criterion,
  type Formula,
  QUANTITY_FACTS,
  type Quantity,
  type SymbolValues,
  workOut,
} from "../../criteria";
import type { RandomStream } from "../../random";
import type { Material } from "../kind";
import { clearRow, type OnFace, valuesFor } from "./clear-row";

/** A limit in numbers: one row, nothing to be added up, nothing else to be known. */
export interface WorkedLimit extends OnFace {
  readonly row: Criterion;
  readonly quantity: Exclude<Quantity, "toe-angle" | "length">;
  readonly formula: Formula;
  /** mm */
  readonly value: number;
  /** The rule with the numbers put in, or null where there are none to put in. */
  readonly worked: string | null;
  readonly values: SymbolValues;
}

/** The limit on a type on a face in numbers, or null where it is none of that kind. */
export function workedLimit({ criteria }: Material, on: OnFace, values: SymbolValues): WorkedLimit | null {
  const row = clearRow(criteria, on.type, on.face, values);
  if (row?.limit.kind !== "at-most" || row.limit.shortOnly || row.sums.length > 0 || row.alsoNeeds) return null;
  const { quantity, formula } = row.limit;
  const worked = workOut(formula, values);
  if (!("value" in worked) || quantity === "length" || worked.value <= 0) return null;
  return { ...on, row, quantity, formula, value: worked.value, worked: worked.text, values };
}

/** One of the limits on some types in numbers, or null where the set has none. */
export function drawLimit(material: Material, on: readonly OnFace[], random: RandomStream): WorkedLimit | null {
  const values = valuesFor(material.truth, random);
  const limits = on.flatMap((one) => workedLimit(material, one, values) ?? []);
  return limits.length === 0 ? null : random.pick(limits);
}

export const quantityName = (quantity: Quantity): string => QUANTITY_FACTS[quantity].name;
