import { type Formula, iso5817Rows, QUALITY_LEVELS, SYMBOL_FACTS, type SymbolName, workOut } from "../../criteria";
import { isFilletTruth, type Truth } from "../../specimen";
import { tenths } from "../words";
import type { WorkedLimit } from "./worked-limit";

interface WrongLimit {
  readonly value: number;
  readonly why: string;
}

/** Limits that somebody works out by a typical error. */
export function wrongLimits(limit: WorkedLimit, truth: Truth): WrongLimit[] {
  const { formula, values, value } = limit;
  const { atMost, constant, coefficient, symbol, ...none } = formula;
  const put = (other: Formula, why: string): WrongLimit[] => {
    const worked = workOut(other, values);
    return "value" in worked ? [{ value: worked.value, why }] : [];
  };
  const unbounded =
    atMost === undefined
      ? []
      : put({ ...none, constant, ...times(coefficient, symbol) }, `that forgets that it is ${tenths(atMost)} at most`);
  const bound =
    atMost === undefined
      ? []
      : [{ value: atMost, why: "that is the most that the row allows anywhere, and the formula stays below it here" }];
  const lacking =
    constant === undefined || symbol === undefined
      ? []
      : put({ ...times(coefficient, symbol), atMost }, `that forgets the ${tenths(constant)} in the formula`);
  return [
    ...ofOtherLevels(limit),
    ...unbounded,
    ...bound,
    ...lacking,
    ...withOtherSymbols(limit, truth),
    { value: 2 * value, why: "that is twice what the limit comes to" },
    { value: value / 2, why: "that is half of what the limit comes to" },
    { value: 1.5 * value, why: "that adds a half for measuring, which no limit allows" },
    { value: 0.75 * value, why: "that takes a quarter off for safety, which the limit does not ask for" },
  ];
}

const times = (coefficient: number | undefined, symbol: SymbolName | undefined) =>
  symbol === undefined ? {} : { coefficient, symbol };

/** The same row of ISO 5817 at all levels, where the limit is one of its rows. */
function ofOtherLevels({ row, quantity, values, value }: WorkedLimit): WrongLimit[] {
  const table = iso5817Rows(2014).find(({ id, name }) => id === row.id && name === row.name);
  if (!table) return [];
  return QUALITY_LEVELS.flatMap((level) => {
    const other = table.levels[level];
    if (other.kind !== "at-most" || other.quantity !== quantity) return [];
    const worked = workOut(other.formula, values);
    if (!("value" in worked) || Math.abs(worked.value - value) < 1e-9) return [];
    return [{ value: worked.value, why: `that is the limit of quality level ${level} of ISO 5817` }];
  });
}

/** The formula with something else put in for its symbol, such as the thicker plate. */
function withOtherSymbols({ formula, values }: WorkedLimit, truth: Truth): WrongLimit[] {
  const { symbol } = formula;
  if (symbol === undefined) return [];
  const thicker = isFilletTruth(truth) ? Math.max(truth.joint.baseThickness, truth.joint.standingThickness) : undefined;
  const put = (value: number, why: string): WrongLimit[] => {
    const worked = workOut(formula, { [symbol]: value });
    return "value" in worked ? [{ value: worked.value, why }] : [];
  };
  const others = (["t", "b", "a"] as const).filter((other) => other !== symbol && values[other] !== undefined);
  return [
    ...(symbol === "t" && thicker !== undefined ? put(thicker, "that goes by the thicker of the two plates") : []),
    ...others.flatMap((other) =>
      put(
        values[other] as number,
        `that puts ${SYMBOL_FACTS[other].sign} into the formula for ${SYMBOL_FACTS[symbol].sign}`,
      ),
    ),
  ];
}
