import { Field } from "@/app/_ui/field";

interface JoinCodeFieldProps {
  readonly isRequired: boolean;
  readonly hint: string;
  readonly typed?: string;
  readonly problem?: string;
}

/** The code of a class, as a tutor writes it on the board. */
export function JoinCodeField({ isRequired, hint, typed, problem }: JoinCodeFieldProps) {
  return (
    <Field
      name="joinCode"
      label={isRequired ? "Join code" : "Join code, if you have one"}
      autoComplete="off"
      autoCapitalize="characters"
      spellCheck={false}
      maxLength={12}
      required={isRequired}
      defaultValue={typed}
      hint={problem ? undefined : hint}
      problem={problem}
    />
  );
}
