"use client";

import Link from "next/link";
import { useActionState, useEffect, useState } from "react";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
import { useFirstProblem } from "@/app/_ui/use-first-problem";
import { readSlipFragment, type SlipAccess } from "@/lib/workshop";
import type { signInWithSlip } from "./actions";

interface SlipFormProps {
  readonly signIn: typeof signInWithSlip;
  /** Who is signed in on this device now. */
  readonly signedInAs: string | null;
}

/**
 * Takes name and code out of the fragment of the address, which is in no server's log, and out of the address bar. It
 * signs nobody in before the button is pressed, so that a link alone puts nobody into an account.
 */
export function SlipForm({ signIn, signedInAs }: SlipFormProps) {
  const [problem, send] = useActionState(signIn, null);
  const [access, setAccess] = useState<SlipAccess | null>(null);
  const form = useFirstProblem(problem);
  useEffect(() => {
    const read = readSlipFragment(location.hash);
    if (!read) return;
    setAccess(read);
    history.replaceState(null, "", location.pathname);
  }, []);
  return (
    <>
      <form
        ref={form}
        key={access?.signInName}
        action={send}
        className="mt-6 space-y-4 rounded-md border border-line bg-sheet p-6"
      >
        {problem && <Notice>{problem.message}</Notice>}
        {signedInAs && (
          <Notice>
            {signedInAs} is signed in on this device. Signing in with your slip signs {signedInAs} out here; everything
            they saved is kept.
          </Notice>
        )}
        <Field
          name="username"
          label="Sign-in name"
          autoComplete="username"
          autoCapitalize="none"
          spellCheck={false}
          defaultValue={problem?.typed.username ?? access?.signInName}
          required
        />
        <Field
          name="password"
          label="One-time code"
          autoComplete="off"
          autoCapitalize="none"
          spellCheck={false}
          defaultValue={access?.code}
          hint="Three groups of four, as on the slip."
          required
        />
        <Button type="submit">Sign in</Button>
      </form>
      <p className="mt-4">
        A password of your own already?{" "}
        <Link href="/sign-in" className="font-medium text-action underline underline-offset-4">
          {signedInAs ? `Go on as ${signedInAs}` : "Sign in with it"}
        </Link>
      </p>
    </>
  );
}
