"use client";

import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { PersonFields } from "@/app/_ui/person-fields";
import { useFirstProblem } from "@/app/_ui/use-first-problem";
import type { join } from "./actions";
import { JoinCodeField } from "./join-code-field";

interface JoinFormProps {
  readonly join: typeof join;
  /** False where an account may be made without a class. */
  readonly needsCode: boolean;
}

export function JoinForm({ join: action, needsCode }: JoinFormProps) {
  const [problem, send] = useActionState(action, null);
  const form = useFirstProblem(problem);
  return (
    <form ref={form} action={send} className="space-y-4 rounded-md border border-line bg-sheet p-6">
      {problem && <Notice>{problem.message}</Notice>}
      <JoinCodeField
        isRequired={needsCode}
        hint={
          needsCode
            ? "Your tutor has one for your class, such as KMT-4RW."
            : "It puts you into your tutor's class. Without one the account is for practice by yourself."
        }
        typed={problem?.typed.joinCode}
        problem={problem?.fields.joinCode}
      />
      <PersonFields problems={problem?.fields} typed={problem?.typed} />
      <Button type="submit">Make the account</Button>
    </form>
  );
}
