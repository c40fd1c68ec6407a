import Link from "next/link";
import type { OwnAttempt } from "@/app/_server/use-cases/list-own-attempts";
import { LocalTime } from "@/app/_ui/local-time";
import { SECTION_NAMES } from "@/app/_ui/section-names";
import { Sheet } from "@/app/_ui/sheet";
import { Verdict } from "@/app/_ui/verdict";
import { shownMark } from "@/lib/results";
import type { PlacedAttempt } from "@/lib/sittings";

/** Sections sat in sittings with their marks, apart from what was practice. */
export function SittingMarks({ attempts }: { readonly attempts: readonly OwnAttempt[] }) {
  return (
    <Sheet title="Sittings" className="mt-6">
      <div className="relative overflow-x-auto">
        <table className="mt-3 w-full text-left">
          <thead className="text-ink-2 text-sm">
            <tr>
              <th className="py-2 pr-4 font-medium">Closed</th>
              <th className="py-2 pr-4 font-medium">Paper</th>
              <th className="py-2 pr-4 font-medium">Section</th>
              <th className="py-2 pr-4 font-medium">Marks</th>
              <th>
                <span className="sr-only">Where to look</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {attempts.map(({ runId, practiceId, sittingId, paperName, className, closedAt, mark, placed }) => (
              <tr key={runId} className="border-line border-t">
                <th scope="row" className="py-3 pr-4 font-normal">
                  <LocalTime at={closedAt} />
                </th>
                <td className="py-3 pr-4">
                  <Link href={`/sitting/${sittingId}`} className="font-medium text-action underline underline-offset-4">
                    {paperName}
                  </Link>
                  <span className="block text-ink-2 text-sm">{className}</span>
                </td>
                <td className="py-3 pr-4">
                  {SECTION_NAMES[mark.section]}
                  {placed && <span className="block text-ink-2 text-sm">{kindWords(placed)}</span>}
                </td>
                <td className="py-3 pr-4">
                  <span className="inline-block w-12 font-semibold">{shownMark(mark.markThousandths).toFixed(1)}</span>{" "}
                  <span className="whitespace-nowrap text-ink-2">
                    <Verdict isPassed={mark.isPassed} />, needed {mark.passMark}
                  </span>
                  {placed?.kind === "borderline" && placed.decidedOn !== null && (
                    <span className="block text-ink-2 text-sm">
                      The mean of both, {placed.decidedOn.toFixed(1)}, decides: {placed.outcome}.
                    </span>
                  )}
                </td>
                <td className="py-3 text-right">
                  <Link
                    href={`/practice/${practiceId}/marks`}
                    className="inline-flex min-h-11 items-center whitespace-nowrap font-medium text-action underline underline-offset-4"
                  >
                    Mark sheet
                  </Link>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </Sheet>
  );
}

const KINDS: Readonly<Record<PlacedAttempt["kind"], string>> = {
  first: "first time",
  "re-sit": "re-sit",
  borderline: "one more piece like it",
  extra: "sat once more, changes nothing",
  void: "void, does not count",
};

const kindWords = ({ kind, round }: PlacedAttempt): string =>
  round === 1 ? KINDS[kind] : `${KINDS[kind]}, round ${round}`;
