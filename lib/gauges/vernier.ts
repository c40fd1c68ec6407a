import type { Mm } from "../math";

/**
 * A vernier: `parts` divisions as long as `parts - 1` of the main scale's. With 10 parts on a millimetre scale each of
 * them is 0.9 mm, and the line that coincides tells tenths. Positions and readings in divisions of the main scale
 * (`unit` mm each).
 */
export interface Vernier {
  readonly parts: number;
  readonly unit: Mm;
}

/** The vernier of the tray's gauges: 9 mm in 10 parts. */
export const TENTHS: Vernier = { parts: 10, unit: 1 };

export interface VernierReading {
  /** The line of the main scale just before the vernier's nought, mm. */
  readonly main: Mm;
  /** Number of the vernier line that stands over a line of the main scale, 0 .. parts - 1. */
  readonly line: number;
  /** Both together, mm: main + line * unit / parts. */
  readonly value: Mm;
}

/** Reads the position of the vernier's nought on the main scale: readVernier(23.72) is main 23, line 7, value 23.7. */
export function readVernier(position: Mm, vernier: Vernier = TENTHS): VernierReading {
  const { parts, unit } = vernier;
  const steps = Math.floor((position * parts) / unit + 0.5 + 1e-9);
  const whole = Math.floor(steps / parts);
  const line = steps - whole * parts;
  return { main: whole * unit, line, value: tidy((steps * unit) / parts) };
}

/** How far vernier line `line` stands beyond the nearest line of the main scale, mm; 0 where the two coincide. */
export function missOfLine(position: Mm, line: number, { parts, unit }: Vernier = TENTHS): Mm {
  const at = position + (line * unit * (parts - 1)) / parts;
  return at - Math.round(at / unit) * unit;
}

/** Places of the vernier's lines, mm from its nought: 0, 0.9, 1.8 ... 9 for tenths. */
export const vernierLines = ({ parts, unit }: Vernier = TENTHS): readonly Mm[] =>
  Array.from({ length: parts + 1 }, (_, n) => tidy((n * unit * (parts - 1)) / parts));

/** Places of lines between two ends of a scale, mm: scaleLines(-1, 1, 0.5) = -1, -0.5, 0, 0.5, 1. */
export function scaleLines(from: Mm, to: Mm, step: Mm): readonly Mm[] {
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, n) => tidy((first + n) * step));
}

/** Without what binary fractions leave behind. */
const tidy = (value: number): number => Math.round(value * 1e9) / 1e9 + 0;
