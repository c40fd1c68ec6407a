import Link from "next/link";
import { LocalTime } from "@/app/_ui/local-time";
import { SECTION_NAMES } from "@/app/_ui/section-names";
import { Verdict } from "@/app/_ui/verdict";
import type { SectionMark } from "@/lib/practice";
import { shownMark } from "@/lib/results";

/** A piece that was handed in, with its marks. */
export interface MarkedPlate {
  readonly id: string;
  readonly handedInAt: Date;
  readonly marks: readonly SectionMark[];
}

/** Two cells of a table: when the last piece was handed in, with its mark sheet, and its marks. */
export function LastPlate({ last }: { readonly last: MarkedPlate | undefined }) {
  if (!last) {
    return (
      <td colSpan={2} className="py-2 text-ink-2">
        none yet
      </td>
    );
  }
  return (
    <>
      <td className="py-2 pr-4">
        <Link
          href={`/practice/${last.id}/marks`}
          className="rounded py-2 font-medium text-action underline underline-offset-4"
        >
          <LocalTime at={last.handedInAt} withTime={false} />
        </Link>
      </td>
      <td className="py-2 pr-4">
        {last.marks.map((mark) => (
          <span key={mark.section} className="block whitespace-nowrap">
            {last.marks.length > 1 && <span className="text-ink-2">{SECTION_NAMES[mark.section]} </span>}
            <span className="inline-block w-12 font-semibold">{shownMark(mark.markThousandths).toFixed(1)}</span>{" "}
            <Verdict isPassed={mark.isPassed} />
          </span>
        ))}
      </td>
    </>
  );
}
