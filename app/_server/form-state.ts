import { sentenceFor } from "./messages";
import type { Refusal } from "./refusal";

/** What a form shows after it was sent and refused. */
export interface FormProblem {
  readonly message: string;
  /** By the name of the field. */
  readonly fields: Readonly<Record<string, string>>;
  /** What was typed, for another try; never a password. */
  readonly typed: Readonly<Record<string, string>>;
}

const NEVER_SENT_BACK = new Set(["password", "confirmation", "currentPassword"]);

/** A refusal as a form shows it: one sentence for the whole, one for each field that is wrong. */
export function problemOf(
  refusal: Refusal & { readonly fields?: Readonly<Record<string, string>> },
  typed: Readonly<Record<string, string>> = {},
): FormProblem {
  return {
    message: sentenceFor(refusal.code),
    fields: refusal.fields ?? {},
    typed: Object.fromEntries(Object.entries(typed).filter(([name]) => !NEVER_SENT_BACK.has(name))),
  };
}

/** The texts of a form, by field. */
export function textsOf(form: FormData): Record<string, string> {
  return Object.fromEntries([...form].filter((entry): entry is [string, string] => typeof entry[1] === "string"));
}
