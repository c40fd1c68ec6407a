"use client";

import Link from "next/link";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { Sheet } from "@/app/_ui/sheet";
import type { DemoState, openDemo, setUp, signInFromDemo } from "./actions";
import { DemoAccounts } from "./demo-accounts";
import { OwnWorkshopForm } from "./own-workshop-form";

interface FirstStartProps {
  readonly isSetUp: boolean;
  readonly setUp: typeof setUp;
  readonly openDemo: typeof openDemo;
  readonly signInFromDemo: typeof signInFromDemo;
}

/** The two ways to begin, and the demo's passwords, which are shown here and nowhere again. */
export function FirstStart({ isSetUp, setUp, openDemo, signInFromDemo }: FirstStartProps) {
  const [demo, sendDemo] = useActionState<DemoState | null, FormData>(openDemo, null);
  if (demo?.step === "opened") {
    return <DemoAccounts {...demo} signIn={signInFromDemo} />;
  }
  if (isSetUp) {
    return (
      <p className="mt-6">
        This workshop is set up already. <Link href="/sign-in">Sign in</Link>
      </p>
    );
  }
  return (
    <div className="mt-6 grid gap-5 lg:grid-cols-[3fr_2fr]">
      <Sheet title="Your own workshop">
        <OwnWorkshopForm setUp={setUp} />
      </Sheet>
      <Sheet title="A look round first">
        <p className="mt-2 text-ink-2">
          Opens an invented workshop: two tutors, two classes and 24 learners with five weeks of practice, drills,
          sittings and re-sits. You are in at once; that past is written meanwhile.
        </p>
        <form action={sendDemo} className="mt-4 space-y-3">
          {demo?.step === "refused" && <Notice>{demo.problem.message}</Notice>}
          <Button type="submit">Open the demo workshop</Button>
          <p className="text-ink-2 text-sm">Or begin without anything done yet, with one tutor and four learners:</p>
          <Button type="submit" look="quiet" name="past" value="none">
            Open it with people only
          </Button>
        </form>
        <p className="mt-4 text-ink-2 text-sm">Passwords are drawn by chance and shown once.</p>
        <p className="mt-4 text-sm text-ink-2">
          To change to a workshop of your own later, stop Toeline, move the folder <code>data</code> away and start it
          again.
        </p>
      </Sheet>
    </div>
  );
}
