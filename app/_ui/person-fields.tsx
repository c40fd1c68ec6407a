import { SIGN_IN_NAME_RULE } from "@/lib/workshop";
import { Field } from "./field";

interface PersonFieldsProps {
  readonly problems?: Readonly<Record<string, string>>;
  readonly typed?: Readonly<Record<string, string>>;
}

/** Who somebody is and how they will sign in. */
export function PersonFields({ problems = {}, typed = {} }: PersonFieldsProps) {
  return (
    <>
      <div className="grid gap-4 sm:grid-cols-2">
        <Field
          name="name"
          label="Your name"
          autoComplete="name"
          maxLength={60}
          required
          defaultValue={typed.name}
          problem={problems.name}
        />
        <SignInNameField autoComplete="username" typed={typed} problems={problems} />
      </div>
      <PasswordFields problems={problems} />
    </>
  );
}

interface SignInNameFieldProps extends PersonFieldsProps {
  readonly autoComplete: "username" | "off";
}

/** The name that somebody will type to sign in. */
export function SignInNameField({ autoComplete, problems = {}, typed = {} }: SignInNameFieldProps) {
  return (
    <Field
      name="signInName"
      label="Sign-in name"
      autoComplete={autoComplete}
      autoCapitalize="none"
      spellCheck={false}
      maxLength={30}
      required
      defaultValue={typed.signInName}
      hint={problems.signInName ? undefined : SIGN_IN_NAME_RULE}
      problem={problems.signInName}
    />
  );
}

interface PasswordFieldsProps {
  readonly problems?: Readonly<Record<string, string>>;
  readonly label?: string;
}

/** A new password, twice. */
export function PasswordFields({ problems = {}, label = "Password" }: PasswordFieldsProps) {
  return (
    <div className="grid gap-4 sm:grid-cols-2">
      <Field
        name="password"
        label={label}
        type="password"
        autoComplete="new-password"
        required
        hint="At least 10 characters."
        problem={problems.password}
      />
      <Field
        name="confirmation"
        label="The same again"
        type="password"
        autoComplete="new-password"
        required
        problem={problems.confirmation}
      />
    </div>
  );
}
