"use client";

import { Button } from "@/app/_ui/button";
import { Sheet } from "@/app/_ui/sheet";
import { type ClassGroup, shownJoinCode } from "@/lib/classes";
import type { switchJoinCode } from "../actions";
import { ToldForm } from "../told-form";

interface JoinCodeProps {
  readonly group: ClassGroup;
  readonly change: typeof switchJoinCode;
}

/** The code for the board, to be made, renewed and switched off. */
export function JoinCode({ group, change }: JoinCodeProps) {
  const { joinCode } = group;
  return (
    <Sheet title="Join code">
      <ToldForm action={change}>
        {() => (
          <>
            <input type="hidden" name="class" value={group.id} />
            {joinCode ? (
              <>
                <p className="font-mono text-4xl font-semibold tracking-widest" data-join-code>
                  {shownJoinCode(joinCode)}
                </p>
                <p className="text-ink-2">
                  Write it on the board. Learners choose "New here?" at the sign-in, or "Join a class" on their account,
                  and type it. Whoever knows it can join: switch it off when everybody is in.
                </p>
              </>
            ) : (
              <p className="text-ink-2">
                Switched off. With a code for the board, learners come into this class by themselves, also those who
                make their own account.
              </p>
            )}
            <div className="flex flex-wrap gap-3">
              <Button type="submit" look="quiet" name="to" value="new">
                {joinCode ? "Make another code" : "Make a code"}
              </Button>
              {joinCode && (
                <Button type="submit" look="quiet" name="to" value="off">
                  Switch it off
                </Button>
              )}
            </div>
          </>
        )}
      </ToldForm>
    </Sheet>
  );
}
