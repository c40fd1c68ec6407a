import { imperfection } from "@/lib/imperfections";
import { DEFAULT_PAPER, isPass } from "@/lib/results";
import { EXAMPLE_LINES, EXAMPLE_MARK } from "./worked-example";

/** A section marked line by line, to see the rule at work. */
export function ExampleTable() {
  const verdict = isPass(EXAMPLE_MARK, DEFAULT_PAPER.plate.passMark) ? "passed" : "not passed";
  return (
    <>
      <p className="mt-2 leading-relaxed">
        Four indications lie on a cap face; all weigh the same, so each is worth 25 marks. This is what a report on them
        comes to:
      </p>
      <div className="overflow-x-auto">
        <table className="mt-3 w-full text-left text-sm">
          <thead className="text-ink-2">
            <tr>
              <th className="py-2 pr-4 font-medium">What is there</th>
              <th className="py-2 pr-4 font-medium">What you wrote</th>
              <th className="py-2 pr-4 text-right font-medium">Marks</th>
              <th className="py-2 font-medium">Why</th>
            </tr>
          </thead>
          <tbody>
            {EXAMPLE_LINES.map(({ there, written, marks, why }) => (
              <tr key={why} className="border-t border-line align-top">
                <td className="py-2 pr-4">{describePlace(there)}</td>
                <td className="py-2 pr-4">{describePlace(written)}</td>
                <td className="py-2 pr-4 text-right font-semibold whitespace-nowrap">{formatMarks(marks)}</td>
                <td className="py-2">{why}</td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr className="border-t-2 border-ink-2">
              <th scope="row" colSpan={2} className="py-2 pr-4 font-semibold">
                Cap face
              </th>
              <td className="py-2 pr-4 text-right font-semibold">{EXAMPLE_MARK.toFixed(1)}</td>
              <td className="py-2">
                {DEFAULT_PAPER.plate.passMark} needed: {verdict}
              </td>
            </tr>
          </tfoot>
        </table>
      </div>
    </>
  );
}

function describePlace(place: (typeof EXAMPLE_LINES)[number]["there"]): string {
  if (!place) return "nothing";
  const { name, size } = imperfection(place.type);
  const where = place.start === place.end ? `at ${place.start} mm` : `${place.start} to ${place.end} mm`;
  return `${name}, ${where}, ${size ?? "size"} ${place.size} mm`;
}

function formatMarks(marks: number): string {
  return marks < 0 ? `− ${(-marks).toFixed(2)}` : marks.toFixed(2);
}
