import { timeOf } from "../report/call-words";
import type { LiveRun } from "./live-run";
import { exactLeft } from "./time-words";

/** Why the bench is covered. */
export type CoverKind = "paused" | "elsewhere" | "time-is-up" | "closed-by-tutor" | "handed-in" | "void";

export interface CoverFacts {
  readonly run: LiveRun;
  /** Whether another window writes. */
  readonly isElsewhere: boolean;
  /** ms. */
  readonly left: number;
  /** Whether there is no connection. */
  readonly isOffline: boolean;
  /** Whether everything that was written here is on the server. */
  readonly isAllSaved: boolean;
  /** Whether the rest is on its way, and the server has not refused it. */
  readonly isBeingSent: boolean;
  /** When the server last kept a version, ISO; null where it never did. */
  readonly savedAt: string | null;
}

/** Why the bench is to be covered now; null where it is not. */
export function coverKind({
  run,
  isElsewhere,
  left,
}: Pick<CoverFacts, "run" | "isElsewhere" | "left">): CoverKind | null {
  switch (run.shut) {
    case "handed-in":
    case "void":
    case "closed-by-tutor":
    case "time-is-up":
      return run.shut;
  }
  // by its own reckoning, until the server says the same
  if (run.clock.state === "going" && left <= 0) return "time-is-up";
  if (isElsewhere) return "elsewhere";
  return run.isPaused ? "paused" : null;
}

const TITLES: Readonly<Record<CoverKind, string>> = {
  paused: "The clock stands",
  elsewhere: "This section is open in another window",
  "time-is-up": "Your time is over",
  "closed-by-tutor": "Your tutor has closed this section",
  "handed-in": "This section is handed in",
  void: "This section does not count",
};

export interface CoverWords {
  readonly title: string;
  /** What happened, what is kept, what to do. */
  readonly sentences: readonly string[];
}

export function coverWords(kind: CoverKind, facts: CoverFacts): CoverWords {
  return { title: TITLES[kind], sentences: sentencesOf(kind, facts) };
}

function sentencesOf(kind: CoverKind, facts: CoverFacts): readonly string[] {
  const { run, left, isAllSaved, isBeingSent, isOffline } = facts;
  switch (kind) {
    case "paused":
      return [
        `Your tutor has paused ${run.isSittingPaused ? "the sitting" : "your section"}, so the bench is covered.`,
        isAllSaved ? savedWords(facts) : "What you wrote last is kept in this browser and sent when the clock goes on.",
        `You have ${exactLeft(left)} left. The bench opens by itself; there is nothing for you to do.`,
      ];
    case "elsewhere":
      return [
        "Only one window writes at a time, and that is the newer one. Nothing can be changed here.",
        isAllSaved
          ? savedWords(facts)
          : "What you wrote here and was not saved is kept in this browser. If you go on here, it is sent, or you choose between both versions.",
        "Go on in the other window, or take the section over to this one.",
      ];
    case "time-is-up":
    case "closed-by-tutor":
      if (run.shut === null) {
        return [
          "The bench takes nothing more, and what is saved is handed in for you.",
          isAllSaved ? savedWords(facts) : isOffline ? UNSENT_WORDS : "What you wrote last is being sent now.",
        ];
      }
      return [
        `Your section was closed with the last save${facts.savedAt ? ` of ${timeOf(facts.savedAt)}` : ", which is an empty report"}, and that is handed in for you.`,
        isAllSaved
          ? "Everything you wrote is in it."
          : isBeingSent && !isOffline
            ? "What you wrote after that is being sent now."
            : "What you wrote after that did not come to the server in time. It is kept in this browser: tell your tutor, who can open the section again.",
      ];
    case "handed-in":
      return isAllSaved
        ? ["It is kept as you handed it in, and nothing is added to it any more."]
        : [
            "It was handed in from another window and is kept as it was there.",
            "What you wrote here and was not saved is not part of it. It is kept in this browser; tell your tutor.",
          ];
    case "void":
      return ["Your tutor has made it void. What you wrote is kept; the page of the sitting says why."];
  }
}

const UNSENT_WORDS =
  "There is no connection, so what you wrote since then could not be sent. It is kept in this browser: tell your tutor, who can open the section again.";

const savedWords = ({ savedAt }: CoverFacts): string =>
  savedAt ? `Everything you wrote is saved, last at ${timeOf(savedAt)}.` : "Nothing has been written yet.";
