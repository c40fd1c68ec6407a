import { z } from "zod";

/** What somebody is in the workshop: a tutor runs the desk, a learner inspects plates. */
export const ROLES = ["tutor", "learner"] as const;
export type Role = (typeof ROLES)[number];

/** Somebody with an account in the workshop. */
export interface Person {
  readonly id: string;
  readonly name: string;
  readonly signInName: string;
  readonly role: Role;
  /** Signs in with a code that a tutor gave out, and has to choose a password of their own before anything else. */
  readonly hasOneTimeCode: boolean;
  readonly createdAt: Date;
}

const ALPHABET = new Intl.Collator("en", { sensitivity: "base", numeric: true });

/** Orders people by name, with accented letters beside those without. */
export function byName(a: Pick<Person, "name">, b: Pick<Person, "name">): number {
  return ALPHABET.compare(a.name, b.name);
}

export const PASSWORD_MIN_LENGTH = 10;
const PASSWORD_MAX_LENGTH = 128;

/** The name shown to others, 1 to 60 characters after trimming. */
export const personNameSchema = z.string().trim().min(1, "Write a name.").max(60, "Keep the name under 60 characters.");

/** What a sign-in name is made of, as people are told it before and after they try. */
export const SIGN_IN_NAME_RULE = "3 to 30 letters from a to z, digits, dots, hyphens or underscores.";

/** The name typed at sign-in: 3 to 30 of the letters a to z, digits, dots, hyphens and underscores; capitals do not count. */
export const signInNameSchema = z
  .string()
  .trim()
  .toLowerCase()
  .regex(/^[a-z0-9._-]{3,30}$/, `Use ${SIGN_IN_NAME_RULE}`);

/** A new password and the same once more: at least 10 characters. */
export const newPasswordSchema = z
  .object({
    password: z
      .string()
      .min(PASSWORD_MIN_LENGTH, `Use at least ${PASSWORD_MIN_LENGTH} characters.`)
      .max(PASSWORD_MAX_LENGTH, `Use at most ${PASSWORD_MAX_LENGTH} characters.`),
    confirmation: z.string(),
  })
  .refine(({ password, confirmation }) => password === confirmation, {
    error: "The two passwords are not the same.",
    path: ["confirmation"],
  });
export type NewPassword = z.infer<typeof newPasswordSchema>;

/** What somebody fills in to get an account. */
export const newPersonSchema = z.intersection(
  z.object({ name: personNameSchema, signInName: signInNameSchema }),
  newPasswordSchema,
);
export type NewPerson = z.infer<typeof newPersonSchema>;
