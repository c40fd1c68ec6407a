"use client";

import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { Sheet } from "@/app/_ui/sheet";
import type { Person } from "@/lib/workshop";
import type { giveAccess, signOutEverywhere } from "../actions";
import { NewCode } from "../new-code";
import { SlipsPanel } from "../slips/slips-panel";

interface AccessProps {
  readonly learner: Person;
  readonly workshop: string;
  readonly publicAddress: string | null;
  readonly giveAccess: typeof giveAccess;
  readonly signOut: typeof signOutEverywhere;
}

/** A learner who forgot the password, or left a device signed in. */
export function Access({ learner, giveAccess: give, signOut, ...place }: AccessProps) {
  const [{ given, problem }, sendGive] = useActionState(give, { given: null, problem: null });
  const [out, sendOut] = useActionState(signOut, null);
  return (
    <Sheet title="Signing in" className="mt-5">
      {given && (
        <SlipsPanel
          key={given.slip.code}
          slips={[given.slip]}
          told="The password before works no more, and every device is signed out."
          {...place}
        />
      )}
      {problem && <Notice>{problem.message}</Notice>}
      {out && "told" in out && <Notice isGood>{out.told}</Notice>}
      {out && "problem" in out && <Notice>{out.problem.message}</Notice>}
      <p className="mt-2 text-ink-2">
        {learner.hasOneTimeCode
          ? "A one-time code is out and no password chosen yet."
          : "Signs in with a password of their own, which nobody can look up."}
      </p>
      <div className="mt-3 flex flex-wrap gap-3">
        <NewCode person={learner} send={sendGive} />
        <form action={sendOut}>
          <input type="hidden" name="learner" value={learner.id} />
          <Button type="submit" look="quiet">
            Sign out everywhere
          </Button>
        </form>
      </div>
    </Sheet>
  );
}
