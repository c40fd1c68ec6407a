"use client";

import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { PersonFields } from "@/app/_ui/person-fields";
import { useFirstProblem } from "@/app/_ui/use-first-problem";
import type { join } from "./actions";

export function JoinForm({ join: action }: { readonly join: typeof join }) {
  const [problem, send] = useActionState(action, null);
  const form = useFirstProblem(problem);
  return (
    <form ref={form} action={send} className="space-y-4 rounded-md border border-line bg-sheet p-6">
      {problem && <Notice>{problem.message}</Notice>}
      <PersonFields problems={problem?.fields} typed={problem?.typed} />
      <Button type="submit">Make the account</Button>
    </form>
  );
}
