"use client";

import { useActionState } from "react";
import type { DeliveryView } from "@/app/_server/xapi/delivery-view";
import { Button } from "@/app/_ui/button";
import { LocalTime } from "@/app/_ui/local-time";
import { Notice } from "@/app/_ui/notice";
import { Sheet } from "@/app/_ui/sheet";
import { count } from "../sittings/sitting-words";
import type { tryAgain } from "./actions";

interface DeliverySheetProps {
  readonly delivery: DeliveryView;
  readonly tryAgain: typeof tryAgain;
}

/** How sending statements to a learning record store goes. */
export function DeliverySheet({ delivery, tryAgain: again }: DeliverySheetProps) {
  const [state, send] = useActionState(again, null);
  const {
    host,
    isDemo,
    problem,
    waiting,
    waitingSince,
    refused,
    sent,
    lastSuccessAt,
    lastErrorAt,
    lastError,
    nextTryAt,
  } = delivery;
  const refusedCount = refused.reduce((sum, one) => sum + one.count, 0);
  return (
    <Sheet title="Learning record store (xAPI)">
      {problem && (
        <div className="mt-3">
          <Notice>{problem}</Notice>
        </div>
      )}
      {!host && !problem && (
        <p className="mt-2 text-ink-2">
          None is set up, and nothing leaves this machine. Whoever runs it can name one with XAPI_ENDPOINT.
          {waiting > 0 && ` ${count(waiting, "statement")} from before wait in the queue.`}
        </p>
      )}
      {host && (
        <>
          <p className="mt-2 wrap-anywhere">
            {isDemo ? (
              <>
                <strong className="font-medium">{host}</strong> is set up, but this is the demo workshop: its people are
                nobody, and nothing is sent.
              </>
            ) : (
              <>
                What counts goes to <strong className="font-medium">{host}</strong>, each learner under a number instead
                of a name: practice when it is handed in, sittings when they are released. Drills are not sent.
              </>
            )}
          </p>
          <dl className="mt-3 grid grid-cols-[auto_1fr] gap-x-6 gap-y-2">
            <dt className="text-ink-2">Waiting</dt>
            <dd>
              {count(waiting, "statement")}
              {waitingSince && (
                <>
                  , the oldest since <LocalTime at={waitingSince} />
                </>
              )}
            </dd>
            <dt className="text-ink-2">Taken so far</dt>
            <dd>
              {sent}
              {lastSuccessAt && (
                <>
                  , last on <LocalTime at={lastSuccessAt} />
                </>
              )}
            </dd>
            <dt className="text-ink-2">Last error</dt>
            <dd className="wrap-anywhere">
              {lastError && lastErrorAt ? (
                <>
                  <LocalTime at={lastErrorAt} />: {lastError}
                </>
              ) : (
                "none"
              )}
            </dd>
            {nextTryAt && waiting > 0 && (
              <>
                <dt className="text-ink-2">Next try</dt>
                <dd>
                  <LocalTime at={nextTryAt} />
                </dd>
              </>
            )}
          </dl>
          {refusedCount > 0 && (
            <div className="mt-4">
              <h3 className="font-medium">Refused and kept: {count(refusedCount, "statement")}</h3>
              <ul className="mt-1 list-disc pl-5">
                {refused.map(({ status, count: times, reasons }) => (
                  <li key={status} className="wrap-anywhere">
                    {times} × {reasons.join("; or ")}
                  </li>
                ))}
              </ul>
            </div>
          )}
          <form action={send} className="mt-4">
            {state && (
              <div className="mb-3">
                <Notice isGood={state.isGood}>{state.told}</Notice>
              </div>
            )}
            <Button type="submit" look="quiet">
              Try again now
            </Button>
          </form>
        </>
      )}
    </Sheet>
  );
}
