"use client";

import Link from "next/link";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
import { useFirstProblem } from "@/app/_ui/use-first-problem";
import type { signIn } from "./actions";

interface SignInFormProps {
  readonly signIn: typeof signIn;
  /** The page somebody came for. */
  readonly landing: string | null;
  readonly canJoin: boolean;
}

export function SignInForm({ signIn: action, landing, canJoin }: SignInFormProps) {
  const [problem, send] = useActionState(action, null);
  const form = useFirstProblem(problem);
  return (
    <>
      <form ref={form} action={send} className="mt-6 space-y-4 rounded-md border border-line bg-sheet p-6">
        {problem && <Notice>{problem.message}</Notice>}
        {landing && <input type="hidden" name="to" value={landing} />}
        <Field
          name="username"
          label="Sign-in name"
          autoComplete="username"
          autoCapitalize="none"
          spellCheck={false}
          defaultValue={problem?.typed.username}
          required
        />
        <Field
          name="password"
          label="Password"
          type="password"
          autoComplete="current-password"
          hint="The first time: the one-time code from your slip."
          required
        />
        <Button type="submit">Sign in</Button>
      </form>
      <p className="mt-4">
        New here?{" "}
        <Link href="/join" className="font-medium text-action underline underline-offset-4">
          {canJoin ? "Make your own account to practise" : "Make an account with the join code of your class"}
        </Link>
      </p>
    </>
  );
}
