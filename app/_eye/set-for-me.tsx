"use client";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { LocalTime } from "@/app/_ui/local-time";
import { Notice } from "@/app/_ui/notice";
import { Sheet } from "@/app/_ui/sheet";
import type { KeptSetDrill } from "@/lib/eye";
import type { BeginRound } from "./eye-end";
import { setDrillWords } from "./set-drill-words";

interface SetForMeProps {
  readonly drills: readonly KeptSetDrill[];
  readonly begin: BeginRound;
  readonly className?: string;
}

/** Drills that tutors have set somebody, until they are done. */
export function SetForMe({ drills, begin, className }: SetForMeProps) {
  const [problem, act] = useActionState(begin, null);
  if (drills.length === 0) return null;
  return (
    <Sheet title={drills.length === 1 ? "A drill is set for you" : "Drills are set for you"} className={className}>
      {problem && <Notice>{problem.message}</Notice>}
      <ul className="mt-2 divide-y divide-line">
        {drills.map(({ id, className: classOf, setBy, setAt, ...set }) => (
          <li key={id} className="flex flex-wrap items-center justify-between gap-x-6 gap-y-2 py-3">
            <p className="min-w-0 flex-1 basis-80">
              <span className="font-medium">{setDrillWords(set)}.</span>{" "}
              <span className="text-ink-2">
                {classOf}
                {setBy && `, set by ${setBy}`}, <LocalTime at={setAt} />
              </span>
            </p>
            <form action={act}>
              <input type="hidden" name="set" value={id} />
              <input type="hidden" name="drill" value={set.drill} />
              <Button type="submit" aria-label={`Begin: ${setDrillWords(set)}`}>
                Begin
              </Button>
            </form>
          </li>
        ))}
      </ul>
    </Sheet>
  );
}
