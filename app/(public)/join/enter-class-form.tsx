"use client";

import Link from "next/link";
import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { useFirstProblem } from "@/app/_ui/use-first-problem";
import type { enterClass } from "./actions";
import { JoinCodeField } from "./join-code-field";

export function EnterClassForm({ enter }: { readonly enter: typeof enterClass }) {
  const [state, send] = useActionState(enter, null);
  const problem = state?.problem;
  const form = useFirstProblem(problem);
  return (
    <form ref={form} action={send} className="mt-6 space-y-4 rounded-md border border-line bg-sheet p-6">
      {problem && <Notice>{problem.message}</Notice>}
      {state?.joined && <Notice isGood>You are in the class {state.joined}. Its tutors see your marks.</Notice>}
      <JoinCodeField
        isRequired
        hint="Your tutor has one for your class, such as KMT-4RW."
        typed={problem?.typed.joinCode}
        problem={problem?.fields.joinCode}
      />
      <div className="flex flex-wrap items-center gap-4">
        <Button type="submit">Join the class</Button>
        <Link href="/" className="rounded py-2 font-medium text-action underline underline-offset-4">
          Go to Today
        </Link>
      </div>
    </form>
  );
}
