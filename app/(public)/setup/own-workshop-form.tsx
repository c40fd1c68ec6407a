"use client";

import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
import { PersonFields } from "@/app/_ui/person-fields";
import { useFirstProblem } from "@/app/_ui/use-first-problem";
import type { setUp } from "./actions";

export function OwnWorkshopForm({ setUp: action }: { readonly setUp: typeof setUp }) {
  const [problem, send] = useActionState(action, null);
  const form = useFirstProblem(problem);
  return (
    <form ref={form} action={send} className="mt-4 space-y-4">
      {problem && <Notice>{problem.message}</Notice>}
      <Field
        name="workshop"
        label="Name of the workshop"
        maxLength={60}
        required
        defaultValue={problem?.typed.workshop}
        problem={problem?.fields.workshop}
      />
      <fieldset className="space-y-4 border-t border-line pt-4">
        <legend className="sr-only">The tutor's account</legend>
        <p className="text-sm text-ink-2" aria-hidden="true">
          You are its tutor. This is your account:
        </p>
        <PersonFields problems={problem?.fields} typed={problem?.typed} />
      </fieldset>
      <Button type="submit">Set up and sign in</Button>
    </form>
  );
}
