import { GAUGES, type GaugePlacement, type Heights, takeFromTray } from "../../gauges";
import { type Mm, roundTo } from "../../math";
import type { RandomStream } from "../../random";
import type { DrillGauge } from "../drills";
import { largestOf, lengthOfPeak, type Measured, profileOf, valueAt } from "./truth";
import { heightsOfWeld, type LargestWork, lineOf, type Swell } from "./work";

type LargestGauge = DrillGauge<"find-largest">;

/** A weld along which the largest value is sought. It holds its own answer: an exercise with feedback, and no mark. */
export interface LargestTask {
  readonly kind: LargestGauge;
  readonly work: LargestWork;
  readonly heights: Heights;
  /** Across the weld, where the moving part belongs. */
  readonly line: Mm;
  readonly first: GaugePlacement;
  readonly profile: readonly Measured[];
  readonly truth: Measured;
}

/** The highest place is higher than every other swelling by this, mm: it can be told from them by a gauge. */
const APART: Mm = 0.5;

/** Draws a weld with some broad swellings and a short one that is larger than all of them. */
export function drawLargestTask(random: RandomStream, kinds: readonly LargestGauge[]): LargestTask {
  const kind = random.child("kind").pick(kinds);
  for (let trial = 0; ; trial++) {
    const work = drawWeld(random.child(`weld/${trial}`), kind);
    const profile = profileOf(work);
    const truth = largestOf(profile);
    const rest = profile.filter(({ at }) => Math.abs(at - truth.at) > 14);
    if (Math.abs(truth.at - work.swells[0].x) > 1.5 || truth.value - largestOf(rest).value < APART * scaleOf(kind))
      continue;
    const line = lineOf(work);
    const turn = line < 0 ? 270 : 90;
    const first = takeFromTray(kind, { x: random.child("first").pick([10, 140]), y: roundTo(line, 0.1), turn });
    return { kind, work, heights: heightsOfWeld(work), line, first, profile, truth };
  }
}

/** Undercuts are shallower than caps are high. */
const scaleOf = (kind: LargestGauge): number => (kind === "height-gauge" ? 1 : 0.6);

function drawWeld(random: RandomStream, kind: LargestGauge): LargestWork {
  const scale = scaleOf(kind);
  const swell = (by: Mm, reach: Mm): Swell => ({ x: random.uniform(18, 132), by: by * scale, reach });
  const largest = swell(random.uniform(1.3, 2), random.uniform(3.5, 7));
  const broad = Array.from({ length: 3 }, () => swell(random.uniform(0.3, 0.9), random.uniform(9, 20)));
  return {
    sought: kind === "height-gauge" ? "cap" : "undercut",
    side: random.pick([-1, 1] as const),
    half: random.uniform(5.5, 8),
    base: kind === "height-gauge" ? random.uniform(0.8, 1.6) : random.uniform(0.1, 0.3),
    swells: [largest, ...broad],
  };
}

export interface LargestVerdict {
  readonly isRight: boolean;
  readonly isValueRight: boolean;
  readonly isPlaceRight: boolean;
  /** Typed less true, mm. */
  readonly error: Mm;
  /** From the true place, mm along the weld. */
  readonly beside: Mm;
  /** The largest that was under the gauge where it was read; null where it was read nowhere. */
  readonly passed: Measured | null;
  /** The widest stretch of weld between two places where it was read, or between one and the end of the weld, mm. */
  readonly widestGap: Mm;
  /** Along the weld, where no more than the tolerance is missing from the largest, mm. */
  readonly peakLength: Mm;
}

/** What a value may be out: one step of the scale and twice what seating adds to it. Common practice, no source. */
const largestTolerance = (kind: LargestGauge): Mm => GAUGES[kind].step + 2 * GAUGES[kind].noise;
/** What a place may be out, mm: about a gauge's thickness. Common practice, no source. */
const PLACE_TOLERANCE: Mm = 3;

/** Compares what was found, and where, with the metal. `read` are the places at which the gauge was brought to the metal. */
export function judgeLargest(
  { kind, profile, truth }: Pick<LargestTask, "kind" | "profile" | "truth">,
  found: Measured,
  read: readonly Mm[],
): LargestVerdict {
  const tolerance = largestTolerance(kind);
  const error = found.value - truth.value;
  const beside = Math.abs(found.at - truth.at);
  const isValueRight = Math.abs(error) <= tolerance + 1e-9;
  // on a long peak one place is as good as another
  const isPlaceRight = beside <= PLACE_TOLERANCE + 1e-9 || valueAt(profile, found.at) >= truth.value - tolerance;
  const ends = [profile[0].at, ...[...read].sort((a, b) => a - b), profile[profile.length - 1].at];
  return {
    isRight: isValueRight && isPlaceRight,
    isValueRight,
    isPlaceRight,
    error,
    beside,
    passed: read.length === 0 ? null : largestOf(read.map((at) => ({ at, value: valueAt(profile, at) }))),
    widestGap: ends.slice(1).reduce((widest, at, n) => Math.max(widest, at - ends[n]), 0),
    peakLength: lengthOfPeak(profile, tolerance),
  };
}
