import type { AttemptKind } from "../sittings";

/** What a piece was handed in for. */
export type Work =
  | { readonly kind: "practice" }
  | {
      readonly kind: "sitting";
      readonly paper: string;
      /** What it stands for in the learner's course; null where the sitting is not closed or the learner has left the class. */
      readonly attempt: AttemptKind | null;
      /** Of the course, from 1; null where the attempt is. */
      readonly round: number | null;
      /** Made void: it stands in lists and files, and counts for nothing. */
      readonly isVoid: boolean;
    };

export const PRACTICE: Work = { kind: "practice" };

export const isVoidWork = (work: Work): boolean => work.kind === "sitting" && work.isVoid;

/** What an attempt is, in words for tables. */
export const ATTEMPT_WORDS: Readonly<Record<AttemptKind, string>> = {
  first: "first time",
  "re-sit": "re-sit",
  borderline: "one more piece like it",
  extra: "sat once more, changes nothing",
  void: "void, does not count",
};

/** "practice", or "Welder's plate and fillet, round 2, re-sit". */
export function workWords(work: Work): string {
  if (work.kind === "practice") return "practice";
  const { paper, attempt, round, isVoid } = work;
  if (isVoid) return `${paper}, ${ATTEMPT_WORDS.void}`;
  return attempt === null || round === null ? paper : `${paper}, round ${round}, ${ATTEMPT_WORDS[attempt]}`;
}
