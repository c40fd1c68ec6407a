import type { SectionMark } from "@/lib/practice";
import type { Section } from "@/lib/results";
import type {
  NextInCourse,
  PaperSection,
  PlacedAttempt,
  RunRefusal,
  RunState,
  SectionRun,
  Sitting,
  SittingState,
} from "@/lib/sittings";

// What use cases of sittings answer, without anything that knows answers: pages and browsers take their types from here. Sent
// as JSON, every Date is text.

/** A clock as it is sent to a browser, which goes on by itself from the deadline and what it knows of the server's time. */
export interface ClockView {
  readonly state: "not-started" | "going" | "standing" | "stopped";
  /** While it goes: when it ends, ISO. */
  readonly deadline: string | null;
  /** While it does not go: what is left, ms. */
  readonly remaining: number | null;
}

/** One of a learner's sections in a sitting, as they may know it. */
export interface OwnSection {
  readonly runId: string;
  readonly practiceId: string;
  readonly section: Section;
  readonly isBorderline: boolean;
  readonly state: RunState;
  readonly closedBy: SectionRun["closedBy"];
  readonly clock: ClockView;
  readonly piece: "making" | "ready" | "failed";
  /** What is being done to the piece; empty when nothing is. */
  readonly stage: string;
  readonly passMark: number;
  /** What the paper's minutes are multiplied by for this learner. */
  readonly factor: number;
  readonly savedAt: Date | null;
  readonly closedAt: Date | null;
  /** Why it does not count; null where it does. */
  readonly voidReason: string | null;
  /** Whether the mark sheet may be opened. */
  readonly mayKnowMarks: boolean;
  /** Null until it may be known. */
  readonly mark: SectionMark | null;
}

/** A sitting as one learner may know it. */
export interface OwnSitting {
  readonly id: string;
  readonly paperId: string;
  readonly paperName: string;
  readonly classId: string;
  readonly className: string;
  readonly state: SittingState;
  readonly plannedAt: Date;
  /** Closed once and opened again for single learners: nobody starts anything any more. */
  readonly wasClosed: boolean;
  /** Why it does not count; null where it does. */
  readonly voidReason: string | null;
  readonly isPaused: boolean;
  /** When the marks were released; null before. */
  readonly releasedAt: Date | null;
  readonly feedback: Sitting["paper"]["feedback"];
  readonly sections: readonly OwnSection[];
}

/** A section that somebody sat, marked. */
export interface SatSection {
  readonly runId: string;
  readonly practiceId: string;
  readonly sittingId: string;
  readonly paperId: string;
  readonly paperName: string;
  readonly className: string;
  readonly closedAt: Date;
  readonly mark: SectionMark;
  readonly isVoid: boolean;
  /** What it stands for in the paper's rounds; null where the learner has left the class. */
  readonly placed: PlacedAttempt | null;
}

/** A run on the bench, as its window follows it. */
export interface LiveRun {
  readonly runId: string;
  readonly sittingId: string;
  readonly state: RunState;
  /** Why it takes nothing, as a code of the refusals; null while the learner is at it. */
  readonly shut: RunRefusal | null;
  readonly clock: ClockView;
  /** How much the clock gives in all, ms; null before the start. */
  readonly allowed: number | null;
  readonly isSittingPaused: boolean;
  /** Whether the whole sitting or this section alone is paused. */
  readonly isPaused: boolean;
  /** The window that may write; another one is read-only. */
  readonly liveWindowId: string | null;
  readonly sequence: number;
  readonly savedAt: Date | null;
  readonly closedAt: Date | null;
  readonly isReportClosed: boolean;
  readonly mayKnowMarks: boolean;
}

/** What the bench has to know of the section of a sitting that is on it. */
export interface BenchRun extends LiveRun {
  readonly aids: PaperSection["aids"];
  readonly questionCount: number;
  /** The server's time when it was read. */
  readonly now: Date;
}

