import Link from "next/link";
import type { SatSection } from "@/app/_server/sitting-views";
import { countingMark } from "@/lib/practice";
import { ATTEMPT_WORDS } from "@/lib/printing";
import { shownMark } from "@/lib/results";
import type { PlacedAttempt } from "@/lib/sittings";
import { LocalTime } from "./local-time";
import { SECTION_NAMES } from "./section-names";
import { Sheet } from "./sheet";
import { Verdict } from "./verdict";

interface SittingMarksProps {
  readonly attempts: readonly SatSection[];
  /** Where the pages of sittings are, for whoever reads: a learner's, or on the desk. */
  readonly sittings: "/sitting" | "/desk/sittings";
}

/** Sections sat in sittings with their marks, apart from what was practice. */
export function SittingMarks({ attempts, sittings }: SittingMarksProps) {
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
            {attempts.map(({ runId, practiceId, sittingId, paperName, className, closedAt, mark, isVoid, placed }) => (
              <tr key={runId} className="border-line border-t">
                <th scope="row" className="py-3 pr-4 font-normal">
                  <LocalTime at={closedAt} />
                </th>
                <td className="py-3 pr-4">
                  <Link
                    href={`${sittings}/${sittingId}`}
                    className="font-medium text-action underline underline-offset-4"
                  >
                    {paperName}
                  </Link>
                  <span className="block text-ink-2 text-sm">{className}</span>
                </td>
                <td className="py-3 pr-4">
                  {SECTION_NAMES[mark.section]}
                  {isVoid ? (
                    <span className="block text-ink-2 text-sm">{ATTEMPT_WORDS.void}</span>
                  ) : (
                    placed && <span className="block text-ink-2 text-sm">{kindWords(placed)}</span>
                  )}
                </td>
                <td className="py-3 pr-4">
                  <span className="inline-block w-12 font-semibold">
                    {shownMark(countingMark(mark).markThousandths).toFixed(1)}
                  </span>{" "}
                  <span className="whitespace-nowrap text-ink-2">
                    <Verdict isPassed={countingMark(mark).isPassed} />, needed {mark.passMark}
                  </span>
                  {mark.reviewed && (
                    <span className="block text-ink-2 text-sm">
                      reviewed by a tutor; computed {shownMark(mark.markThousandths).toFixed(1)}
                    </span>
                  )}
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

const kindWords = ({ kind, round }: PlacedAttempt): string =>
  round === 1 ? ATTEMPT_WORDS[kind] : `${ATTEMPT_WORDS[kind]}, round ${round}`;
