"use client";

import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { LocalTime } from "@/app/_ui/local-time";
import { Notice } from "@/app/_ui/notice";
import { Sheet } from "@/app/_ui/sheet";
import type { endSessions } from "./actions";

interface DevicesProps {
  readonly devices: readonly {
    readonly id: string;
    readonly words: string;
    readonly since: Date;
    readonly isThisOne: boolean;
  }[];
  readonly end: typeof endSessions;
}

/** Where somebody is signed in, to be ended one by one or all but this one. */
export function Devices({ devices, end }: DevicesProps) {
  const [state, send] = useActionState(end, null);
  return (
    <Sheet title="Where you are signed in" className="mt-5">
      {state && <Notice isGood={state.isGood}>{state.told}</Notice>}
      <ul className="mt-2">
        {devices.map(({ id, words, since, isThisOne }) => (
          <li
            key={id}
            className="flex min-h-14 flex-wrap items-center justify-between gap-3 border-t border-line py-2 first:border-0"
          >
            <span>
              {words}
              <span className="block text-sm text-ink-2">
                since <LocalTime at={since} />
              </span>
            </span>
            {isThisOne ? (
              <strong className="text-sm">this one</strong>
            ) : (
              <form action={send}>
                <input type="hidden" name="session" value={id} />
                <Button type="submit" look="quiet" aria-label={`Sign out there: ${words}`}>
                  Sign out there
                </Button>
              </form>
            )}
          </li>
        ))}
      </ul>
      {devices.length > 1 && (
        <form action={send} className="mt-3">
          <Button type="submit" look="quiet">
            Sign out everywhere but here
          </Button>
        </form>
      )}
    </Sheet>
  );
}
