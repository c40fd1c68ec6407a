import type { Criteria } from "../criteria";
import type { Report } from "../report";
import type { MarkedSection, Section } from "../results";

/** An open practice takes saves; a handed-in one never changes again. */
export type PracticeState = "open" | "handed-in";

/** Whether the table of the criteria lies beside the learner, or has to be known by heart. */
export const BOOKS = ["open", "closed"] as const;
export type Book = (typeof BOOKS)[number];

/** How many plates one learner may have on the bench unfinished; each takes room and time to make. */
export const MAX_OPEN_PRACTICES = 5;

/** One learner at one piece. Knows nothing of what there is to find. */
export interface Practice {
  readonly id: string;
  readonly userId: string;
  readonly specimenId: string;
  /** The section of a sitting that it is; null where it is for practice. */
  readonly runId: string | null;
  readonly state: PracticeState;
  readonly section: Section;
  /** 0 to 100, at most one decimal. */
  readonly passMark: number;
  /** By which indications and piece are sentenced, as they were when it was begun; null where nothing is. */
  readonly criteria: Criteria | null;
  readonly book: Book;
  readonly report: Report;
  /** Number of the last save that was accepted; 0 before the first. */
  readonly sequence: number;
  /** The window that sent it; null before the first save and where the sender did not say. */
  readonly windowId: string | null;
  readonly startedAt: Date;
  readonly savedAt: Date | null;
  /** From then on the report stands, but for its answers to the questions that follow; null before. */
  readonly reportClosedAt: Date | null;
  readonly handedInAt: Date | null;
  /** The marks, once handed in; empty before. */
  readonly marks: readonly SectionMark[];
}

/** A practice in a list, without the table of its criteria. */
export type ListedPractice = Omit<Practice, "criteria">;

/** What a section came to, without its account. */
export interface SectionMark {
  readonly section: MarkedSection;
  /** 0 to 100, at most one decimal. */
  readonly passMark: number;
  /** Thousandths of a mark, 0 to 100,000; `shownMark` of lib/results rounds it for people. */
  readonly markThousandths: number;
  readonly isPassed: boolean;
  readonly ruleVersion: string;
  /** What tutors' acts leave of it, beside what was computed; absent where no tutor has acted on it. */
  readonly reviewed?: ReviewedMark;
}

export interface ReviewedMark {
  readonly markThousandths: number;
  readonly isPassed: boolean;
  /** When an act last changed the mark that counts, or else of the first act. */
  readonly at: Date;
}

/** The mark that counts, for passing and for what is to be sat again: as reviewed, or else as computed. */
export const countingMark = ({ markThousandths, isPassed, reviewed }: SectionMark): Omit<ReviewedMark, "at"> =>
  reviewed ?? { markThousandths, isPassed };
