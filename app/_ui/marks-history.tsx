import type { Practice } from "@/lib/practice";
import { FACES } from "@/lib/weld";
import { MarksChart } from "./marks-chart";
import { MarksTable } from "./marks-table";
import { Sheet } from "./sheet";

interface MarksHistoryProps {
  /** Handed in, the latest first; at least one. */
  readonly practices: readonly Pick<Practice, "id" | "handedInAt" | "marks">[];
}

/** One learner's marks over time: a chart for each face, and every plate with its mark sheet. */
export function MarksHistory({ practices }: MarksHistoryProps) {
  return (
    <>
      <div className="mt-6 grid gap-5 lg:grid-cols-2">
        {FACES.map((face) => (
          <MarksChart key={face} section={face} practices={practices} />
        ))}
      </div>
      <Sheet title="Plate by plate" className="mt-5">
        <MarksTable practices={practices} />
      </Sheet>
    </>
  );
}
