"use client";

import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
import { useFirstProblem } from "@/app/_ui/use-first-problem";
import type { Person } from "@/lib/workshop";
import type { erase } from "./actions";

interface EraseFormProps {
  readonly learner: Pick<Person, "id" | "name" | "signInName">;
  readonly erase: typeof erase;
}

/** Asks for the sign-in name, so that nobody is erased by a slip of the hand. */
export function EraseForm({ learner, erase: send }: EraseFormProps) {
  const [problem, act] = useActionState(send, null);
  const form = useFirstProblem(problem);
  return (
    <form ref={form} action={act} className="mt-4 max-w-md space-y-4">
      {problem && <Notice>{problem.message}</Notice>}
      <input type="hidden" name="learner" value={learner.id} />
      <Field
        name="signInName"
        label={`Type ${learner.signInName} to confirm`}
        autoComplete="off"
        autoCapitalize="none"
        spellCheck={false}
        required
        defaultValue={problem?.typed.signInName}
        problem={problem?.fields.signInName}
      />
      <Button type="submit" look="final">
        Erase {learner.name} for good
      </Button>
    </form>
  );
}
