import Link from "next/link";
import { LocalTime } from "@/app/_ui/local-time";
import { SECTION_NAMES } from "@/app/_ui/section-names";
import type { ListedPractice } from "@/lib/practice";
import { DEFAULT_PAPER } from "@/lib/results";

export function UnfinishedPieces({ practices }: { readonly practices: readonly ListedPractice[] }) {
  return (
    <ul className="mt-3 divide-y divide-line">
      {practices.map((practice) => (
        <li key={practice.id} className="flex items-center gap-4 py-2">
          <p>
            <span className="font-medium">{SECTION_NAMES[practice.section]}.</span> <HowFar practice={practice} />
          </p>
          <Link
            href={`/practice/${practice.id}`}
            className="ml-auto flex min-h-11 items-center rounded border border-ink-2 px-4 font-medium whitespace-nowrap hover:bg-paper-2"
          >
            Go on
          </Link>
        </li>
      ))}
    </ul>
  );
}

/** When an unfinished piece was begun, and what is written on it. */
export function HowFar({ practice }: { readonly practice: ListedPractice }) {
  const { startedAt, savedAt } = practice;
  return (
    <>
      Begun <LocalTime at={startedAt} />. {describeWork(practice)}
      {savedAt && (
        <>
          , saved <LocalTime at={savedAt} />
        </>
      )}
      .
    </>
  );
}

function describeWork({ section, report, reportClosedAt }: ListedPractice): string {
  const count = report.calls.length;
  if (reportClosedAt) {
    return `Report closed, ${Object.keys(report.answers).length} of ${DEFAULT_PAPER[section].questions} questions answered`;
  }
  if (count === 0) return "Nothing written yet";
  return count === 1 ? "1 indication written" : `${count} indications written`;
}
