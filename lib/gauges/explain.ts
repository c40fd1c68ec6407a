import { type Mm, roundTo } from "../math";
import { GAUGES, type GaugeKind } from "./kinds";
import { readVernier, type Vernier } from "./vernier";

/** What a gauge shows at a place on its scale, in the steps by which one reads it. */
export interface ExplainedReading {
  readonly value: Mm;
  readonly words: string;
}

/** "What does it read?" for a part that stands at `position` on the scale, mm. */
export function explainReading(kind: GaugeKind, position: Mm): ExplainedReading {
  const { vernier, step } = GAUGES[kind];
  if (vernier !== null) return explainVernier(position, { parts: vernier, unit: 1 });
  const value = roundTo(position, step) + 0;
  return {
    value,
    words: `The index stands nearest the line at ${spell(value)} mm. The scale is read to ${spell(step)} mm.`,
  };
}

/** The vernier explained: main scale, coinciding line, and their sum. */
export function explainVernier(position: Mm, vernier: Vernier): ExplainedReading {
  const { main, line, value } = readVernier(position, vernier);
  const part = vernier.unit / vernier.parts;
  const below = main < 0 ? " The main scale counts down below nought; the vernier still counts up from there." : "";
  const coincides =
    line === 0
      ? "The vernier's nought stands over a line itself, so nothing is added."
      : `Vernier line ${line} stands over a line of the main scale: ${line} × ${spell(part)} = ${spell(line * part)} mm.`;
  return {
    value,
    words: `The vernier's nought stands at or just past ${spell(main)} mm.${below} ${coincides} Together ${spell(main)} + ${spell(line * part)} = ${spell(value)} mm.`,
  };
}

/** Numbers as they are engraved: a true minus sign, no needless noughts. */
const spell = (value: number): string => String(Math.round(value * 1e6) / 1e6 + 0).replace("-", "−");
