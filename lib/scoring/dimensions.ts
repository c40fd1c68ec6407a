import type { Measure } from "../report";
import type { DimensionLine, DimensionsResult, DimensionTolerances } from "../results";
import type { DimensionTruth } from "../specimen";
import { apportion } from "./apportion";
import { earnedShare, rampFor } from "./ramp";

/** Nothing is earned from this many times the tolerance on. */
const NONE = 2;

/**
 * Marks measured dimensions against the truth. Each is worth the same; it earns in full up to its tolerance and nothing from
 * twice that on. Where the largest along the weld is asked for, the value counts, wherever it was measured.
 */
export function markDimensions(
  truths: readonly DimensionTruth[],
  measures: readonly Measure[],
  tolerances: DimensionTolerances,
  whole: number,
): DimensionsResult {
  const worth = apportion(
    whole,
    truths.map(() => 1),
  );
  const lines = truths.map((truth, n) => dimensionLine(truth, measures, tolerances, worth[n]));
  return { part: "dimensions", worth: whole, earned: lines.reduce((sum, line) => sum + line.earned, 0), lines };
}

function dimensionLine(
  { dimension, value, at, along }: DimensionTruth,
  measures: readonly Measure[],
  tolerances: DimensionTolerances,
  worth: number,
): DimensionLine {
  const written = measures.find((measure) => measure.dimension === dimension);
  const ramp = rampFor({ full: tolerances[dimension], share: 0, none: NONE }, 0);
  const error = written?.value == null ? null : Math.round(1000 * Math.abs(written.value - value));
  return {
    dimension,
    written: written?.value ?? null,
    writtenAt: written?.at ?? null,
    actual: value,
    actualAt: at,
    actualThere: along && written?.at != null ? valueNear(along, written.at) : null,
    error: error === null ? null : error / 1000,
    tolerance: ramp.full / 1000,
    nothingFrom: ramp.none / 1000,
    worth,
    earned: error === null ? 0 : Math.round((worth * earnedShare(ramp, error)) / 1000),
  };
}

/** What was found nearest to x mm. */
function valueNear(along: NonNullable<DimensionTruth["along"]>, x: number): number | null {
  const near = along.values[Math.round((x - along.from) / along.step)];
  return near ?? null;
}
