import { LocalTime } from "@/app/_ui/local-time";
import { Sheet } from "@/app/_ui/sheet";
import { capital } from "../sitting-words";
import type { Board } from "./board";
import { actWords } from "./board-words";

/** Who of the tutors did what, when and why; the latest first. */
export function AuditLog({ log, learners }: Pick<Board, "log" | "learners">) {
  return (
    <Sheet title="What was done" className="mt-5">
      <ol className="mt-2">
        {log.toReversed().map((entry) => (
          <li
            key={`${entry.at.toISOString()} ${entry.act} ${entry.subject.id}`}
            className="grid gap-x-4 border-line border-t py-2 first:border-0 sm:grid-cols-[12rem_1fr]"
          >
            <span className="text-ink-2 text-sm">
              <LocalTime at={entry.at} />
            </span>
            <span className="wrap-anywhere">
              {entry.actorName || "An account that is gone"}: {actWords(entry, learners)}
              {entry.reason && <span className="block text-ink-2 text-sm">{capital(entry.reason)}</span>}
            </span>
          </li>
        ))}
      </ol>
    </Sheet>
  );
}
