import { roundTo } from "../math";
import type { Choice } from "./kind";
import { hundredths, tenths } from "./words";

/** A length measured to tenths of a millimetre, as an option. */
export const measuredChoice = (value: number, why: string): Choice => ({
  text: tenths(value),
  value: roundTo(value, 0.1),
  why,
});

/** A length worked out to hundredths of a millimetre, as an option. */
export const workedChoice = (value: number, why: string): Choice => ({
  text: hundredths(value),
  value: roundTo(value, 0.01),
  why,
});

/** A length or place in whole millimetres, as an option. */
export const wholeChoice = (value: number, why: string): Choice => ({
  text: `${Math.round(value)} mm`,
  value: Math.round(value),
  why,
});

/** A number of things, as an option. */
export const countChoice = (value: number, why: string): Choice => ({ text: String(value), value, why });

/** Wrong lengths have to be lengths that somebody could have measured. */
export const positive = (choices: readonly Choice[]): Choice[] =>
  choices.filter(({ value }) => value !== undefined && Number.isFinite(value) && value > 0);
