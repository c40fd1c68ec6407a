import type { Who } from "./school";

/** What each is answered, in the order of the columns: "yes" for anything that is no refusal of permission, otherwise the code. */
export type Answers = readonly [
  nobody: string,
  kim: string,
  ola: string,
  finn: string,
  tutor: string,
  stranger: string,
];

const [IN, FOR_TUTORS] = ["not-signed-in", "not-permitted"];

/** For everybody, signed in or not. */
export const EVERYBODY: Answers = ["yes", "yes", "yes", "yes", "yes", "yes"];
export const SIGNED_IN: Answers = [IN, "yes", "yes", "yes", "yes", "yes"];
export const LEARNERS: Answers = [IN, "yes", "yes", "yes", FOR_TUTORS, FOR_TUTORS];
export const TUTORS: Answers = [IN, FOR_TUTORS, FOR_TUTORS, FOR_TUTORS, "yes", "yes"];
/** For the tutors of the class; another one's is answered like what there is not. */
export const tutorsOf = (missing: string): Answers => [IN, FOR_TUTORS, FOR_TUTORS, FOR_TUTORS, "yes", missing];
/** For whoever has it; anybody else is answered like somebody who asks for what there is not. */
export const ownersOf = (missing: string): Answers => [IN, "yes", missing, missing, missing, missing];
/** For whoever has it, and for their tutors. */
export const ownersAndTutorsOf = (missing: string): Answers => [IN, "yes", missing, missing, "yes", missing];
/** For the learners of the class. */
export const membersOf = (missing: string): Answers => [IN, "yes", "yes", missing, missing, missing];

/** Whoever has yet to choose a password is asked for that, wherever somebody has to be signed in, unless a row says something else. */
export function expectedOf([nobody, kim, ola, finn, tutor, stranger]: Answers, newt?: string): Record<Who, string> {
  const ofNewt = newt ?? (nobody === IN ? "own-password-needed" : nobody);
  return { nobody, newt: ofNewt, kim, ola, finn, tutor, stranger };
}

const OF_PERMISSION: readonly string[] = [
  "not-signed-in",
  "own-password-needed",
  "not-permitted",
  "marks-not-released",
  "not-expected",
  "no-such-class",
  "no-such-learner",
  "no-such-practice",
  "no-such-run",
  "no-such-session",
  "no-such-sitting",
  "no-such-eye-round",
  "no-such-eye-task",
  "no-such-set-drill",
];

export const isOfPermission = (code: string): boolean => OF_PERMISSION.includes(code);

/** Those who are refused come first, since whoever may do it changes what there is. */
export const inTurn = (expected: Record<Who, string>): readonly Who[] =>
  (Object.keys(expected) as Who[]).toSorted((a, b) => Number(expected[a] === "yes") - Number(expected[b] === "yes"));
