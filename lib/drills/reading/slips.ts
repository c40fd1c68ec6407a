import { GAUGES, type GaugeKind } from "../../gauges";
import type { Mm } from "../../math";

/** The ways in which scales are commonly misread. Common practice, no source. */
const SLIPS = [
  "sign",
  "below-nought",
  "line-as-mm",
  "wrong-end",
  "counted-back",
  "whole-mm",
  "ten-mm",
  "parts-left-out",
  "parts-only",
  "decimal-point",
] as const;
export type Slip = (typeof SLIPS)[number];

/** How a scale is divided: by a vernier, by a hand on a dial, or by the lines of a rule. */
type Division = "vernier" | "dial" | "rule";

/** A value as it is put together: `whole` mm at or before it, and `parts` tenths from there, 0 to under 10. */
interface Composed {
  readonly value: Mm;
  readonly whole: Mm;
  readonly parts: number;
}

interface SlipRow {
  readonly on: readonly Division[];
  /** What is read instead. */
  readonly reads: (right: Composed) => readonly Mm[];
  readonly words: string;
}

const ALL: readonly Division[] = ["vernier", "dial", "rule"];

const ROWS: Readonly<Record<Slip, SlipRow>> = {
  sign: {
    on: ["vernier", "dial"],
    reads: ({ value }) => [-value],
    words: "The sign is the other one: below the scale’s nought a minus belongs before the number, above it none.",
  },
  "below-nought": {
    on: ["vernier", "dial"],
    reads: ({ value, whole, parts }) => (value < 0 ? [whole - parts / 10, whole + 1 - parts / 10] : []),
    words:
      "Below nought the tenths still count upward from the lower whole number: −3 and seven tenths is −2.3, not −3.7 or −2.7.",
  },
  "line-as-mm": {
    on: ["vernier"],
    reads: ({ whole, parts }) => (parts > 0 ? [whole + parts, whole + parts + parts / 10] : []),
    words:
      "The vernier line was read as whole mm. Whole mm stand before the vernier’s nought; the line that coincides tells tenths.",
  },
  "wrong-end": {
    on: ["vernier"],
    reads: ({ value, whole }) => [value + 9, value + 10, whole + 9, whole + 10],
    words: "The whole mm were read at the wrong end of the vernier: they stand before its 0, not before its 10.",
  },
  "counted-back": {
    on: ["vernier", "dial"],
    reads: ({ whole, parts }) => [whole + 1 - parts / 10],
    words: "The small lines were counted from the wrong end. They count upward from the lower number.",
  },
  "whole-mm": {
    on: ALL,
    reads: ({ value }) => [value - 1, value + 1],
    words: "It is one whole mm out: take the last mm line that the index, or the vernier’s nought, has reached.",
  },
  "ten-mm": {
    on: ["vernier", "rule"],
    reads: ({ value }) => [value - 10, value + 10, value - 5, value + 5],
    words: "It is counted from the wrong numbered line: five or ten mm out.",
  },
  "parts-left-out": {
    on: ["vernier", "dial"],
    reads: ({ whole, parts }) => (parts > 0 ? [whole, whole + 1] : []),
    words: "Only the whole mm were read. The tenths are still to be added.",
  },
  "parts-only": {
    on: ["vernier"],
    reads: ({ whole, parts }) => (whole !== 0 ? [parts / 10] : []),
    words: "Only the tenths were read. The whole mm stand before the vernier’s nought.",
  },
  "decimal-point": {
    on: ALL,
    reads: ({ value }) => [value * 10, value / 10],
    words: "The decimal point stands in the wrong place: the scale is read in mm.",
  },
};

const divisionOf = (kind: GaugeKind): Division =>
  GAUGES[kind].vernier !== null ? "vernier" : kind === "steel-rule" ? "rule" : "dial";

/** Which slip explains what was typed instead of the right value, if any: nameSlip("height-gauge", -2.3, 2.3) = "sign". */
export function nameSlip(kind: GaugeKind, right: Mm, typed: Mm): Slip | null {
  const division = divisionOf(kind);
  const tenths = Math.round(right * 10);
  const whole = Math.floor(tenths / 10);
  const composed: Composed = { value: right, whole, parts: tenths - 10 * whole };
  // what is typed more finely than the scale can be read belongs to the nearest step
  const near = (value: Mm) => Math.abs(value - typed) < 0.499 * GAUGES[kind].step;
  return (
    SLIPS.find((slip) => {
      const { on, reads } = ROWS[slip];
      return on.includes(division) && reads(composed).some(near);
    }) ?? null
  );
}

export const slipWords = (slip: Slip): string => ROWS[slip].words;
