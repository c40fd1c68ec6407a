import type { Measure, Report } from "../report";
import type { DimensionLine, DimensionsResult, DimensionTolerances, StatementLine } from "../results";
import type { DimensionTruth, StatementTruth, Truth } from "../specimen";
import type { Stated } from "../weld";
import { apportion } from "./apportion";
import { earnedShare, rampFor } from "./ramp";

/** Nothing is earned from this many times the tolerance on. */
const NONE = 2;

/**
 * Marks measured dimensions and statements against the truth. Each is worth the same. A dimension earns in full up to its
 * tolerance and nothing from twice that on; where the largest or the least along the weld is asked for, the value counts,
 * wherever it was measured. A statement earns all or nothing.
 */
export function markDimensions(
  truth: Pick<Truth, "dimensions" | "statements">,
  report: Pick<Report, "measures" | "statements">,
  tolerances: DimensionTolerances,
  whole: number,
): DimensionsResult {
  const worth = apportion(
    whole,
    [...truth.dimensions, ...truth.statements].map(() => 1),
  );
  const lines = truth.dimensions.map((one, n) => dimensionLine(one, report.measures, tolerances, worth[n]));
  const statements = truth.statements.map((one, n) => statementLine(one, report.statements, worth[lines.length + n]));
  const earned = [...lines, ...statements].reduce((sum, line) => sum + line.earned, 0);
  return { part: "dimensions", worth: whole, earned, lines, statements };
}

function dimensionLine(
  { dimension, station, value, at, along }: DimensionTruth,
  measures: readonly Measure[],
  tolerances: DimensionTolerances,
  worth: number,
): DimensionLine {
  const written = measures.find((measure) => measure.dimension === dimension && measure.station === station);
  const ramp = rampFor({ full: tolerances[dimension], share: 0, none: NONE }, 0);
  const error = written?.value == null ? null : Math.round(1000 * Math.abs(written.value - value));
  return {
    dimension,
    station,
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

function statementLine(
  { statement, right, value, limit }: StatementTruth,
  stated: readonly Stated[],
  worth: number,
): StatementLine {
  const written = stated.find((one) => one.statement === statement)?.answer ?? null;
  const isRight = written !== null && right.includes(written);
  return { statement, written, right, value, limit, worth, earned: isRight ? worth : 0 };
}
