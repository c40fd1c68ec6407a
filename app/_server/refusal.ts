/** Everything that can be refused to somebody who uses the workshop. */
export const REFUSAL_CODES = [
  "not-signed-in",
  "not-permitted",
  "own-password-needed",
  "foreign-origin",
  "not-json",
  "too-large",
  "invalid-input",
  "already-set-up",
  "not-set-up",
  "sign-in-name-taken",
  "own-accounts-off",
  "wrong-sign-in",
  "slip-used",
  "wrong-password",
  "too-many-tries",
  "too-many-codes",
  "code-as-password",
  "no-such-join-code",
  "no-such-session",
  "no-such-learner",
  "no-such-tutor",
  "no-such-class",
  "class-archived",
  "last-tutor",
  "list-changed",
  "no-such-practice",
  "no-such-surface",
  "too-many-open",
  "specimen-not-made",
  "specimen-not-failed",
  "malformed-report",
  "stale-save",
  "report-open",
  "report-closed",
  "no-questions",
  "already-handed-in",
  "not-handed-in",
  "malformed-criteria",
  "no-such-criteria",
  "newer-criteria",
  "no-such-paper",
  "newer-paper",
  "paper-put-away",
] as const;
export type RefusalCode = (typeof REFUSAL_CODES)[number];

export interface Refusal<Code extends RefusalCode = RefusalCode> {
  readonly ok: false;
  readonly code: Code;
}

/** The value of an expected refusal, with whatever the caller can do something with. */
export function refuse<Code extends RefusalCode, Details extends object = object>(
  code: Code,
  details?: Details,
): Refusal<Code> & Details {
  return { ok: false, code, ...(details as Details) };
}
