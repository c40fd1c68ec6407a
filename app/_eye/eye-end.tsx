"use client";
import Link from "next/link";
import { useActionState, useEffect, useRef } from "react";
import type { FormProblem } from "@/app/_server/form-state";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { type EyeRoundView, rightOf } from "@/lib/eye";
import { EyeSums } from "./eye-sums";
import { ProgressDots } from "./progress-dots";

export type BeginRound = (before: FormProblem | null, form: FormData) => Promise<FormProblem | null>;

interface EyeEndProps {
  readonly round: EyeRoundView;
  readonly begin: BeginRound;
  /** Whether Enter begins the next round; not where time ran out while somebody was still at the keys. */
  readonly isAtOnce: boolean;
}

/** How a round went, and on to the next. */
export function EyeEnd({ round, begin, isAtOnce }: EyeEndProps) {
  const { asked, right } = rightOf(round.results);
  const [problem, act] = useActionState(begin, null);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (!isAtOnce) heading.current?.focus();
  }, [isAtOnce]);
  return (
    <section aria-labelledby="round-end" className="mt-4 max-w-4xl rounded-md border border-line bg-sheet p-5">
      <h2
        id="round-end"
        ref={heading}
        tabIndex={-1}
        className="font-semibold text-xl outline-none focus-visible:shadow-none"
      >
        {asked === 0 ? "Nothing was answered" : `${right} of ${asked} right`}
      </h2>
      {asked > 0 && (
        <>
          <div className="mt-2 mb-4">
            <ProgressDots marks={round.results.map(({ isRight }) => isRight)} number={asked} />
          </div>
          <EyeSums results={round.results} caption="This round" />
          <p className="mt-4 text-ink-2 text-sm">Kept among your rounds. It changes no marks.</p>
        </>
      )}
      <form action={act} className="mt-5 flex flex-wrap items-center gap-3">
        <input type="hidden" name="drill" value={round.drill} />
        <input type="hidden" name="naming" value={round.naming} />
        {round.isTimed && <input type="hidden" name="clock" value="on" />}
        {/* Enter goes on from round to round */}
        <Button type="submit" autoFocus={isAtOnce}>
          Another round
        </Button>
        <Link href="/drills" className="rounded px-2 py-2 font-medium text-action underline underline-offset-4">
          To the drills
        </Link>
      </form>
      {problem && (
        <div className="mt-3">
          <Notice>{problem.message}</Notice>
        </div>
      )}
    </section>
  );
}
