/** Why something cannot be done with a run, in words for whoever tried: what happened, what is kept, what to do. */
export const RUN_REFUSALS = {
  "not-begun": "The sitting has not begun. Wait until your tutor begins it.",
  "sitting-paused": "The sitting is paused. The clock stands; go on when your tutor resumes it.",
  "sitting-closed": "The sitting is closed. Nothing can be started in it; ask your tutor.",
  "start-is-over": "The sitting has been closed once, and no section can be started in it any more. Ask your tutor.",
  "other-section-open": "Another section is still open. One is sat at a time: close that one first.",
  "not-started": "The section has not been started, so there is nothing to change in it.",
  paused: "The clock stands. Your last save is kept; what you write is taken when the clock goes on.",
  "handed-in": "The section is handed in and kept as it is. It takes nothing more.",
  "time-is-up": "The time is up. The section is closed with the last save.",
  "closed-by-tutor": "Your tutor has closed the section. It is kept with the last save.",
  void: "The section is void and does not count. What was written is kept.",
  "other-window": "The section is open in another window. That one writes; take over here if you mean to go on here.",
  "stale-save": "Another window has saved something newer. That is kept; go on from there.",
  "report-open": "The questions come once the report is closed. Close the report first.",
  "report-closed": "The report is closed and kept as it is. Only the questions can still be answered.",
  "still-open": "The section is still open. Give minutes on top instead.",
  "re-opened": "The section was opened again with minutes of its own. Give minutes on top instead.",
  "would-end-at-once": "With so little extra time the section would be over now. Choose a larger factor, or close it.",
  "marks-seen": "The learner has seen what there was to find. Set a re-sit on a fresh piece instead.",
  "marks-not-released": "Your marks are not released yet. You see them as soon as your tutor releases them.",
} as const;
export type RunRefusal = keyof typeof RUN_REFUSALS;

/** The same for a sitting; they speak to the tutor. */
export const SITTING_REFUSALS = {
  "not-open": "Open the sitting first, so that learners can come in.",
  "not-yet-begun": "The sitting has not begun. Begin it first.",
  "already-begun": "The sitting has begun.",
  "is-paused": "The sitting is paused. Resume it first.",
  "is-closed": "The sitting is closed. Open single sections again if somebody needs more time.",
  "is-released": "The marks are released, and that is final. Only voiding the sitting is left.",
  "not-closed": "Close the sitting first; then marks can be released.",
  "not-settled": "The last saves may still be coming in. Try again in a few seconds.",
  "is-void": "The sitting is void. What was written is kept; plan another one.",
  "no-such-run": "There is no such section in this sitting.",
  "not-in-paper": "The paper of this sitting has no such section.",
  "already-in": "The learner has this section in this sitting already.",
} as const;
export type SittingRefusal = keyof typeof SITTING_REFUSALS | RunRefusal;
