import Link from "next/link";
import { SaveRecord } from "@/app/_paper/save-record";
import { LocalTime } from "@/app/_ui/local-time";
import { Notice } from "@/app/_ui/notice";
import { Sheet } from "@/app/_ui/sheet";
import type { Person } from "@/lib/workshop";

interface RecordSheetProps {
  readonly learner: Pick<Person, "id">;
  /** When they asked to be erased. */
  readonly askedAt: Date | null;
}

/** Everything kept of a learner: to hand over, or to erase. */
export function RecordSheet({ learner, askedAt }: RecordSheetProps) {
  return (
    <Sheet title="Record" className="mt-5">
      {askedAt && (
        <div className="mt-3">
          <Notice>
            Asked to be erased on <LocalTime at={askedAt} />.
          </Notice>
        </div>
      )}
      <p className="mt-2 text-ink-2">
        The whole record as far as you may see it. Reports that are still being written and sittings of other tutors'
        classes are not in it.
      </p>
      <div className="mt-3 flex flex-wrap gap-3">
        <SaveRecord personId={learner.id} />
        <Link
          href={`/desk/${learner.id}/erase`}
          className="inline-flex min-h-11 items-center rounded border border-missed bg-sheet px-5 font-medium text-missed hover:bg-paper-2"
        >
          Erase this learner
        </Link>
      </div>
    </Sheet>
  );
}
