import type { FormProblem } from "@/app/_server/form-state";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
import { SignInNameField } from "@/app/_ui/person-fields";
import { useFirstProblem } from "@/app/_ui/use-first-problem";

interface AddLearnerProps {
  readonly send: (form: FormData) => void;
  readonly problem: FormProblem | null;
}

export function AddLearner({ send, problem }: AddLearnerProps) {
  const form = useFirstProblem(problem);
  return (
    <form ref={form} action={send} className="mt-3 space-y-4">
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
