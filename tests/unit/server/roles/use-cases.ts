import type { Caller } from "@/app/_server/caller";
import { addCriteria } from "@/app/_server/use-cases/add-criteria";
import { addLearner, addTutor } from "@/app/_server/use-cases/add-person";
import { annulQuestion, previewAnnulment } from "@/app/_server/use-cases/annul-question";
import { answerEyeTask } from "@/app/_server/use-cases/answer-eye-task";
import { archiveCriteria } from "@/app/_server/use-cases/archive-criteria";
import { archivePaper } from "@/app/_server/use-cases/archive-paper";
import { beginEyeRound } from "@/app/_server/use-cases/begin-eye-round";
import { beginPaper } from "@/app/_server/use-cases/begin-paper";
import { changeCriteria } from "@/app/_server/use-cases/change-criteria";
import { changeWorkshopSettings } from "@/app/_server/use-cases/change-workshop-settings";
import { chooseOwnPassword } from "@/app/_server/use-cases/choose-own-password";
import { moveMember, removeMember, setTimeFactor } from "@/app/_server/use-cases/class-members";
import { addClassTutor, removeClassTutor } from "@/app/_server/use-cases/class-tutors";
import { closeReport } from "@/app/_server/use-cases/close-report";
import { copyPaper } from "@/app/_server/use-cases/copy-paper";
import { archiveClass, changeClass, changeJoinCode, makeClass } from "@/app/_server/use-cases/edit-class";
import { enrolList, previewList } from "@/app/_server/use-cases/enrol-list";
import { enterSitting } from "@/app/_server/use-cases/enter-sitting";
import { eraseLearner, previewErasure } from "@/app/_server/use-cases/erase-learner";
import { findPieceToShow } from "@/app/_server/use-cases/find-piece-to-show";
import { finishEyeRound } from "@/app/_server/use-cases/finish-eye-round";
import { followProgress } from "@/app/_server/use-cases/follow-progress";
import {
  addTime,
  changeFactor,
  closeRun,
  pauseRun,
  reopenRun,
  resumeRun,
  voidRun,
} from "@/app/_server/use-cases/govern-run";
import {
  addTimeToAll,
  beginSitting,
  closeSitting,
  moveSitting,
  openSitting,
  pauseSitting,
  releaseSitting,
  renewPieces,
  resumeSitting,
  voidSitting,
} from "@/app/_server/use-cases/govern-sitting";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { joinClass, listOwnClasses } from "@/app/_server/use-cases/join-class";
import { joinWorkshop } from "@/app/_server/use-cases/join-workshop";
import { keepDrillRound } from "@/app/_server/use-cases/keep-drill-round";
import { keepViewTrail } from "@/app/_server/use-cases/keep-view-trail";
import { listClasses } from "@/app/_server/use-cases/list-classes";
import { listCriteria } from "@/app/_server/use-cases/list-criteria";
import { listOwnAttempts } from "@/app/_server/use-cases/list-own-attempts";
import { listOwnPractices } from "@/app/_server/use-cases/list-own-practices";
import { listOwnSittings } from "@/app/_server/use-cases/list-own-sittings";
import { listPapers } from "@/app/_server/use-cases/list-papers";
import { makeCodes } from "@/app/_server/use-cases/make-codes";
import { markAgain, previewMarkAgain } from "@/app/_server/use-cases/mark-again";
import { openBench } from "@/app/_server/use-cases/open-bench";
import { openDemoWorkshop } from "@/app/_server/use-cases/open-demo-workshop";
import { overruleLine } from "@/app/_server/use-cases/overrule-line";
import { askForErasure, readOwnRecord, takeBackErasure } from "@/app/_server/use-cases/own-record";
import { endOwnSessions, listOwnSessions } from "@/app/_server/use-cases/own-sessions";
import { planSitting } from "@/app/_server/use-cases/plan-sitting";
import { readBlueprint } from "@/app/_server/use-cases/read-blueprint";
import { readBoard } from "@/app/_server/use-cases/read-board";
import { readClass } from "@/app/_server/use-cases/read-class";
import { readClassCourses } from "@/app/_server/use-cases/read-class-courses";
import { readClassProgress } from "@/app/_server/use-cases/read-class-progress";
import { readClassQuestions } from "@/app/_server/use-cases/read-class-questions";
import { readClassResults } from "@/app/_server/use-cases/read-class-results";
import { readClosedBook } from "@/app/_server/use-cases/read-closed-book";
import { readCriteriaSets, readOwnCriteria } from "@/app/_server/use-cases/read-criteria-sets";
import { readDemoHistory } from "@/app/_server/use-cases/read-demo-history";
import { readDesk } from "@/app/_server/use-cases/read-desk";
import { readDifficulty } from "@/app/_server/use-cases/read-difficulty";
import { readDrills } from "@/app/_server/use-cases/read-drills";
import { readEnds } from "@/app/_server/use-cases/read-ends";
import { readEyeDrills } from "@/app/_server/use-cases/read-eye-drills";
import { readOwnEyeRound } from "@/app/_server/use-cases/read-eye-round";
import { readEyeWindow } from "@/app/_server/use-cases/read-eye-window";
import { readInHouseCriteria } from "@/app/_server/use-cases/read-in-house-criteria";
import { readLearner } from "@/app/_server/use-cases/read-learner";
import { readLearnerProgress } from "@/app/_server/use-cases/read-learner-progress";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { readOwnCourse } from "@/app/_server/use-cases/read-own-course";
import { readOwnProgress } from "@/app/_server/use-cases/read-own-progress";
import { readOwnSitting } from "@/app/_server/use-cases/read-own-sitting";
import { readPaper } from "@/app/_server/use-cases/read-paper";
import { readPieceSheet } from "@/app/_server/use-cases/read-piece-sheet";
import { readPlanChoices } from "@/app/_server/use-cases/read-plan-choices";
import { readRecordsDesk } from "@/app/_server/use-cases/read-records-desk";
import { readReview } from "@/app/_server/use-cases/read-review";
import { readSetDrills } from "@/app/_server/use-cases/read-set-drills";
import { readSittingsDesk } from "@/app/_server/use-cases/read-sittings-desk";
import { readSurface } from "@/app/_server/use-cases/read-surface";
import { readToday } from "@/app/_server/use-cases/read-today";
import { renewSpecimen } from "@/app/_server/use-cases/renew-specimen";
import { savePaper } from "@/app/_server/use-cases/save-paper";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { setClassPaper } from "@/app/_server/use-cases/set-class-paper";
import { setDrill, withdrawDrill } from "@/app/_server/use-cases/set-drill";
import { setUpWorkshop } from "@/app/_server/use-cases/set-up-workshop";
import { signOutLearner } from "@/app/_server/use-cases/sign-out-learner";
import { startPractice } from "@/app/_server/use-cases/start-practice";
import { followClock, noteStillThere, readClock, startSection, takeOver } from "@/app/_server/use-cases/start-section";
import { takeBackReview } from "@/app/_server/use-cases/take-back-review";
import { writeClassFile } from "@/app/_server/use-cases/write-class-file";
import { writeClassStatements } from "@/app/_server/use-cases/write-class-statements";
import { writeHistoryFile } from "@/app/_server/use-cases/write-history-file";
import { writePracticeFile } from "@/app/_server/use-cases/write-practice-file";
import { writeRecord } from "@/app/_server/use-cases/write-record";
import { writeSittingFile } from "@/app/_server/use-cases/write-sitting-file";
import { readXapiDelivery, retryXapi } from "@/app/_server/use-cases/xapi-delivery";
import { defaultPaper } from "@/lib/sittings";
import { listPresences } from "@/prisma/stores/presences";
import { moment, save, WINDOW } from "../sitting-room";
import { CAP_ONLY, testSource } from "../workshop";
import {
  type Answers,
  EVERYBODY,
  LEARNERS,
  membersOf,
  ownersAndTutorsOf,
  ownersOf,
  SIGNED_IN,
  TUTORS,
  tutorsOf,
} from "./answers";
import { JOIN_CODE, type Names, OWN_CRITERIA } from "./school";