/** One section of a learner on the board. */
export interface BoardRun {
  readonly runId: string;
  readonly practiceId: string;
  readonly section: Section;
  readonly isBorderline: boolean;
  readonly state: RunState;
  readonly clock: ClockView;
  readonly piece: "making" | "ready" | "failed";
  readonly startedAt: Date | null;
  readonly savedAt: Date | null;
  readonly closedAt: Date | null;
  readonly closedBy: "learner" | "clock" | "tutor" | null;
  /** Minutes that tutors gave on top, all together. */
  readonly addedMinutes: number;
  readonly isReopened: boolean;
  readonly voidReason: string | null;
  /** How much is written, as last saved: counts, and nothing of what it says. */
  readonly written: { readonly indications: number; readonly answers: number };
  /** Shown mark that counts and its verdict against its pass mark, once it is marked. */
  readonly mark: {
    readonly shown: number;
    readonly isPassed: boolean;
    readonly passMark: number;
    /** Where a tutor has acted on it: the mark as it was computed, and when what counts last changed. */
    readonly computed: { readonly shown: number; readonly isPassed: boolean } | null;
    readonly reviewedAt: Date | null;
  } | null;
  /** What it stands for in the learner's course; null until the sitting is closed and it is marked. */
  readonly placed: Pick<PlacedAttempt, "kind" | "decidedOn" | "outcome"> | null;
  /** Whether the learner has seen what there was to find. */
  readonly hasSeenMarks: boolean;
}

/** A learner of a sitting who was erased since: which sections there were, and how each had ended. */
export interface ErasedLearner {
  readonly sections: readonly {
    readonly section: Section;
    readonly isBorderline: boolean;
    readonly state: RunState;
    readonly isClosed: boolean;
  }[];
}

/** One learner on the board. */
export interface BoardLearner {
  readonly userId: string;
  readonly name: string;
  readonly isIn: boolean;
  readonly enteredAt: Date | null;
  readonly factor: number;
  readonly runs: readonly BoardRun[];
  /** Where they stand in the course of the paper; null until the sitting is closed. */
  readonly standing: Pick<NextInCourse, "isPassed" | "round" | "due"> | null;
}

/** Something a tutor did, as the board lists it. */
export interface LogEntry {
  readonly at: Date;
  readonly actorName: string;
  /** Like "add-time". */
  readonly act: string;
  readonly subject: { readonly kind: "sitting" | "run"; readonly id: string };
  readonly reason: string | null;
  readonly details: Readonly<Record<string, string | number>>;
}

/** A sitting for the tutors of its class. */
export interface Board {
  readonly sitting: {
    readonly id: string;
    readonly state: SittingState;
    readonly paperId: string;
    readonly paperName: string;
    readonly classId: string;
    readonly className: string;
    readonly plannedAt: Date;
    readonly openedAt: Date | null;
    readonly begunAt: Date | null;
    readonly closedAt: Date | null;
    readonly releasedAt: Date | null;
    readonly voidReason: string | null;
    /** Whether re-sits are due from its learners, and planned for all of them; null until it is closed. */
    readonly resits: "none" | "due" | "planned" | null;
    /** When the sitting is over for everybody, as far as is known; null while that moves with a pause. */
    readonly endsAt: Date | null;
  };
  readonly pieces: { readonly all: number; readonly ready: number; readonly failed: number };
  readonly learners: readonly BoardLearner[];
  /** Learners who were erased since, of whom nothing else is kept. */
  readonly erased: readonly ErasedLearner[];
  /** What tutors did, the earliest first. */
  readonly log: readonly LogEntry[];
}

/** A sitting in a list, for the tutors of its class. */
export interface ListedSitting {
  readonly id: string;
  readonly state: SittingState;
  readonly plannedAt: Date;
  readonly classId: string;
  readonly className: string;
  readonly paperId: string;
  readonly paperName: string;
  readonly learners: number;
  readonly sections: number;
  readonly closed: number;
}

/** Why a section is to be sat: a failed one again, one of a new round, or one of this round that was not sat. */
export type WhyDue = "re-sit" | "new-round" | "not-sat";

/** Sections of a paper that members of a class have begun and have yet to pass, and that no sitting is planned for. */
export interface DueInClass {
  readonly classId: string;
  readonly className: string;
  readonly paperId: string;
  readonly paperName: string;
  readonly learners: readonly {
    readonly id: string;
    readonly name: string;
    readonly sections: readonly { readonly section: Section; readonly why: WhyDue }[];
  }[];
}
