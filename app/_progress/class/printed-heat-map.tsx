import { imperfection } from "@/lib/imperfections";
import type { MissedType } from "@/lib/progress";
import { HeatLegend } from "./heat-legend";
import { rangeWords } from "./range-words";
import { cellWords, lookOf, shadeOf } from "./shade";

interface PrintedHeatMapProps {
  readonly learners: readonly { readonly id: string; readonly name: string }[];
  readonly missed: readonly MissedType[];
}

/** So many learners stand beside each other across A4. */
const ACROSS = 14;

/** The heat map on paper: as many tables as it takes for the learners, each with the class beside them. */
export function PrintedHeatMap({ learners, missed }: PrintedHeatMapProps) {
  const starts = Array.from({ length: Math.ceil(learners.length / ACROSS) }, (_, n) => n * ACROSS);
  return (
    <section>
      <h2>Found, learner by learner</h2>
      <HeatLegend />
      {starts.map((start) => (
        <table key={start} className="paper-table print:[print-color-adjust:exact]" style={{ marginTop: "3mm" }}>
          <thead>
            <tr>
              <th scope="col">Imperfection</th>
              <th scope="col">Class</th>
              <th scope="col">Below half</th>
              {learners.slice(start, start + ACROSS).map(({ id, name }) => (
                <th key={id} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {missed.map(({ type, found, judged, belowHalf, byLearner }) => (
              <tr key={type}>
                <th scope="row">
                  {imperfection(type).name} {imperfection(type).number}
                </th>
                <PrintedCell cell={{ found: found.count, total: found.of }} range={rangeWords(found)} />
                <td className="whitespace-nowrap">{judged === 0 ? "" : `${belowHalf} of ${judged}`}</td>
                {byLearner.slice(start, start + ACROSS).map((cell, n) => (
                  <PrintedCell key={learners[start + n].id} cell={cell} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      ))}
    </section>
  );
}

interface PrintedCellProps {
  readonly cell: MissedType["byLearner"][number];
  readonly range?: string;
}

const PrintedCell = ({ cell, range = "" }: PrintedCellProps) => (
  <td className={`text-center whitespace-nowrap ${lookOf(shadeOf(cell))}`}>
    {cellWords(cell)}
    {range !== "" && <span className="block">{range}</span>}
  </td>
);
