"use client";

import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
import { PasswordFields } from "@/app/_ui/person-fields";
import { Sheet } from "@/app/_ui/sheet";
import { useFirstProblem } from "@/app/_ui/use-first-problem";
import type { changePassword } from "./actions";

export function PasswordForm({ change }: { readonly change: typeof changePassword }) {
  const [state, send] = useActionState(change, null);
  const problem = state && !state.isChanged ? state.problem : null;
  const form = useFirstProblem(problem);
  return (
    <Sheet title="Change your password" className="mt-6">
      <form ref={form} action={send} className="mt-4 space-y-4">
        {problem && <Notice>{problem.message}</Notice>}
        {state?.isChanged && <Notice isGood>Your password is changed, and every other device is signed out.</Notice>}
        <Field
          name="currentPassword"
          label="Present password"
          type="password"
          autoComplete="current-password"
          required
          problem={problem?.fields.currentPassword}
        />
        <PasswordFields problems={problem?.fields} label="New password" />
        <Button type="submit">Change it</Button>
      </form>
    </Sheet>
  );
}
