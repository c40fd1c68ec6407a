import Link from "next/link";
import type { DueInClass } from "@/app/_server/sitting-views";
import { dueWords } from "./due-words";

/** Sections that are due again, class by class, each with the way to a sitting of just those. */
export function DueList({ dues }: { readonly dues: readonly DueInClass[] }) {
  return (
    <ul className="mt-2">
      {dues.map(({ classId, className, paperId, paperName, learners }) => (
        <li key={`${classId} ${paperId}`} className="border-line border-t py-3 first:border-0 wrap-anywhere">
          <div className="flex flex-wrap items-center justify-between gap-x-6 gap-y-1">
            <span className="font-medium">
              {className}, {paperName}
            </span>
            <Link
              href={`/desk/sittings/new?class=${classId}&paper=${paperId}&who=due`}
              aria-label={`Plan a sitting for what is due: ${className}, ${paperName}`}
              className="inline-flex min-h-11 items-center rounded font-medium text-action underline underline-offset-4"
            >
              Plan it
            </Link>
          </div>
          <ul>
            {learners.map(({ id, name, sections }) => (
              <li key={id}>
                {name}: <span className="text-ink-2">{dueWords(sections)}</span>
              </li>
            ))}
          </ul>
        </li>
      ))}
    </ul>
  );
}
