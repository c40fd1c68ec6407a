import { RUN_REFUSALS, type RunRefusal, SITTING_REFUSALS, type SittingRefusal } from "@/lib/sittings";

/** What can be refused beside what a sitting and its clock refuse. */
const OWN_CODES = [
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
  "too-many-accounts",
  "code-as-password",
  "no-such-join-code",
  "no-such-session",
  "no-such-learner",
  "no-such-tutor",
  "name-differs",
  "being-sat",
  "sitting-on",
  "marks-unreleased",
  "no-record-store",
  "no-such-class",
  "class-archived",
  "last-tutor",
  "list-changed",
  "no-such-practice",
  "no-such-surface",
  "no-such-file",
  "too-many-open",
  "specimen-not-made",
  "specimen-not-failed",
  "malformed-report",
  "too-many-windows",
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
  "no-such-sitting",
  "no-such-run",
  "nobody-expected",
  "not-expected",
  "piece-not-made",
  "section-elsewhere",
  "learner-elsewhere",
  "book-closed",
  "not-reviewable",
  "no-such-line",
  "no-such-question",
  "no-such-act",
  "review-changed",
  "same-rule",
  "nothing-differs",
  "no-such-eye-round",
  "no-such-eye-task",
  "no-such-set-drill",
] as const;
export type RefusalCode = (typeof OWN_CODES)[number] | RunRefusal | SittingRefusal;

/** Everything that can be refused to somebody who uses the workshop. */
export const REFUSAL_CODES: readonly RefusalCode[] = [
  ...new Set<RefusalCode>([
    ...OWN_CODES,
    ...(Object.keys(RUN_REFUSALS) as RunRefusal[]),
    ...(Object.keys(SITTING_REFUSALS) as SittingRefusal[]),
  ]),
];

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
