"use client";
import Link from "next/link";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { type Round, toKeep } from "@/lib/drills";
import { durationWords, errorWords } from "./drill-words";
import type { RoundHandling } from "./use-round";

/** How a round went, whether it is kept, and on to the next. */
export function RoundEnd({ round, handling }: { readonly round: Round; readonly handling: RoundHandling }) {
  const { asked, right, medianError, seconds } = toKeep(round);
  const { keeping } = handling;
  return (
    <section aria-labelledby="round-end" className="mt-6 max-w-2xl rounded-md border border-line bg-sheet p-5">
      <h2 id="round-end" className="text-xl font-semibold">
        {right} of {asked} right
      </h2>
      <dl className="mt-3 grid grid-cols-[max-content_1fr] gap-x-6 gap-y-1">
        <dt className="text-ink-2">Median error</dt>
        <dd className="tabular-nums">{errorWords(medianError)}</dd>
        <dt className="text-ink-2">Time</dt>
        <dd className="tabular-nums">{durationWords(seconds)}</dd>
      </dl>
      {keeping === "failed" ? (
        <div className="mt-4">
          <Notice>The round did not reach the server and is not kept yet. It is still here: send it again.</Notice>
          <div className="mt-3">
            <Button look="quiet" onClick={handling.keepAgain}>
              Send it again
            </Button>
          </div>
        </div>
      ) : (
        <p className="mt-3 text-sm text-ink-2" role="status">
          {keeping === "kept" ? "Kept among your rounds." : "Keeping it..."}
        </p>
      )}
      <div className="mt-5 flex flex-wrap items-center gap-3">
        {/* Enter goes on from round to round */}
        <Button autoFocus onClick={() => handling.begin(round.gauges)}>
          Another round
        </Button>
        <Button look="quiet" onClick={handling.chooseAgain}>
          Other gauges
        </Button>
        <Link href="/drills" className="rounded px-2 py-2 font-medium text-action underline underline-offset-4">
          To the drills
        </Link>
      </div>
    </section>
  );
}
