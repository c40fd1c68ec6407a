"use client";

import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
import { PassMarkFields } from "@/app/_ui/pass-mark-fields";
import { useFirstProblem } from "@/app/_ui/use-first-problem";
import type { WorkshopSettings } from "@/lib/workshop";
import type { changeSettings } from "./actions";

interface SettingsFormProps {
  readonly settings: WorkshopSettings;
  readonly change: typeof changeSettings;
}

export function SettingsForm({ settings, change }: SettingsFormProps) {
  const [state, send] = useActionState(change, null);
  const problem = state && !state.isStored ? state.problem : null;
  const form = useFirstProblem(problem);
  return (
    <form ref={form} action={send} className="mt-3 space-y-4">
      {problem && <Notice>{problem.message}</Notice>}
      {state?.isStored && <Notice isGood>Stored. Plates taken from now on go by it.</Notice>}
      <Field
        key={settings.name}
        name="name"
        label="Name"
        maxLength={60}
        required
        defaultValue={settings.name}
        problem={problem?.fields.name}
      />
      <fieldset>
        <legend className="mb-2 text-sm font-medium">Marks needed to pass, unless a learner sets others</legend>
        <PassMarkFields
          passMarks={settings.passMarks}
          problems={{ plate: problem?.fields["passMarks.plate"], fillet: problem?.fields["passMarks.fillet"] }}
        />
      </fieldset>
      <label className="flex min-h-11 cursor-pointer items-center gap-3">
        <input
          type="checkbox"
          name="allowsOwnAccounts"
          defaultChecked={settings.allowsOwnAccounts}
          className="size-5 accent-action"
        />
        Learners may make their own accounts
      </label>
      <Button type="submit" look="quiet">
        Store
      </Button>
    </form>
  );
}
