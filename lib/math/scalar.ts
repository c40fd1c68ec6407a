/** Bounds a value: clamp(7, 0, 5) = 5. */
export function clamp(value: number, low: number, high: number): number {
  return value < low ? low : value > high ? high : value;
}

/** Straight-line mix: mix(2, 4, 0.25) = 2.5. Not bounded. */
export function mix(from: number, to: number, share: number): number {
  return from + (to - from) * share;
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

/** Middle value; of an even number the mean of the two in the middle: median([3, 1, 2]) = 2. NaN of none. */
export function median(values: readonly number[]): number {
  const sorted = new Float64Array(values).sort();
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle] : 0.5 * (sorted[middle - 1] + sorted[middle]);
}
