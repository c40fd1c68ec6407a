/** Half a nanometre: what sums of decimal figures may be off in binary, and far below what anybody measures. */
const ROUNDING = 5e-7;

/** True where a value is more than its limit, both in the same unit. */
export const exceeds = (value: number, limit: number): boolean => value > limit + ROUNDING;

/** A figure without trailing noughts: 0.1, 10, 0.3333. */
export const figure = (value: number): string => String(Number(value.toFixed(4)));

/** A measure with one decimal at least, and no more than four: 1.0, 0.45. */
export function measure(value: number): string {
  const short = figure(value);
  return short.includes(".") ? short : `${short}.0`;
}

const UNIT_SIGNS = { mm: " mm", degrees: "°", pores: "" } as const;
/** What a limit or a sum counts in. */
type Unit = keyof typeof UNIT_SIGNS;

/** A measure with its unit: "0.5 mm", "110°"; a number of pores has none. */
export const withUnit = (value: number, unit: Unit): string =>
  `${unit === "mm" ? measure(value) : figure(value)}${UNIT_SIGNS[unit]}`;
