import { Field } from "@/app/_ui/field";

/** Why; the learner reads it. */
export function ReasonField({ problem }: { readonly problem?: string }) {
  return (
    <Field
      name="reason"
      label="Reason"
      hint="The learner reads it, with your name and the date."
      autoComplete="off"
      maxLength={300}
      problem={wrong(problem)}
    />
  );
}

/** What would be right, as a sentence: the field's name stands over it already. */
export const wrong = (message: string | undefined): string | undefined =>
  message === undefined ? undefined : `Needed: ${message.replace(/^\w+: /, "")}.`;
