"use client";

import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { PasswordFields } from "@/app/_ui/person-fields";
import { useFirstProblem } from "@/app/_ui/use-first-problem";
import type { chooseOwn } from "./actions";

export function OwnPasswordForm({ choose }: { readonly choose: typeof chooseOwn }) {
  const [problem, send] = useActionState(choose, null);
  const form = useFirstProblem(problem);
  return (
    <form ref={form} action={send} className="mt-6 space-y-4 rounded-md border border-line bg-sheet p-6">
      {problem && <Notice>{problem.message}</Notice>}
      <PasswordFields problems={problem?.fields} label="New password" />
      <p className="text-sm text-ink-2">
        You need it every time you sign in. If you forget it, your tutor gives you a new code; nobody can look it up.
      </p>
      <Button type="submit">Keep this password</Button>
    </form>
  );
}