export interface Answer {
  readonly ok: boolean;
  readonly code?: string;
}

export type UseCaseRow = readonly [
  /** The use case, and of what where it has several rows. */
  name: string,
  answers: Answers,
  act: (who: Caller, it: Names) => Promise<Answer>,
  /** What somebody with a one-time code is answered, where that is not "own-password-needed". */
  newt?: string,
];

const [OUT, NP, NO_RUN] = ["not-signed-in", "not-permitted", "no-such-run"];
const OF_SITTING = tutorsOf("no-such-sitting");
const OF_RUN = tutorsOf("no-such-run");
/** Marks of a section that is being sat: its learner is told that they come, the tutor that it is not handed in. */
const UNRELEASED: Answers = [
  OUT,
  "marks-not-released",
  "no-such-practice",
  "no-such-practice",
  "yes",
  "no-such-practice",
];
/** Its piece, to be printed. */
const COVERED: Answers = [
  OUT,
  "marks-not-released",
  "no-such-practice",
  "no-such-practice",
  "no-such-practice",
  "no-such-practice",
];

const source = testSource("of-a-row");
const SETTINGS = { name: "New", allowsOwnAccounts: true, passMarks: { plate: 60, fillet: 60 } };
const SOMEBODY = { name: "Tomo Reyes", signInName: "tomo", password: "torch and mirror" };
const PASSWORD = { password: "torch and mirror", confirmation: "torch and mirror" };
const LIST = "Tomo Reyes";
const AGREED = [{ row: 1, outcome: "new", name: "Tomo Reyes", signInName: "tomo.reyes" }];
const PLAN = { paperId: "paper", plannedAt: "2026-03-03T10:00:00Z", who: "class" };
const WHY = { reason: "the lamp went out" };
const MORE = { minutes: 5, ...WHY };
const WRITER = { windowId: WINDOW };
const VERSION = { sequence: 1, report: CAP_ONLY };
const SAVE = save(1, moment("10:00"));
const TRAIL = { windowId: WINDOW, number: 1, trail: { version: 1, views: {} } };
const LAST = { window: { id: WINDOW, base: 0 } };
const EYE = { drill: "spot", naming: "four", isTimed: false };
const SPOTTED = { kind: "spot", isThere: true };
const ROUND = { drill: "find-largest", gauges: ["depth-gauge"], asked: 3, right: 1, medianError: 0.2, seconds: 60 };

