import Link from "next/link";
import { LocalTime } from "@/app/_ui/local-time";
import { MarkBar } from "@/app/_ui/mark-bar";
import type { ListedPractice } from "@/lib/practice";

export function LastMarks({ practices }: { readonly practices: readonly ListedPractice[] }) {
  if (practices.length === 0) {
    return (
      <p className="mt-2 text-ink-2">
        After handing in, every piece shows its mark here, and a sheet that goes through it line by line.
      </p>
    );
  }
  return (
    <ul className="mt-3 divide-y divide-line">
      {practices.map(({ id, handedInAt, marks }) => (
        <li key={id} className="grid items-center gap-x-6 gap-y-2 py-3 md:grid-cols-[12rem_1fr_auto]">
          <span>{handedInAt && <LocalTime at={handedInAt} />}</span>
          <div className="space-y-1">
            {marks.map((mark) => (
              <MarkBar key={mark.section} mark={mark} />
            ))}
          </div>
          <Link
            href={`/practice/${id}/marks`}
            className="flex min-h-11 items-center justify-center rounded border border-ink-2 px-4 font-medium whitespace-nowrap hover:bg-paper-2"
          >
            Mark sheet
          </Link>
        </li>
      ))}
    </ul>
  );
}
