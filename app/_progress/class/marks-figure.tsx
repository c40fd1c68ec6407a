import type { SectionAnalysis } from "@/lib/progress";
import { Figure } from "../figure";

const tenth = (value: number): string => value.toFixed(1);

/** How the marks of a section lie, and how sure a mark is. */
export function MarksFigure({ marks, reliability }: Pick<SectionAnalysis, "marks" | "reliability">) {
  const { count, mean, median, lowerQuartile, upperQuartile, tens, passed } = marks;
  const most = Math.max(1, ...tens);
  const rows = tens.map((number, n) => ({ name: n === 9 ? "90 to 100" : `${10 * n} to under ${10 * n + 10}`, number }));
  return (
    <Figure
      title="Marks"
      says={
        <>
          <p>
            {mean === null || median === null || lowerQuartile === null || upperQuartile === null
              ? "Nothing was handed in yet."
              : `${passed} of ${count} passed. Mean ${tenth(mean)}, median ${tenth(median)}; the middle half lies between ${tenth(lowerQuartile)} and ${tenth(upperQuartile)}.`}
          </p>
          <p className="mt-1">{reliabilityWords(reliability)}</p>
        </>
      }
      fileName="class-marks"
      isTableDrawn
      table={{
        headers: ["Marks", "Sections"],
        rows: count === 0 ? [] : rows.map(({ name, number }) => [name, number]),
      }}
    >
      {count > 0 && (
        <table className="w-full max-w-2xl text-left">
          <thead className="text-ink-2 text-sm">
            <tr>
              <th scope="col" className="py-1 pr-4 font-medium">
                Marks
              </th>
              <th scope="col" className="py-1 font-medium">
                Sections
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ name, number }) => (
              <tr key={name}>
                <th scope="row" className="w-40 whitespace-nowrap py-0.5 pr-4 font-normal">
                  {name}
                </th>
                <td className="py-0.5">
                  <span className="flex items-center gap-2">
                    <span className="w-8 text-right tabular-nums">{number}</span>
                    <span
                      aria-hidden="true"
                      className="h-4 bg-action print:[print-color-adjust:exact]"
                      style={{ width: `${(80 * number) / most}%` }}
                    />
                  </span>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </Figure>
  );
}

/** Fewer than so many sections say little of it. Common practice, no source. */
const LEAST = 20;

function reliabilityWords(reliability: SectionAnalysis["reliability"]): string {
  if (reliability === null) return "How sure a mark is can be said once two have handed in the same parts.";
  const { learners, alpha, sem } = reliability;
  if (alpha === null || sem === null) return "All marks are the same, which tells nothing of how sure they are.";
  const few = learners < LEAST ? ` Not enough yet to rely on: ${LEAST - learners} more.` : "";
  return `The parts of the section agree with α ${alpha.toFixed(2).replace("-", "−")} (Cronbach, over ${learners} sections), so that a mark has a standard error of ${tenth(sem)} marks; where α is low the parts measure different things, which they may.${few}`;
}
