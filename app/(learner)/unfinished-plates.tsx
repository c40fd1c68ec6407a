import Link from "next/link";
import { LocalTime } from "@/app/_ui/local-time";
import type { Practice } from "@/lib/practice";

export function UnfinishedPlates({ practices }: { readonly practices: readonly Practice[] }) {
  if (practices.length === 0) {
    return (
      <p className="mt-2 text-ink-2">
        A plate that you leave before handing it in waits here, with every line you wrote.
      </p>
    );
  }
  return (
    <ul className="mt-3 divide-y divide-line">
      {practices.map(({ id, startedAt, savedAt, report }) => (
        <li key={id} className="flex items-center gap-4 py-2">
          <div>
            <p>
              Begun <LocalTime at={startedAt} />
            </p>
            <p className="text-sm text-ink-2">
              {describeCount(report.calls.length)}
              {savedAt && (
                <>
                  , saved <LocalTime at={savedAt} />
                </>
              )}
            </p>
          </div>
          <Link
            href={`/practice/${id}`}
            className="ml-auto flex min-h-11 items-center rounded border border-ink-2 px-4 font-medium whitespace-nowrap hover:bg-paper-2"
          >
            Go on
          </Link>
        </li>
      ))}
    </ul>
  );
}

function describeCount(count: number): string {
  if (count === 0) return "Nothing written yet";
  return count === 1 ? "1 indication written" : `${count} indications written`;
}
