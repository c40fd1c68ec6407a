import { faultOf, readNumber } from "@/app/_bench/report/read-number";

/** What somebody typed as an answer: a number within bounds, or what is wrong with it. Point and comma both do. */
export function readAnswer(
  text: string,
  lowest: number,
  highest: number,
  nothing: string,
): { readonly value: number } | { readonly problem: string } {
  const read = readNumber(text);
  if (read === null) return { problem: nothing };
  const fault = faultOf(read, lowest, highest, "mm");
  if (read === undefined) return { problem: `“${text.trim()}” is no number. ${fault}` };
  return fault ? { problem: fault } : { value: read };
}

/** A number as people write it: a true minus sign, no needless noughts. */
export const spell = (value: number, digits = 2): string => String(Number(value.toFixed(digits)) + 0).replace("-", "−");

/** A length as people write it, never parted from its unit. */
export const inMm = (value: number, digits = 2): string => `${spell(value, digits)}\u00a0mm`;
