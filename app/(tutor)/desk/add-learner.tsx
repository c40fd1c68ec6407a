"use client";

import { useActionState } from "react";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Sheet } from "@/app/_ui/sheet";
import { AccessSlip } from "./access-slip";
import type { add } from "./actions";

export function AddLearner({ add: action }: { readonly add: typeof add }) {
  const [state, send] = useActionState(action, null);
  const problem = state && !state.isGiven ? state.problem : null;
  return (
    <Sheet title="Add a learner">
      <form action={send} className="mt-3 space-y-4">
        <AccessSlip state={state} />
        <Field
          name="name"
          label="Name"
          maxLength={60}
          autoComplete="off"
          required
          defaultValue={problem?.typed.name}
          problem={problem?.fields.name}
        />
        <Field
          name="signInName"
          label="Sign-in name"
          maxLength={30}
          autoComplete="off"
          autoCapitalize="none"
          spellCheck={false}
          required
          hint="3 to 30 letters, digits, dots, hyphens."
          defaultValue={problem?.typed.signInName}
          problem={problem?.fields.signInName}
        />
        <Button type="submit" look="quiet">
          Make the account
        </Button>
      </form>
    </Sheet>
  );
}
