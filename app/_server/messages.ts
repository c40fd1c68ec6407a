import { RUN_REFUSALS, SITTING_REFUSALS } from "@/lib/sittings";
import type { RefusalCode } from "./refusal";

interface Answer {
  /** HTTP status. */
  readonly status: number;
  /** What happened, what is kept, what to do. */
  readonly sentence: string;
}

/** What a sitting and its clock refuse is in conflict with how they stand. */
const inConflict = <Code extends string>(sentences: Readonly<Record<Code, string>>) =>
  Object.fromEntries(
    Object.entries(sentences).map(([code, sentence]) => [code, { status: 409, sentence }]),
  ) as Readonly<Record<Code, Answer>>;

const ANSWERS: Readonly<Record<RefusalCode, Answer>> = {
  ...inConflict(SITTING_REFUSALS),
  ...inConflict(RUN_REFUSALS),
  "not-signed-in": {
    status: 401,
    sentence: "You are not signed in. What you wrote stays in this browser; sign in again and it is sent.",
  },
  "not-permitted": { status: 403, sentence: "Your account may not do this. Nothing was changed; ask a tutor." },
  "own-password-needed": {
    status: 403,
    sentence:
      "You signed in with a one-time code. Choose your own password first; everything else waits, and nothing is lost.",
  },
  "foreign-origin": {
    status: 403,
    sentence: "This request came from another site, so nothing was changed. Open Toeline itself and try again there.",
  },
  "not-json": { status: 400, sentence: "The request could not be read, so nothing was changed. Reload the page." },
  "too-large": {
    status: 413,
    sentence: "The request is larger than the workshop takes, so nothing was changed. Make it smaller and try again.",
  },
  "invalid-input": {
    status: 422,
    sentence: "Something is not filled in as it should be. Nothing was stored yet; put it right and send it again.",
  },
  "already-set-up": {
    status: 409,
    sentence: "This workshop is set up already and was left as it is. Sign in with the account you were given.",
  },
  "not-set-up": { status: 409, sentence: "This workshop is not set up yet. Nothing was stored; set it up first." },
  "sign-in-name-taken": {
    status: 409,
    sentence: "Somebody has this sign-in name already. No account was made; choose another name.",
  },
  "own-accounts-off": {
    status: 403,
    sentence: "The tutor makes the accounts in this workshop, so none was made. Ask your tutor for one.",
  },
  "wrong-sign-in": {
    status: 401,
    sentence: "The sign-in name or the password is not right. Try again, or ask your tutor.",
  },
  "slip-used": {
    status: 401,
    sentence:
      "This sign-in name and code do not open an account. A code works until its owner has chosen a password; then sign in with that, or ask your tutor for a new code.",
  },
  "wrong-password": {
    status: 401,
    sentence: "The present password is not right, so it was not changed. Type it again.",
  },
  "too-many-tries": {
    status: 429,
    sentence: "Too many tries from this computer. Wait one minute, then try again.",
  },
  "too-many-codes": {
    status: 429,
    sentence:
      "Too many join codes were wrong from this address. Nobody joined a class; wait one minute, then type the code from the board again.",
  },
  "too-many-accounts": {
    status: 429,
    sentence: "Too many accounts were made from this address one after another. Wait one minute, then try again.",
  },
  "code-as-password": {
    status: 422,
    sentence:
      "That is the code from your slip, which others may have seen. It still works; choose another password now.",
  },
  "no-such-join-code": {
    status: 404,
    sentence: "No class takes that join code now, so nothing was changed. Ask your tutor for the present one.",
  },
  "no-such-session": {
    status: 404,
    sentence: "You are not signed in there any more. Nothing else was changed.",
  },
  "no-such-tutor": {
    status: 404,
    sentence: "There is no such tutor here, so nothing was changed. Reload the page.",
  },
  "name-differs": {
    status: 422,
    sentence: "That is not this learner's sign-in name, so nothing was erased. Type it as it stands above.",
  },
  "being-sat": {
    status: 409,
    sentence:
      "This learner has a section of a sitting open, so nothing was erased. Close the section on the board first, or wait until it is handed in.",
  },
  "sitting-on": {
    status: 409,
    sentence:
      "A sitting is running in the workshop and erasing would hold it up, so nothing was erased. Erase this learner once it is closed.",
  },
  "marks-unreleased": {
    status: 409,
    sentence:
      "This learner has marks in a sitting that are not released, so nothing was erased. Release them first, or ask the tutor of that class to.",
  },
  "no-record-store": {
    status: 409,
    sentence: "No record store is set up, so nothing was sent. Whoever runs the machine sets XAPI_ENDPOINT.",
  },
  "no-such-class": {
    status: 404,
    sentence: "There is no such class among yours, so nothing was changed. Go back to your classes.",
  },
  "class-archived": {
    status: 409,
    sentence: "This class is archived and is only read, so nothing was changed. Take it back into use first.",
  },
  "last-tutor": {
    status: 409,
    sentence: "A class keeps at least one tutor, so nothing was changed. Add another tutor first.",
  },
  "list-changed": {
    status: 409,
    sentence:
      "Something that this list touches was changed meanwhile, so nothing was done. Look at the rows as they stand now and confirm again.",
  },
  "no-such-learner": {
    status: 404,
    sentence: "There is no such learner among yours, so nothing was changed. Reload the page.",
  },
  "no-such-practice": {
    status: 404,
    sentence: "There is no such practice among yours. Go back to Today for those that are.",
  },
  "no-such-surface": {
    status: 404,
    sentence:
      "This piece has no such surface: a plate has a cap face and a root face, a fillet weld its weld face and two ends.",
  },
  "no-such-file": {
    status: 404,
    sentence:
      "There is no such file: marks are saved with one row a section, indication, dimension, statement, sentence or question. Choose one of them on the page.",
  },
  "too-many-open": {
    status: 409,
    sentence:
      "You have as many unfinished pieces as one bench holds, and all of them are kept. Hand one in, then take a fresh one.",
  },
  "specimen-not-made": {
    status: 409,
    sentence: "The piece is still being made. Your practice is kept; it opens as soon as the piece is there.",
  },
  "specimen-not-failed": {
    status: 409,
    sentence: "This practice has its piece, so it was not exchanged. Go on inspecting it.",
  },
  "too-many-windows": {
    status: 409,
    sentence:
      "This piece was opened too many times to note any more where you look. Your report is safe, and nothing is marked by it.",
  },
  "malformed-report": {
    status: 422,
    sentence:
      "One entry of the report is not as it should be, so this version was not stored. The version before it is kept; put the entry right and it is saved again.",
  },
  "stale-save": {
    status: 409,
    sentence:
      "A newer version of this report was saved from another window, and that one is kept. Go on with the newer version.",
  },
  "report-open": {
    status: 409,
    sentence:
      "The questions come once the report is closed, so these answers were not stored. Your report is kept as it was; close it first.",
  },
  "report-closed": {
    status: 409,
    sentence:
      "This report is closed and kept as it was then, so this version was not stored. Go on with the closed one and answer its questions.",
  },
  "no-questions": {
    status: 409,
    sentence:
      "No questions are asked about this piece, so its report is not closed before it is handed in. It is kept; hand it in.",
  },
  "already-handed-in": {
    status: 409,
    sentence: "This report is handed in, and its marks are kept as they are. Open the mark sheet.",
  },
  "not-handed-in": {
    status: 409,
    sentence: "There are no marks yet, and your report is kept. Hand it in on the bench to see them.",
  },
  "malformed-criteria": {
    status: 422,
    sentence:
      "Something in these criteria is not as it should be, so nothing was stored. What you wrote stands as it is; put right what is marked and store it again.",
  },
  "no-such-criteria": {
    status: 404,
    sentence: "There are no such criteria here, so nothing was changed. Reload the list of sets.",
  },
  "newer-criteria": {
    status: 409,
    sentence:
      "These criteria were stored from another window after you opened them, so yours were not stored. Both are kept: the newer ones on the server, and what you wrote on this page.",
  },
  "no-such-paper": {
    status: 404,
    sentence: "There is no such paper here, so nothing was changed. Go back to the list of papers.",
  },
  "newer-paper": {
    status: 409,
    sentence:
      "This paper was saved from another window after you opened it, so yours was not saved. Both are kept: the newer one on the server, and what you wrote on this page.",
  },
  "paper-put-away": {
    status: 409,
    sentence:
      "This paper is put away, so it was not saved. What you wrote stands on this page; take the paper back from the list in another window, then save again.",
  },
  "no-such-sitting": {
    status: 404,
    sentence: "There is no such sitting among yours, so nothing was changed. Go back to the list of sittings.",
  },
  "no-such-run": {
    status: 404,
    sentence: "There is no such section among yours, so nothing was changed. Go back to the sitting.",
  },
  "nobody-expected": {
    status: 409,
    sentence:
      "Nobody would be expected at this sitting, so it was not planned. Choose other learners or another paper.",
  },
  "not-expected": {
    status: 403,
    sentence: "This sitting is for others, or takes nobody in any more. Nothing was changed; ask your tutor.",
  },
  "book-closed": {
    status: 409,
    sentence:
      "You have a section with a closed book open, so no criteria, and nothing worked out by them, can be looked at. All of it is kept and opens again once that section is handed in; go on with the section.",
  },
  "piece-not-made": {
    status: 409,
    sentence:
      "Your piece is still being made. Your clock stands still; the section opens as soon as the piece is there.",
  },
  "section-elsewhere": {
    status: 409,
    sentence:
      "You have a section of another sitting open, so this one was not started and its clock stands still. Hand that one in first, or ask your tutor to close it.",
  },
  "learner-elsewhere": {
    status: 409,
    sentence:
      "The learner has a section of another sitting open just now, so this one was not opened again. Wait until that one is closed.",
  },
  "not-reviewable": {
    status: 409,
    sentence:
      "Marks can be changed once the sitting is closed and the section is marked, unless it is void. Nothing was changed; look at the board of the sitting.",
  },
  "no-such-line": {
    status: 404,
    sentence: "This mark sheet has no such line that can be overruled, so nothing was changed. Reload the page.",
  },
  "no-such-question": {
    status: 404,
    sentence: "This section has no such question that counts, so nothing was changed. Reload the page.",
  },
  "no-such-act": {
    status: 404,
    sentence: "There is nothing like that to take back any more, so nothing was changed. Reload the page.",
  },
  "review-changed": {
    status: 409,
    sentence:
      "One of these marks was changed meanwhile, so nothing was done. Look at it as it stands now, then do it again if it is still right.",
  },
  "same-rule": {
    status: 409,
    sentence: "The section was marked under the present rule already. Nothing was changed, and nothing is to be done.",
  },
  "nothing-differs": {
    status: 409,
    sentence: "Under the present rule every line brings what it brought, so nothing was changed.",
  },
  "no-such-eye-round": { status: 404, sentence: "There is no such round of a drill of yours. Begin one under Drills." },
  "no-such-eye-task": {
    status: 404,
    sentence: "There is no such task in a round of yours, so nothing was kept. Reload the page and go on from there.",
  },
  "no-such-set-drill": {
    status: 404,
    sentence: "This drill is not set any more, so nothing was begun. Reload the page to see what is.",
  },
};

/** One or two sentences for the person in front of the screen. */
export function sentenceFor(code: RefusalCode): string {
  return ANSWERS[code].sentence;
}

export function statusFor(code: RefusalCode): number {
  return ANSWERS[code].status;
}
