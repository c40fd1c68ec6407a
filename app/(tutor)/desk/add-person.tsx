import type { FormProblem } from "@/app/_server/form-state";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
import { SignInNameField } from "@/app/_ui/person-fields";
import { useFirstProblem } from "@/app/_ui/use-first-problem";
import type { AccessAsked } from "./actions";

interface AddPersonProps {
  readonly asked: AccessAsked;
  readonly send: (form: FormData) => void;
  readonly problem: FormProblem | null;
}

/** A form for a new account; `asked` says whose. */
export function AddPerson({ asked, send, problem }: AddPersonProps) {
  const form = useFirstProblem(problem);
  return (
    <form ref={form} action={send} className="mt-3 space-y-4">
      <input type="hidden" name="asked" value={asked} />
      {problem && <Notice>{problem.message}</Notice>}
      <Field
        name="name"
        label="Name"
        maxLength={60}
        autoComplete="off"
        required
        defaultValue={problem?.typed.name}
        problem={problem?.fields.name}
      />
      <SignInNameField autoComplete="off" typed={problem?.typed} problems={problem?.fields} />
      <Button type="submit" look="quiet">
        Make the account
      </Button>
    </form>
  );
}
