import Link from "next/link";
import type { ListedSitting } from "@/app/_server/sitting-views";
import { LocalTime } from "@/app/_ui/local-time";
import { count, STATE_WORDS } from "./sitting-words";

/** Sittings with what each of them is at, each leading to its board. */
export function SittingList({ sittings }: { readonly sittings: readonly ListedSitting[] }) {
  return (
    <ul className="mt-2">
      {sittings.map(({ id, paperName, className, plannedAt, state, learners, sections, closed }) => (
        <li key={id} className="border-line border-t py-2 first:border-0 wrap-anywhere">
          <Link
            href={`/desk/sittings/${id}`}
            className="inline-flex min-h-11 items-center rounded font-medium text-action underline underline-offset-4"
          >
            {className}: {paperName}
          </Link>
          <span className="block text-ink-2 text-sm">
            <LocalTime at={plannedAt} />, {STATE_WORDS[state]}; {count(learners, "learner")}
            {state !== "planned" &&
              state !== "open" &&
              state !== "void" &&
              `, ${closed} of ${sections} sections closed`}
          </span>
        </li>
      ))}
    </ul>
  );
}
