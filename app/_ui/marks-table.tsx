import Link from "next/link";
import type { Practice } from "@/lib/practice";
import { shownMark } from "@/lib/results";
import { LocalTime } from "./local-time";
import { SECTION_NAMES } from "./section-names";
import { Verdict } from "./verdict";

/** One row a piece, the latest first. */
export function MarksTable({
  practices,
}: {
  readonly practices: readonly Pick<Practice, "id" | "handedInAt" | "marks">[];
}) {
  return (
    <div className="relative overflow-x-auto">
      <table className="mt-3 w-full text-left">
        <thead className="text-sm text-ink-2">
          <tr>
            <th className="py-2 font-medium">Handed in</th>
            <th className="py-2 font-medium">Marks</th>
            <th>
              <span className="sr-only">Mark sheet</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {practices.map(({ id, handedInAt, marks }) => (
            <tr key={id} className="border-t border-line">
              <th scope="row" className="py-3 pr-4 font-normal">
                {handedInAt && <LocalTime at={handedInAt} />}
              </th>
              <td className="py-3 pr-4">
                {marks.map((mark) => (
                  <div key={mark.section}>
                    <span className="inline-block w-24">{SECTION_NAMES[mark.section]}</span>{" "}
                    <span className="inline-block w-12 font-semibold">
                      {shownMark(mark.markThousandths).toFixed(1)}
                    </span>{" "}
                    <span className="whitespace-nowrap text-ink-2">
                      <Verdict isPassed={mark.isPassed} />, needed {mark.passMark}
                    </span>
                  </div>
                ))}
              </td>
              <td className="py-3 text-right">
                <Link
                  href={`/practice/${id}/marks`}
                  className="rounded py-2 font-medium text-action underline underline-offset-4"
                >
                  Mark sheet
                </Link>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
