import type { LearnerProgress } from "@/app/_server/progress/progress-of";
import { imperfection } from "@/lib/imperfections";
import {
  chanceAt,
  type DetectionCurve,
  detectionByType,
  detectionCurve,
  EYE_MEASURES,
  type EyeMeasure,
  findsBySize,
  shareOf,
} from "@/lib/progress";
import { ShareChart } from "./charts/share-chart";
import { SizeCurve } from "./charts/size-curve";
import { Figure } from "./figure";
import { MEASURE_WORDS, NOT_ENOUGH_NOTE, percent, shareWords } from "./words";

/** So many types fit under each other; the table has them all. */
const SHOWN = 14;

/** What is found and what is overlooked, by imperfection. */
export function FoundFigure({ tally: { types } }: Pick<LearnerProgress, "tally">) {
  const rows = detectionByType(types);
  const tallies = Object.values(types);
  const all = shareOf(
    tallies.reduce((sum, { found }) => sum + found, 0),
    tallies.reduce((sum, { total }) => sum + total, 0),
  );
  const charted = rows
    .slice(0, SHOWN)
    .flatMap(({ type, found: { count, of, share, interval, needed } }) =>
      share === null || interval === null
        ? []
        : [{ name: imperfection(type).name, count, of, share, low: interval.low, high: interval.high, needed }],
    );
  return (
    <Figure
      title="Found and overlooked"
      says={
        <>
          <p>Of everything there was to find: {shareWords(all)}.</p>
          {rows.length > 0 && (
            <p className="mt-1">
              What is most surely overlooked stands first. {NOT_ENOUGH_NOTE}
              {rows.length > SHOWN && ` The other ${rows.length - SHOWN} are in the table.`}
            </p>
          )}
        </>
      }
      fileName="found-and-overlooked"
      table={{
        headers: [
          "Imperfection",
          "Number",
          "Found",
          "Of",
          "Share, %",
          "From, %",
          "To, %",
          "More needed",
          "Named exactly",
        ],
        rows: rows.map(({ type, found, named }) => [
          imperfection(type).name,
          imperfection(type).number,
          found.count,
          found.of,
          inPercent(found.share),
          inPercent(found.interval?.low),
          inPercent(found.interval?.high),
          found.needed,
          named.count,
        ]),
      }}
    >
      {charted.length > 0 && (
        <ShareChart label="Share found of each imperfection; the table has the figures" axis="found" rows={charted} />
      )}
    </Figure>
  );
}

export const inPercent = (share: number | null | undefined): number | null =>
  share === null || share === undefined ? null : Math.round(1000 * share) / 10;

/** How the chance to find goes with size, for each of what strikes the eye. */
export function SizeFigures({ bySize }: Pick<LearnerProgress, "bySize">) {
  return EYE_MEASURES.filter((measure) => Object.keys(bySize[measure]).length > 0).map((measure) => (
    <SizeFigure key={measure} measure={measure} counts={bySize[measure]} />
  ));
}

function SizeFigure({ measure, counts }: { measure: EyeMeasure; counts: LearnerProgress["bySize"][EyeMeasure] }) {
  const finds = findsBySize(counts);
  const curve = detectionCurve(finds);
  const { title, axis } = MEASURE_WORDS[measure];
  return (
    <Figure
      title={`Chance to find by ${title}`}
      says={<p>{curveWords(curve)}</p>}
      fileName={`found-by-${measure}`}
      table={{
        headers: [`About, mm (${title})`, "There were", "Found", "By the curve, %"],
        rows: finds.map(({ size, total, found }) => [
          Math.round(100 * size) / 100,
          total,
          found,
          curve.kind === "curve" ? inPercent(chanceAt(curve, size)) : null,
        ]),
      }}
    >
      {curve.kind === "curve" && (
        <SizeCurve
          label={`Chance to find against ${axis}; the table has the figures`}
          axis={axis}
          finds={finds}
          intercept={curve.intercept}
          slope={curve.slope}
          a50={{ size: curve.a50, ...curve.a50Interval }}
          a90={{ size: curve.a90, ...curve.a90Interval }}
        />
      )}
    </Figure>
  );
}

const mm = (value: number): string => `${value < 10 ? value.toFixed(2) : value.toFixed(0)} mm`;
const between = ({ low, high }: { readonly low: number; readonly high: number | null }): string =>
  high === null ? `at least ${mm(low)}` : low < 0.01 ? `at most ${mm(high)}` : `${mm(low)} to ${mm(high)}`;

function curveWords(curve: DetectionCurve): string {
  if (curve.kind === "curve") {
    const { a50, a90, a50Interval, a90Interval, sizes, total } = curve;
    const beyond =
      a50 < sizes.low || a90 > sizes.high
        ? ` There was nothing ${a50 < sizes.low ? `smaller than ${mm(sizes.low)}` : `larger than ${mm(sizes.high)}`}: beyond that the curve is a guess.`
        : "";
    return `Every second one of ${mm(a50)} is found (${between(a50Interval)}), and ${percent(0.9)} of those of ${mm(a90)} (${between(a90Interval)}), going by ${total} of them.${beyond} The band joins the 95 % intervals of these two sizes; circles are what was found, larger where there were more.`;
  }
  const sofar = `${curve.found} of ${curve.total} found so far.`;
  const more = `${curve.needed} more`;
  switch (curve.why) {
    case "few":
      return `${sofar} Not enough yet for a curve: ${more}, some of them missed and some found.`;
    case "one-size":
      return `${sofar} All of them were alike, which makes no curve: ${more} of another size.`;
    case "apart":
      return curve.between
        ? `${sofar} Everything larger was found and everything smaller missed, so that the curve stands anywhere between ${mm(curve.between.low)} and ${mm(curve.between.high)}: ${more} of these sizes.`
        : `${sofar} No curve yet: ${more}.`;
    case "no-rise":
      return `${sofar} Larger ones are found no more often than smaller ones so far, so size is not what decides: ${more} to tell.`;
  }
}
