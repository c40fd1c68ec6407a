import type { Mm } from "../math";

/** Something along the weld: spread evenly from `from` to `to`, or all at one place where the two are alike. */
export interface Load {
  readonly from: Mm;
  readonly to: Mm;
  readonly amount: number;
}

/** A stretch of weld and what lies in it. */
export interface Window {
  readonly from: Mm;
  readonly to: Mm;
  readonly sum: number;
}

/** A window in micrometres, with the loads that it reaches. */
interface Filled extends Window {
  readonly holds: (load: Load) => boolean;
}

/** Places are compared as whole micrometres: whether two of them are 100 mm apart must not hang on binary fractions. */
const micrometres = (place: Mm): number => Math.round(place * 1000);

const inMicrometres = (loads: readonly Load[]): Load[] =>
  loads.map(({ from, to, amount }) => ({ from: micrometres(from), to: micrometres(to), amount }));

/**
 * Windows among which the fullest is, whatever their sums: exact, since the sum of a window that slides along is a straight line
 * between places where one of its ends passes an end of a load. A window has either its first place or its last one to itself but
 * not both: two pores exactly 100 mm apart are not in the same 100 mm. It is never longer than the weld.
 */
function fullWindows(loads: readonly Load[], width: number, length: number): Filled[] {
  if (width >= length) {
    const sum = loads.reduce((total, { amount }) => total + amount, 0);
    return [{ from: 0, to: length, sum, holds: () => true }];
  }
  const last = length - width;
  const starts = loads
    .flatMap(({ from, to }) => [from, to, from - width, to - width])
    .filter((start) => start > 0 && start < last);
  return [...new Set([0, ...starts, last])]
    .sort((a, b) => a - b)
    .flatMap((from) => [filled(loads, from, from + width, "first"), filled(loads, from, from + width, "last")]);
}

function filled(loads: readonly Load[], from: number, to: number, own: "first" | "last"): Filled {
  const isIn = (place: number) => (own === "first" ? place >= from && place < to : place > from && place <= to);
  const within = (load: Load) => {
    if (load.from === load.to) return isIn(load.from) ? load.amount : 0;
    const overlap = Math.min(load.to, to) - Math.max(load.from, from);
    return overlap > 0 ? (load.amount * overlap) / (load.to - load.from) : 0;
  };
  const sum = loads.reduce((total, load) => total + within(load), 0);
  // a stretch that the window only touches counts: moved on by a hair, the window has some of it and as good as the same sum
  const holds = (load: Load) => (load.from === load.to ? isIn(load.from) : load.from <= to && load.to >= from);
  return { from, to, sum, holds };
}

const fullest = (windows: readonly Filled[]): Filled =>
  windows.reduce((best, next) => (next.sum > best.sum ? next : best));

const inMm = ({ from, to, sum }: Filled): Window => ({ from: from / 1000, to: to / 1000, sum });

/** The fullest window of that width (mm) on a weld of that length, the first of equals. Loads lie on the weld. */
export const worstWindow = (loads: readonly Load[], width: Mm, length: Mm): Window =>
  inMm(fullest(fullWindows(inMicrometres(loads), micrometres(width), micrometres(length))));

/** For each load the fullest window that reaches it, in their own order. */
export function worstWindows(loads: readonly Load[], width: Mm, length: Mm): Window[] {
  const exact = inMicrometres(loads);
  const windows = fullWindows(exact, micrometres(width), micrometres(length));
  return exact.map((load) => inMm(fullest(windows.filter(({ holds }) => holds(load)))));
}
