import { sentenceFor } from "./messages";
import type { Refusal, RefusalCode } from "./refusal";

/** What a form shows after it was sent and refused. */
export interface FormProblem {
  readonly message: string;
  /** By the name of the field. */
  readonly fields: Readonly<Record<string, string>>;
  /** What was typed, for another try; never a password. */
  readonly typed: Readonly<Record<string, string>>;
}

const NEVER_SENT_BACK = new Set(["password", "confirmation", "currentPassword"]);

/** Refusals that one field is to blame for. */
const AT_FIELD: Partial<Record<RefusalCode, Readonly<Record<string, string>>>> = {
  "sign-in-name-taken": { signInName: "Taken already." },
  "code-as-password": { password: "Not the code from the slip." },
  "no-such-join-code": { joinCode: "Not a code of a class now." },
  "name-differs": { signInName: "Not their sign-in name." },
  "wrong-password": { currentPassword: "Not the present one." },
};

/** A refusal as a form shows it: one sentence for the whole, one for each field that is wrong. */
export function problemOf(
  refusal: Refusal & { readonly fields?: Readonly<Record<string, string>> },
  typed: Readonly<Record<string, string>> = {},
): FormProblem {
  return {
    message: sentenceFor(refusal.code),
    fields: refusal.fields ?? AT_FIELD[refusal.code] ?? {},
    typed: Object.fromEntries(Object.entries(typed).filter(([name]) => !NEVER_SENT_BACK.has(name))),
  };
}

/** The texts of a form, by field. */
export function textsOf(form: FormData): Record<string, string> {
  return Object.fromEntries([...form].filter((entry): entry is [string, string] => typeof entry[1] === "string"));
}
