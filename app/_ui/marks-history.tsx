import type { Practice } from "@/lib/practice";
import { MARKED_SECTIONS } from "@/lib/results";
import { MarksChart } from "./marks-chart";
import { MarksTable } from "./marks-table";
import { Sheet } from "./sheet";

interface MarksHistoryProps {
  /** Handed in, the latest first; at least one. */
  readonly practices: readonly Pick<Practice, "id" | "handedInAt" | "marks">[];
}

/** One learner's marks over time: a chart for each section that was marked, and every piece with its mark sheet. */
export function MarksHistory({ practices }: MarksHistoryProps) {
  const marked = MARKED_SECTIONS.filter((one) =>
    practices.some(({ marks }) => marks.some(({ section }) => section === one)),
  );
  return (
    <>
      <div className="mt-6 grid gap-5 lg:grid-cols-2">
        {marked.map((section) => (
          <MarksChart key={section} section={section} practices={practices} />
        ))}
      </div>
      <Sheet title="Piece by piece" className="mt-5">
        <MarksTable practices={practices} />
      </Sheet>
    </>
  );
}
