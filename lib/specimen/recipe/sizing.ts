import { type Imperfection, type ImperfectionType, imperfection, isImperfectionType } from "../../imperfections";
import { mix } from "../../math";
import type { RandomStream } from "../../random";
import type { Process } from "../../weld";
import { type SizeBand, VISIBILITY } from "../difficulty";
import { type Yield, yieldOf } from "./expected-sizes";
import { LIMITS } from "./limits";
import type { FeatureRow, Range } from "./rows";

/** What may be asked of a row so that what is measured will most likely be as wanted. */
export interface Sizing {
  readonly variant: string | undefined;
  /** Severities, mm: one or several stretches, none of them empty. */
  readonly severities: readonly Range[];
  /** Lengths along the weld, mm. */
  readonly length: Range;
}

/** Asked sizes keep this many standard deviations inside what is wanted. */
const SURE = 1.7;
/** As many above what is recorded at all: one that comes out smaller is drawn anew, and small ones have no other place. */
const SURE_RECORDED = 0.8;
/** Above 1: small imperfections are commoner than large ones. */
const SMALL_ONES = 1.3;

/** Catalogue entry of what a row plants; undefined for harmless features and clutter. */
export const entryOf = ({ type }: FeatureRow): Imperfection | undefined =>
  isImperfectionType(type) ? imperfection(type) : undefined;

const isPoint = (row: FeatureRow): boolean => row.length[1] === 0;

/** Whether the length decides how large the type looks. */
export const goesByLength = (row: FeatureRow): boolean =>
  !isPoint(row) && VISIBILITY[row.type as ImperfectionType].measure === "length";

/**
 * The ways in which a row can give an imperfection of a size band, one for each of its variants that can; empty where
 * none can. With `clearOfLimits`, sizes that might come out within the uncertainty of a limit are left out.
 */
export function sizingsOf(
  row: FeatureRow,
  band: "any" | SizeBand,
  clearOfLimits: boolean,
  process?: Process,
): Sizing[] {
  const variants = row.variants ? [...new Set(row.variants)] : [undefined];
  return variants
    .map((variant) => sizingOf(row, variant, band, clearOfLimits, process))
    .filter((sizing) => sizing !== null);
}

function sizingOf(
  row: FeatureRow,
  variant: string | undefined,
  band: "any" | SizeBand,
  clearOfLimits: boolean,
  process: Process | undefined,
): Sizing | null {
  const entry = entryOf(row);
  if (!entry) return band === "any" ? { variant, severities: [row.severity], length: row.length } : null;
  const type = row.type as ImperfectionType;
  const came = yieldOf(row, variant, process);
  const wanted = bandRange(type, band);
  const byLength = goesByLength(row);
  const severity =
    entry.size === null
      ? row.severity
      : meet(row.severity, severityRange([entry.recordedFrom, Infinity], came, SURE_RECORDED));
  const steady = Math.min(came.steadyFrom, row.severity[1]);
  const seen = byLength
    ? severity && meet(severity, [band === "any" ? 0 : steady, Number.POSITIVE_INFINITY])
    : severity && meet(severity, severityRange(wanted, came));
  const recorded = isPoint(row) ? row.length : meet(row.length, lengthRange([entry.recordedLength, Infinity], came));
  const length = byLength ? recorded && meet(recorded, lengthRange(wanted, came)) : recorded;
  if (!seen || !length) return null;
  const severities = clearOfLimits ? withoutLimits(seen, type, came) : [seen];
  return severities.length > 0 ? { variant, severities, length } : null;
}

function bandRange(type: ImperfectionType, band: "any" | SizeBand): Range {
  const [smallBelow, largeFrom] = VISIBILITY[type].bands;
  switch (band) {
    case "any":
      return [0, Number.POSITIVE_INFINITY];
    case "small":
      return [0, smallBelow];
    case "medium":
      return [smallBelow, largeFrom];
    case "large":
      return [largeFrom, Number.POSITIVE_INFINITY];
  }
}

const meet = (a: Range, b: Range): Range | null => {
  const low = Math.max(a[0], b[0]);
  const high = Math.min(a[1], b[1]);
  return low <= high ? [low, high] : null;
};

/** A narrow band is asked for in its middle part of this share at least, however unsure what will come. */
const LEAST_SHARE = 0.3;

/** Severities whose yield most likely lies within a range; bounds of 0 and infinity bind nothing. */
function severityRange([least, most]: Range, { perSeverity, severitySpread }: Yield, sure = SURE): Range {
  const narrow = Number.isFinite(most) ? ((1 - LEAST_SHARE) * (most - least)) / (most + least) : 0.9;
  const unsure = Math.min(sure * severitySpread, narrow * perSeverity);
  return [least / (perSeverity - unsure), most / (perSeverity + unsure)];
}

/** Lengths asked whose measured length most likely lies within a range. */
function lengthRange([least, most]: Range, { perLength, lengthGain, lengthSpread }: Yield): Range {
  const narrow = Number.isFinite(most) ? ((1 - LEAST_SHARE) * (most - least)) / 2 : Number.POSITIVE_INFINITY;
  const unsure = Math.min(SURE * lengthSpread, narrow);
  const asked = (length: number) => (length - lengthGain) / perLength;
  return [least === 0 ? 0 : asked(least + unsure), asked(most - unsure)];
}

function withoutLimits(range: Range, type: ImperfectionType, came: Yield): Range[] {
  const limits = LIMITS[type];
  if (!limits) return [range];
  let left: Range[] = [range];
  for (const at of limits.at) {
    const below = severityRange([0, at - limits.uncertainty], came)[1];
    const above = severityRange([at + limits.uncertainty, Number.POSITIVE_INFINITY], came)[0];
    left = left.flatMap(([low, high]): Range[] =>
      [meet([low, high], [0, below]), meet([low, high], [above, Number.POSITIVE_INFINITY])].filter(
        (part) => part !== null,
      ),
    );
  }
  return left;
}

/** A severity out of those allowed, small ones oftener. */
export function drawSeverity({ severities }: Sizing, random: RandomStream): number {
  const total = severities.reduce((sum, [low, high]) => sum + high - low, 0);
  let left = total * random.uniform(0, 1) ** SMALL_ONES;
  for (const [low, high] of severities) {
    if (left <= high - low) return low + left;
    left -= high - low;
  }
  return severities[severities.length - 1][1];
}

/** A length out of those allowed; `eagerness` 0 as drawn .. 1 as short as allowed. */
export const drawLength = ({ length }: Sizing, share: number, eagerness: number): number =>
  mix(mix(length[0], length[1], share), length[0], eagerness);