/** It answers nothing: whether it has kept that somebody is still there. */
async function noteIsKept(who: Caller, { run, sitting }: Names): Promise<Answer> {
  const later = moment("10:07");
  await noteStillThere({ ...who, clock: () => later }, run);
  const presences = await listPresences(sitting);
  return presences.some(({ lastSeenAt }) => lastSeenAt.getTime() === later.getTime())
    ? { ok: true }
    : { ok: false, code: NO_RUN };
}

/** Every use case, with what nobody, kim, ola, finn, their tutor and the other tutor are answered. */
export const USE_CASES: readonly UseCaseRow[] = [
  // the workshop
  ["openDemoWorkshop", EVERYBODY, (who) => openDemoWorkshop(who, { withPast: false })],
  ["setUpWorkshop", EVERYBODY, (who) => setUpWorkshop(who, { workshop: "Other" })],
  ["changeWorkshopSettings", TUTORS, (who) => changeWorkshopSettings(who, SETTINGS)],
  ["readDesk", TUTORS, (who) => readDesk(who)],
  ["readDifficulty", TUTORS, (who) => readDifficulty(who)],
  ["readDemoHistory", TUTORS, (who) => readDemoHistory(who)],

  // accounts
  ["joinWorkshop", EVERYBODY, (who) => joinWorkshop(who, { ...SOMEBODY, joinCode: JOIN_CODE })],
  ["chooseOwnPassword", [OUT, NP, NP, NP, NP, NP], (who) => chooseOwnPassword(who, PASSWORD), "yes"],
  ["addLearner", TUTORS, (who) => addLearner(who, { name: "X", signInName: `x-${who.actor?.id}` })],
  ["addTutor", TUTORS, (who) => addTutor(who, { name: "X", signInName: `y-${who.actor?.id}` })],
  ["makeCodes", tutorsOf("no-such-learner"), (who, { learner }) => makeCodes(who, [learner])],
  ["signOutLearner", tutorsOf("no-such-learner"), (who, { learner }) => signOutLearner(who, learner)],
  ["readLearner", tutorsOf("no-such-learner"), (who, { learner }) => readLearner(who, learner)],
  ["readLearnerProgress", tutorsOf("no-such-learner"), (who, { learner }) => readLearnerProgress(who, learner)],
  ["readClassProgress", tutorsOf("no-such-class"), (who, it) => readClassProgress(who, it.class)],
  ["readClassQuestions", tutorsOf("no-such-class"), (who, it) => readClassQuestions(who, it.class, null)],
  ["findPieceToShow", tutorsOf("no-such-class"), (who, it) => findPieceToShow(who, it.class, "root-concavity")],
  ["readOwnProgress", SIGNED_IN, (who) => readOwnProgress(who)],
  ["listOwnSessions", SIGNED_IN, (who) => listOwnSessions(who)],
  ["endOwnSessions", SIGNED_IN, (who) => endOwnSessions(who, null)],
  ["endOwnSessions one", ownersOf("no-such-session"), (who, { session }) => endOwnSessions(who, session)],

  // records
  [
    "writeRecord",
    [OUT, "yes", NP, NP, "yes", "no-such-learner"],
    (who, { learner }) => writeRecord(who, learner, "json"),
  ],
  ["writeClassStatements", tutorsOf("no-such-class"), (who, it) => writeClassStatements(who, it.class)],
  ["readOwnRecord", SIGNED_IN, (who) => readOwnRecord(who)],
  ["askForErasure", LEARNERS, (who) => askForErasure(who)],
  ["takeBackErasure", LEARNERS, (who) => takeBackErasure(who)],
  ["previewErasure", tutorsOf("no-such-learner"), (who, { learner }) => previewErasure(who, learner)],
  ["eraseLearner", tutorsOf("no-such-learner"), (who, { learner }) => eraseLearner(who, learner, {})],
  ["readRecordsDesk", TUTORS, (who) => readRecordsDesk(who)],
  ["readXapiDelivery", TUTORS, (who) => readXapiDelivery(who)],
  ["retryXapi", TUTORS, (who) => retryXapi(who)],

  // classes
  ["makeClass", TUTORS, (who) => makeClass(who, { name: "New", notes: "" })],
  ["listClasses", TUTORS, (who) => listClasses(who)],
  ["readClass", tutorsOf("no-such-class"), (who, it) => readClass(who, it.class)],
  ["changeClass", tutorsOf("no-such-class"), (who, it) => changeClass(who, it.class, { name: "Other", notes: "" })],
  ["archiveClass", tutorsOf("no-such-class"), (who, it) => archiveClass(who, it.class, true)],
  ["changeJoinCode", tutorsOf("no-such-class"), (who, it) => changeJoinCode(who, it.class, true)],
  ["previewList", tutorsOf("no-such-class"), (who, it) => previewList(who, it.class, LIST)],
  ["enrolList", tutorsOf("no-such-class"), (who, it) => enrolList(who, it.class, LIST, AGREED)],
  ["addClassTutor", tutorsOf("no-such-class"), (who, it) => addClassTutor(who, it.class, "stranger")],
  ["removeClassTutor", tutorsOf("no-such-class"), (who, it) => removeClassTutor(who, it.class, "tutor")],
  ["setTimeFactor", tutorsOf("no-such-class"), (who, it) => setTimeFactor(who, it.class, "kim", 1.5)],
  ["removeMember", tutorsOf("no-such-class"), (who, it) => removeMember(who, it.class, "kim")],
  ["moveMember", tutorsOf("no-such-class"), (who, it) => moveMember(who, it.class, "kim", it.evening)],
  ["joinClass", LEARNERS, (who) => joinClass(who, JOIN_CODE)],
  ["listOwnClasses", SIGNED_IN, (who) => listOwnClasses(who)],
  ["readClassResults", tutorsOf("no-such-class"), (who, it) => readClassResults(who, it.class)],
  ["writeClassFile", tutorsOf("no-such-class"), (who, it) => writeClassFile(who, it.class, "sections")],
  ["readClassCourses", tutorsOf("no-such-class"), (who, it) => readClassCourses(who, it.class)],

  // practice
  ["startPractice", SIGNED_IN, (who) => startPractice(who, {}, source)],
  ["readToday", SIGNED_IN, (who) => readToday(who)],
  ["listOwnPractices", SIGNED_IN, (who) => listOwnPractices(who)],
  ["listOwnAttempts", SIGNED_IN, (who) => listOwnAttempts(who)],
  ["followProgress", ownersOf("no-such-practice"), (who, { open }) => followProgress(who, open, source)],
  ["openBench", ownersOf("no-such-practice"), (who, { open }) => openBench(who, open, source)],
  ["renewSpecimen", ownersOf("no-such-practice"), (who, { open }) => renewSpecimen(who, open, source)],
  ["readSurface", ownersOf("no-such-practice"), (who, { open }) => readSurface(who, open, "cap")],
  ["readSurface handed in", ownersAndTutorsOf("no-such-practice"), (who, { done }) => readSurface(who, done, "cap")],
  ["readEnds", ownersOf("no-such-practice"), (who, { open }) => readEnds(who, open)],
  ["saveReport", ownersOf("no-such-practice"), (who, { open }) => saveReport(who, open, VERSION)],
  ["keepViewTrail", ownersOf("no-such-practice"), (who, { open }) => keepViewTrail(who, open, TRAIL)],
  ["closeReport", ownersOf("no-such-practice"), (who, { open }) => closeReport(who, open, VERSION)],
  ["handIn", ownersOf("no-such-practice"), (who, { open }) => handIn(who, open, VERSION)],
  ["readMarkSheet", ownersAndTutorsOf("no-such-practice"), (who, { done }) => readMarkSheet(who, done)],
  ["readMarkSheet not handed in", ownersAndTutorsOf("no-such-practice"), (who, { open }) => readMarkSheet(who, open)],
  ["readPieceSheet", ownersOf("no-such-practice"), (who, { open }) => readPieceSheet(who, open)],
  ["readPieceSheet handed in", ownersAndTutorsOf("no-such-practice"), (who, { done }) => readPieceSheet(who, done)],
  [
    "writePracticeFile",
    ownersAndTutorsOf("no-such-practice"),
    (who, { done }) => writePracticeFile(who, done, "indications"),
  ],
  [
    "writeHistoryFile",
    [OUT, "yes", NP, NP, "yes", "no-such-learner"],
    (who, { learner }) => writeHistoryFile(who, learner, "sections"),
  ],
  ["readDrills", SIGNED_IN, (who) => readDrills(who)],
  ["keepDrillRound", SIGNED_IN, (who) => keepDrillRound(who, ROUND)],
  ["readEyeDrills", SIGNED_IN, (who) => readEyeDrills(who)],
  ["beginEyeRound", SIGNED_IN, (who) => beginEyeRound(who, EYE, null, source)],
  [
    "beginEyeRound of a set drill",
    membersOf("no-such-set-drill"),
    (who, it) => beginEyeRound(who, EYE, it.setDrill, source),
  ],
  ["readOwnEyeRound", ownersOf("no-such-eye-round"), (who, { eyeRound }) => readOwnEyeRound(who, eyeRound, source)],
  ["finishEyeRound", ownersOf("no-such-eye-round"), (who, { eyeRound }) => finishEyeRound(who, eyeRound)],
  ["answerEyeTask", ownersOf("no-such-eye-task"), (who, { eyeTask }) => answerEyeTask(who, eyeTask, SPOTTED)],
  ["readEyeWindow", ownersOf("no-such-eye-task"), (who, { eyeTask }) => readEyeWindow(who, eyeTask, "0")],
  ["setDrill", tutorsOf("no-such-class"), (who, it) => setDrill(who, it.class, { drill: "spot", types: [] }, source)],
  ["withdrawDrill", tutorsOf("no-such-class"), (who, it) => withdrawDrill(who, it.class, it.setDrill)],
  ["readSetDrills", tutorsOf("no-such-class"), (who, it) => readSetDrills(who, it.class)],

  // criteria
  ["listCriteria", SIGNED_IN, (who) => listCriteria(who)],
  ["readInHouseCriteria", SIGNED_IN, (who) => readInHouseCriteria(who)],
  ["readClosedBook", SIGNED_IN, (who) => readClosedBook(who)],
  ["readCriteriaSets", TUTORS, (who) => readCriteriaSets(who)],
  ["readOwnCriteria", TUTORS, (who, { criteria }) => readOwnCriteria(who, criteria)],
  ["addCriteria", TUTORS, (who) => addCriteria(who, { basedOn: null, own: OWN_CRITERIA })],
  [
    "changeCriteria",
    TUTORS,
    (who, { criteria }) => changeCriteria(who, criteria, { basedOn: null, own: OWN_CRITERIA }),
  ],
  ["archiveCriteria", TUTORS, (who, { criteria }) => archiveCriteria(who, criteria, true)],

  // papers
  ["listPapers", TUTORS, (who) => listPapers(who)],
  ["beginPaper", TUTORS, (who) => beginPaper(who)],
  ["readPaper", TUTORS, (who, { paper }) => readPaper(who, paper)],
  ["savePaper", TUTORS, (who, { paper }) => savePaper(who, paper, { paper: defaultPaper(), seen: null })],
  ["savePaper new", TUTORS, (who) => savePaper(who, null, { paper: defaultPaper(), seen: null })],
  ["copyPaper", TUTORS, (who, { paper }) => copyPaper(who, paper)],
  ["setClassPaper", tutorsOf("no-such-class"), (who, it) => setClassPaper(who, it.class, { types: ["overlap"] })],
  ["archivePaper", TUTORS, (who, { paper }) => archivePaper(who, paper, true)],
  ["readBlueprint", TUTORS, (who) => readBlueprint(who, { section: "none", piece: {} }, source)],

  // a sitting, for its tutors
  ["planSitting", tutorsOf("no-such-class"), (who, it) => planSitting(who, { ...PLAN, classId: it.class }, source)],
  ["readPlanChoices", TUTORS, (who) => readPlanChoices(who)],
  ["readSittingsDesk", TUTORS, (who) => readSittingsDesk(who)],
  ["readBoard", OF_SITTING, (who, { sitting }) => readBoard(who, sitting)],
  ["openSitting", OF_SITTING, (who, { sitting }) => openSitting(who, sitting)],
  ["beginSitting", OF_SITTING, (who, { sitting }) => beginSitting(who, sitting)],
  ["pauseSitting", OF_SITTING, (who, { sitting }) => pauseSitting(who, sitting)],
  ["resumeSitting", OF_SITTING, (who, { sitting }) => resumeSitting(who, sitting)],
  ["closeSitting", OF_SITTING, (who, { sitting }) => closeSitting(who, sitting)],
  ["releaseSitting", OF_SITTING, (who, { sitting }) => releaseSitting(who, sitting)],
  ["moveSitting", OF_SITTING, (who, { sitting }) => moveSitting(who, sitting, { plannedAt: PLAN.plannedAt })],
  ["voidSitting", OF_SITTING, (who, { sitting }) => voidSitting(who, sitting, WHY)],
  ["addTimeToAll", OF_SITTING, (who, { sitting }) => addTimeToAll(who, sitting, MORE)],
  ["renewPieces", OF_SITTING, (who, { sitting }) => renewPieces(who, sitting, source)],
  ["changeFactor", OF_SITTING, (who, { sitting }) => changeFactor(who, sitting, "kim", { factor: 2, ...WHY })],
  ["pauseRun", OF_RUN, (who, { run }) => pauseRun(who, run)],
  ["resumeRun", OF_RUN, (who, { run }) => resumeRun(who, run)],
  ["closeRun", OF_RUN, (who, { run }) => closeRun(who, run)],
  ["addTime", OF_RUN, (who, { run }) => addTime(who, run, MORE)],
  ["voidRun", OF_RUN, (who, { run }) => voidRun(who, run, WHY)],
  ["reopenRun", OF_RUN, (who, { run }) => reopenRun(who, run, MORE)],

  // the marks of a sitting, for its tutors
  ["readReview", OF_RUN, (who, { run }) => readReview(who, run)],
  ["overruleLine", OF_RUN, (who, { run }) => overruleLine(who, run, {})],
  ["previewAnnulment", OF_RUN, (who, { run }) => previewAnnulment(who, run, {})],
  ["annulQuestion", OF_RUN, (who, { run }) => annulQuestion(who, run, {})],
  ["previewMarkAgain", OF_RUN, (who, { run }) => previewMarkAgain(who, run)],
  ["markAgain", OF_RUN, (who, { run }) => markAgain(who, run, {})],
  ["takeBackReview", OF_RUN, (who, { run }) => takeBackReview(who, run, {})],
  ["writeSittingFile", OF_SITTING, (who, { sitting }) => writeSittingFile(who, sitting, "sections")],

  // a sitting, for its learners
  ["listOwnSittings", SIGNED_IN, (who) => listOwnSittings(who)],
  ["readOwnSitting", membersOf("no-such-sitting"), (who, { sitting }) => readOwnSitting(who, sitting)],
  ["enterSitting", membersOf("no-such-sitting"), (who, { sitting }) => enterSitting(who, sitting, source)],
  ["readOwnCourse", membersOf("no-such-class"), (who, it) => readOwnCourse(who, it.class, it.paper)],
  ["startSection", ownersOf("no-such-run"), (who, { run }) => startSection(who, run, WRITER)],
  ["takeOver", ownersOf("no-such-run"), (who, { run }) => takeOver(who, run, WRITER)],
  ["readClock", ownersOf("no-such-run"), (who, { run }) => readClock(who, run)],
  ["followClock", ownersOf("no-such-run"), (who, { run }) => followClock(who, run)],
  ["noteStillThere", [NO_RUN, "yes", NO_RUN, NO_RUN, NO_RUN, NO_RUN], noteIsKept, NO_RUN],
  ["openBench of a section", ownersOf("no-such-practice"), (who, { section }) => openBench(who, section, source)],
  ["readSurface of a section", ownersOf("no-such-practice"), (who, { section }) => readSurface(who, section, "cap")],
  ["saveReport of a section", ownersOf("no-such-practice"), (who, { section }) => saveReport(who, section, SAVE)],
  [
    "keepViewTrail of a section",
    ownersOf("no-such-practice"),
    (who, { section }) => keepViewTrail(who, section, TRAIL),
  ],
  ["closeReport of a section", ownersOf("no-such-practice"), (who, { section }) => closeReport(who, section, LAST)],
  ["handIn of a section", ownersOf("no-such-practice"), (who, { section }) => handIn(who, section, LAST)],
  ["readMarkSheet of a section", UNRELEASED, (who, { section }) => readMarkSheet(who, section)],
  ["writePracticeFile of a section", UNRELEASED, (who, { section }) => writePracticeFile(who, section, "indications")],
  ["readPieceSheet of a section", COVERED, (who, { section }) => readPieceSheet(who, section)],
];

/** What other use cases and commands are for, and no entry of the app: they ask nobody who calls. */
export const INNER: readonly string[] = ["criteriaById", "classOfCode", "readLastVersion", "newCodeForTutor"];
