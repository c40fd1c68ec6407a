/** Bounds a value: clamp(7, 0, 5) = 5. */
export function clamp(value: number, low: number, high: number): number {
  return value < low ? low : value > high ? high : value;
}

/** Straight-line mix: mix(2, 4, 0.25) = 2.5. Not bounded. */
export function mix(from: number, to: number, share: number): number {
  return from + (to - from) * share;
}

/** Length of (a, b): hypot(3, 4) = 5. `Math.hypot` guards against overflow, and takes ten times as long. */
export function hypot(a: number, b: number): number {
  return Math.sqrt(a * a + b * b);
}

/** Cubic ease from 0 at `from` to 1 at `to` (the edges may run downwards): ease(0, 2, 1) = 0.5. */
export function ease(from: number, to: number, value: number): number {
  const share = (value - from) / (to - from);
  // bounds written out: called for every pixel, and a nested call would be left standing as one
  return share <= 0 ? 0 : share >= 1 ? 1 : share * share * (3 - 2 * share);
}

/** Rounds to a step, half away from zero: roundTo(1.25, 0.1) = 1.3. */
export function roundTo(value: number, step: number): number {
  const steps = Math.abs(value) / step;
  return (Math.sign(value) * Math.floor(steps + 0.5 + 1e-9) * Math.round(step * 1e9)) / 1e9;
}

/** Where few values are ranked: thousands of medians are taken of every face, and memory of its own costs more than each of them. */
const RANKED = new Float64Array(256);

/** Middle value; of an even number the mean of the two in the middle: median([3, 1, 2]) = 2. NaN of none, and NaN counts as greatest. With `count` of the first so many alone. */
export function median(values: ArrayLike<number>, count = values.length): number {
  if (count === 0) return Number.NaN;
  const ranked = count > RANKED.length ? new Float64Array(count) : RANKED;
  const isOrdered = copyInto(ranked, values, count);
  const middle = count >> 1;
  // what is not a number cannot be compared: sorting puts it last
  if (isOrdered) partition(ranked, count, middle);
  else ranked.subarray(0, count).sort();
  if (count % 2 === 1) return ranked[middle];
  let below = ranked[0];
  for (let n = 1; n < middle; n++) if (ranked[n] > below) below = ranked[n];
  return 0.5 * (below + ranked[middle]);
}

/** Brings the value of a rank to its place, none greater before it and none smaller after it (Hoare, "Find", 1961): a fraction of a sort's work. */
function partition(values: Float64Array, count: number, rank: number): void {
  let first = 0;
  let last = count - 1;
  while (first < last) {
    const pivot = values[(first + last) >> 1];
    let i = first;
    let j = last;
    while (i <= j) {
      while (values[i] < pivot) i++;
      while (values[j] > pivot) j--;
      if (i > j) break;
      const value = values[i];
      values[i++] = values[j];
      values[j--] = value;
    }
    if (rank <= j) last = j;
    else if (rank >= i) first = i;
    else return;
  }
}

/** Copies values; false where one of them is not a number. */
function copyInto(ranked: Float64Array, values: ArrayLike<number>, count: number): boolean {
  let isOrdered = true;
  for (let n = 0; n < count; n++) {
    ranked[n] = values[n];
    if (Number.isNaN(ranked[n])) isOrdered = false;
  }
  return isOrdered;
}
