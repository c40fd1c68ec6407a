import { imperfection } from "@/lib/imperfections";
import type { ClassStanding } from "@/lib/progress";
import { Figure } from "../figure";
import { inPercent } from "../found-figures";
import { HeatLegend } from "./heat-legend";
import { HeatMap, type HeatRow } from "./heat-map";
import { rangeWords } from "./range-words";
import type { SetAsPaper } from "./set-row-as-paper";

interface MissedFigureProps {
  readonly classId: string;
  readonly learners: readonly { readonly id: string; readonly name: string }[];
  readonly missed: ClassStanding["missed"];
  readonly setAsPaper: SetAsPaper;
}

/** Imperfection by learner. */
export function MissedFigure({ classId, learners, missed, setAsPaper }: MissedFigureProps) {
  return (
    <Figure
      title="Found, learner by learner"
      says={
        <p>
          What the class most surely misses stands first. A name leads to that learner's progress, a piece that shows it
          to a mark sheet that you can look at together, and “Set as a paper” to a paper whose pieces have it.
        </p>
      }
      fileName="class-found"
      isTableDrawn
      table={{
        headers: [
          "Imperfection",
          "Number",
          "Found",
          "Of",
          "From, %",
          "To, %",
          "Below half",
          "Judged",
          ...namesOf(learners),
        ],
        rows: missed.map(({ type, found, judged, belowHalf, byLearner }) => [
          imperfection(type).name,
          imperfection(type).number,
          found.count,
          found.of,
          inPercent(found.interval?.low),
          inPercent(found.interval?.high),
          belowHalf,
          judged,
          ...byLearner.flatMap((cell) => [cell?.found ?? null, cell?.total ?? null]),
        ]),
      }}
    >
      <HeatMap classId={classId} learners={learners} rows={missed.map(rowOf)} setAsPaper={setAsPaper} />
      <HeatLegend />
    </Figure>
  );
}

const rowOf = ({ type, found, judged, belowHalf, byLearner }: MissedFigureProps["missed"][number]): HeatRow => ({
  type,
  found: found.count,
  of: found.of,
  range: rangeWords(found),
  judged,
  belowHalf,
  cells: byLearner.map((cell) => cell && [cell.found, cell.total]),
});

/** Two columns for each learner; of the same name, they are told apart by their number in the class. */
const namesOf = (learners: MissedFigureProps["learners"]): string[] =>
  learners.flatMap(({ name }, n) => [`${n + 1} ${name}, found`, `${n + 1} ${name}, of`]);

/** So many pairs are read on the screen; the file has all. */
const PAIRS_SHOWN = 12;

/** Types that are taken for each other. */
export function ConfusedFigure({ confusions }: Pick<ClassStanding, "confusions">) {
  return (
    <Figure
      title="Taken for each other"
      says={
        <p>
          {confusions.length === 0
            ? "Pairs of imperfections that were found and given each other's name come here."
            : "Found, and given the other's name; the share is of all finds of either."}
        </p>
      }
      fileName="class-taken-for-each-other"
      table={{
        headers: ["One", "Other", "One called the other", "Other called the one", "Share, %", "Look-alikes"],
        rows: confusions.map(({ pair: [one, other], there, back, share, isLookAlike }) => [
          imperfection(one).name,
          imperfection(other).name,
          there,
          back,
          inPercent(share),
          isLookAlike ? "yes" : "no",
        ]),
      }}
    >
      {confusions.length > 0 && (
        <ul>
          {confusions.slice(0, PAIRS_SHOWN).map(({ pair: [one, other], there, back, share, isLookAlike }) => (
            <li key={`${one}/${other}`} className="border-line border-t py-2">
              <span className="font-medium">
                {imperfection(one).name} and {imperfection(other).name.toLowerCase()}
              </span>
              : {there + back} times, {Math.round(100 * share)} %
              <span className="text-ink-2">
                {" "}
                ({there} one way, {back} the other{isLookAlike && "; look-alikes"})
              </span>
            </li>
          ))}
        </ul>
      )}
    </Figure>
  );
}
