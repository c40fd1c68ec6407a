import { GAUGES } from "../../gauges";
import type { Mm } from "../../math";
import { nameSlip, type Slip } from "./slips";
import type { ReadingTask } from "./task";

export interface ReadingVerdict {
  /** Within the resolution of the gauge: one step of its scale to either side. */
  readonly isRight: boolean;
  /** Typed less right, mm. */
  readonly error: Mm;
  /** What explains a wrong reading, if anything common does. */
  readonly slip: Slip | null;
}

/** Compares what was typed with what the scale shows: of a vernier at 23.72, 23.6 to 23.8 is right. */
export function judgeReading({ kind, key }: Pick<ReadingTask, "kind" | "key">, typed: Mm): ReadingVerdict {
  const error = Math.round((typed - key) * 1e6) / 1e6 + 0;
  const isRight = Math.abs(error) <= GAUGES[kind].step + 1e-9;
  return { isRight, error, slip: isRight ? null : nameSlip(kind, key, typed) };
}
