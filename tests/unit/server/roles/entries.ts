import { type Answers, EVERYBODY, SIGNED_IN } from "./answers";
import { JOIN_CODE, type Names, OWN_CRITERIA } from "./school";

/** The use case by whose row it answers, or answers of its own where it asks no use case. */
type As = string | Answers;
type Texts = Readonly<Record<string, string>>;

interface Entry {
  /** Its folder in app. */
  readonly at: string;
  readonly as: As;
  /** What its address says. */
  readonly params?: (it: Names) => Texts;
}
export interface RouteRow extends Entry {
  readonly method: "GET" | "POST" | "PUT";
  readonly query?: string;
  readonly body?: (it: Names) => object;
}
export interface PageRow extends Entry {
  readonly search?: Texts;
  /** Where pages and their layouts share the work: what somebody with a one-time code is shown by the page alone. */
  readonly newt?: string;
}
export interface ActionRow extends Entry {
  readonly does: string;
  readonly form?: (it: Names) => Texts;
  /** An action that is called with a value in place of a form. */
  readonly value?: (it: Names) => unknown;
  readonly newt?: string;
}

const open = ({ open }: Names) => ({ id: open });
const done = ({ done }: Names) => ({ id: done });
const sitting = ({ sitting }: Names) => ({ id: sitting });
const run = ({ run }: Names) => ({ id: run });
const eyeRound = (it: Names) => ({ id: it.eyeRound });
const eyeTask = (it: Names) => ({ id: it.eyeTask });
const group = (it: Names) => ({ id: it.class });
const WHY = { reason: "the lamp went out" };
const MORE = { minutes: 5, ...WHY };

const ofSitting = (act: string, as: string, body: object = {}): RouteRow => ({
  at: "api/sittings/[id]/[act]",
  method: "POST",
  params: (it) => ({ ...sitting(it), act }),
  body: () => body,
  as,
});
const ofRun = (act: string, as: string, body: object = {}): RouteRow => ({
  at: "api/runs/[id]/[act]",
  method: "POST",
  params: (it) => ({ ...run(it), act }),
  body: () => body,
  as,
});

const ofReview = (act: string, as: string): RouteRow => ({
  at: "api/runs/[id]/review/[act]",
  method: "POST",
  params: (it) => ({ ...run(it), act }),
  body: () => ({}),
  as,
});

export const ROUTES: readonly RouteRow[] = [
  // which of the sign-in library's paths are open is tested beside it
  { at: "api/auth/[...all]", method: "GET", as: EVERYBODY },
  { at: "api/auth/[...all]", method: "POST", as: EVERYBODY },
  { at: "api/health", method: "GET", as: EVERYBODY },
  { at: "api/blueprint", method: "GET", query: "?section=none", as: "readBlueprint" },
  {
    at: "api/classes/[id]/files/[kind]",
    method: "GET",
    params: (it) => ({ ...group(it), kind: "sections" }),
    as: "writeClassFile",
  },
  {
    at: "api/people/[id]/files/[kind]",
    method: "GET",
    params: (it) => ({ id: it.learner, kind: "sections" }),
    as: "writeHistoryFile",
  },
  {
    at: "api/people/[id]/record/[form]",
    method: "GET",
    params: (it) => ({ id: it.learner, form: "json" }),
    as: "writeRecord",
  },
  { at: "api/classes/[id]/statements", method: "GET", params: group, as: "writeClassStatements" },
  { at: "api/criteria", method: "POST", body: () => ({ basedOn: null, own: OWN_CRITERIA }), as: "addCriteria" },
  {
    at: "api/criteria/[id]",
    method: "PUT",
    params: (it) => ({ id: it.criteria }),
    body: () => ({}),
    as: "changeCriteria",
  },
  { at: "api/drills", method: "POST", body: () => ({}), as: "keepDrillRound" },
  {
    at: "api/eye/rounds/[id]",
    method: "GET",
    params: eyeRound,
    as: "readOwnEyeRound",
  },
  { at: "api/eye/rounds/[id]/finish", method: "POST", params: eyeRound, body: () => ({}), as: "finishEyeRound" },
  {
    at: "api/eye/tasks/[id]/answer",
    method: "POST",
    params: eyeTask,
    body: () => ({ kind: "spot", isThere: true }),
    as: "answerEyeTask",
  },
  {
    at: "api/eye/tasks/[id]/windows/[window]",
    method: "GET",
    params: (it) => ({ ...eyeTask(it), window: "0" }),
    as: "readEyeWindow",
  },
  { at: "api/papers", method: "POST", body: () => ({}), as: "savePaper new" },
  { at: "api/papers/[id]", method: "PUT", params: (it) => ({ id: it.paper }), body: () => ({}), as: "savePaper" },
  { at: "api/practice", method: "POST", body: () => ({}), as: "startPractice" },
  { at: "api/practice/[id]/close-report", method: "POST", params: open, body: () => ({}), as: "closeReport" },
  { at: "api/practice/[id]/ends", method: "GET", params: open, as: "readEnds" },
  {
    at: "api/practice/[id]/files/[kind]",
    method: "GET",
    params: (it) => ({ ...done(it), kind: "sections" }),
    as: "writePracticeFile",
  },
  { at: "api/practice/[id]/hand-in", method: "POST", params: open, body: () => ({}), as: "handIn" },
  { at: "api/practice/[id]/progress", method: "GET", params: open, as: "followProgress" },
  { at: "api/practice/[id]/report", method: "PUT", params: open, body: () => ({}), as: "saveReport" },
  { at: "api/practice/[id]/view-trail", method: "PUT", params: open, body: () => ({}), as: "keepViewTrail" },
  { at: "api/practice/[id]/specimen", method: "POST", params: open, body: () => ({}), as: "renewSpecimen" },
  {
    at: "api/practice/[id]/surface/[face]",
    method: "GET",
    params: (it) => ({ ...open(it), face: "cap" }),
    as: "readSurface",
  },
  { at: "api/sittings", method: "POST", body: (it) => ({ classId: it.class }), as: "planSitting" },
  { at: "api/sittings/[id]", method: "GET", params: sitting, as: "readBoard" },
  {
    at: "api/sittings/[id]/files/[kind]",
    method: "GET",
    params: (it) => ({ ...sitting(it), kind: "sections" }),
    as: "writeSittingFile",
  },
  { at: "api/sittings/[id]/live", method: "GET", params: sitting, as: "readBoard" },
  { at: "api/sittings/[id]/enter", method: "POST", params: sitting, body: () => ({}), as: "enterSitting" },
  {
    at: "api/sittings/[id]/factor/[learnerId]",
    method: "POST",
    params: (it) => ({ ...sitting(it), learnerId: it.learner }),
    body: () => ({ factor: 2, ...WHY }),
    as: "changeFactor",
  },
  ofSitting("open", "openSitting"),
  ofSitting("begin", "beginSitting"),
  ofSitting("pause", "pauseSitting"),
  ofSitting("resume", "resumeSitting"),
  ofSitting("close", "closeSitting"),
  ofSitting("release", "releaseSitting"),
  ofSitting("move", "moveSitting"),
  ofSitting("void", "voidSitting", WHY),
  ofSitting("add-time", "addTimeToAll", MORE),
  ofSitting("renew-pieces", "renewPieces"),
  { at: "api/runs/[id]", method: "GET", params: run, as: "readClock" },
  { at: "api/runs/[id]/live", method: "GET", params: run, as: "followClock" },
  ofRun("start", "startSection"),
  ofRun("take-over", "takeOver"),
  ofRun("pause", "pauseRun"),
  ofRun("resume", "resumeRun"),
  ofRun("close", "closeRun"),
  ofRun("add-time", "addTime", MORE),
  ofRun("re-open", "reopenRun", MORE),
  ofRun("void", "voidRun", WHY),
  ofReview("overrule", "overruleLine"),
  ofReview("take-back", "takeBackReview"),
  ofReview("preview-annul", "previewAnnulment"),
  ofReview("annul", "annulQuestion"),
  ofReview("preview-mark-again", "previewMarkAgain"),
  ofReview("mark-again", "markAgain"),
];

export const PAGES: readonly PageRow[] = [
  { at: "(bench)/practice/[id]", params: open, as: "openBench" },
  { at: "(learner)", as: "readToday" },
  { at: "(learner)/account", as: "listOwnSessions" },
  { at: "(learner)/book-closed", as: "readClosedBook" },
  { at: "(learner)/drills", as: "readDrills" },
  { at: "(learner)/drills/[name]", params: () => ({ name: "find-largest" }), as: "readDrills" },
  { at: "(learner)/drills/eye/[id]", params: eyeRound, as: "readOwnEyeRound" },
  { at: "(learner)/history", as: "listOwnPractices" },
  { at: "(learner)/limits", as: "readInHouseCriteria" },
  { at: "(learner)/practice/[id]/marks", params: done, as: "readMarkSheet" },
  { at: "(learner)/progress", as: "readOwnProgress" },
  // how marks are given is no secret; its layout wants somebody signed in
  { at: "(learner)/rule", as: EVERYBODY },
  { at: "(learner)/sitting/[id]", params: sitting, as: "readOwnSitting" },
  { at: "(print)/desk/classes/[id]/progress/paper", params: group, as: "readClassProgress" },
  { at: "(print)/desk/classes/[id]/paper", params: group, as: "readClassResults" },
  { at: "(print)/desk/sittings/[id]/paper", params: sitting, as: "readBoard" },
  { at: "(print)/practice/[id]/paper/marks", params: done, as: "readMarkSheet" },
  { at: "(print)/practice/[id]/paper/piece", params: open, as: "readPieceSheet" },
  { at: "(print)/practice/[id]/paper/piece", params: done, search: { answers: "yes" }, as: "readMarkSheet" },
  { at: "(print)/practice/[id]/paper/report", params: done, as: "readMarkSheet" },
  { at: "(public)/join", as: EVERYBODY },
  { at: "(public)/own-password", as: SIGNED_IN, newt: "yes" },
  { at: "(public)/setup", as: EVERYBODY },
  { at: "(public)/sign-in", as: EVERYBODY },
  { at: "(public)/slip", as: EVERYBODY },
  { at: "(tutor)/desk", as: "readDesk" },
  { at: "(tutor)/desk/difficulty", as: "readDifficulty" },
  { at: "(tutor)/desk/[learner]", params: (it) => ({ learner: it.learner }), as: "readLearner" },
  { at: "(tutor)/desk/[learner]/erase", params: (it) => ({ learner: it.learner }), as: "previewErasure" },
  { at: "(tutor)/desk/records", as: "readRecordsDesk" },
  { at: "(tutor)/desk/[learner]/progress", params: (it) => ({ learner: it.learner }), as: "readLearnerProgress" },
  { at: "(tutor)/desk/classes", as: "listClasses" },
  { at: "(tutor)/desk/classes/[id]", params: group, as: "readClass" },
  { at: "(tutor)/desk/classes/[id]/add", params: group, as: "readClass" },
  { at: "(tutor)/desk/classes/[id]/progress", params: group, as: "readClassProgress" },
  {
    at: "(tutor)/desk/classes/[id]/progress/piece",
    params: group,
    search: { type: "root-concavity" },
    as: "findPieceToShow",
  },
  { at: "(tutor)/desk/classes/[id]/progress/questions", params: group, as: "readClassQuestions" },
  { at: "(tutor)/desk/criteria", as: "readCriteriaSets" },
  { at: "(tutor)/desk/criteria/new", as: "readCriteriaSets" },
  { at: "(tutor)/desk/criteria/[set]", params: (it) => ({ set: it.criteria }), as: "readOwnCriteria" },
  { at: "(tutor)/desk/papers", as: "listPapers" },
  { at: "(tutor)/desk/papers/new", as: "beginPaper" },
  { at: "(tutor)/desk/papers/[paper]", params: (it) => ({ paper: it.paper }), as: "readPaper" },
  { at: "(tutor)/desk/sittings", as: "readSittingsDesk" },
  { at: "(tutor)/desk/sittings/new", as: "readPlanChoices" },
  { at: "(tutor)/desk/sittings/[id]", params: sitting, as: "readBoard" },
  {
    at: "(tutor)/desk/sittings/[id]/marks/[runId]",
    params: (it) => ({ ...sitting(it), runId: it.run }),
    as: "readReview",
  },
];

const member =
  (what: string, rest: Texts = {}) =>
  (it: Names) => ({
    class: it.class,
    learner: it.learner,
    name: "Kim",
    what,
    ...rest,
  });
const classForm =
  (rest: Texts = {}) =>
  (it: Names) => ({ class: it.class, ...rest });
const DESK = "(tutor)/desk";
const CLASSES = "(tutor)/desk/classes";

export const ACTIONS: readonly ActionRow[] = [
  { at: "(learner)", does: "signOut", as: EVERYBODY },
  { at: "(learner)", does: "takeFreshPiece", form: () => ({ any: "plate", plate: "70" }), as: "startPractice" },
  { at: "(learner)/drills", does: "beginRound", form: () => ({ drill: "spot" }), as: "beginEyeRound" },
  {
    at: "(learner)/drills",
    does: "beginRound",
    form: (it) => ({ drill: "spot", set: it.setDrill }),
    as: "beginEyeRound of a set drill",
  },
  // the sign-in library asks for the session and the present password itself
  { at: "(learner)/account", does: "changePassword", as: EVERYBODY },
  { at: "(learner)/account", does: "endSessions", form: (it) => ({ session: it.session }), as: "endOwnSessions one" },
  { at: "(learner)/account", does: "endSessions", as: "endOwnSessions" },
  { at: "(learner)/account", does: "changeErasureRequest", form: () => ({ to: "erase" }), as: "askForErasure" },
  { at: "(learner)/account", does: "changeErasureRequest", form: () => ({ to: "keep" }), as: "takeBackErasure" },
  { at: "(public)/join", does: "join", form: () => ({ joinCode: JOIN_CODE }), as: "joinWorkshop" },
  { at: "(public)/join", does: "enterClass", form: () => ({ joinCode: JOIN_CODE }), as: "joinClass" },
  { at: "(public)/own-password", does: "chooseOwn", as: "chooseOwnPassword", newt: "yes" },
  { at: "(public)/setup", does: "setUp", as: "setUpWorkshop" },
  { at: "(public)/setup", does: "openDemo", as: "openDemoWorkshop" },
  { at: "(public)/setup", does: "signInFromDemo", as: EVERYBODY },
  { at: "(public)/sign-in", does: "signIn", as: EVERYBODY },
  { at: "(public)/slip", does: "signInWithSlip", as: EVERYBODY },
  { at: DESK, does: "giveAccess", form: () => ({ asked: "new-learner" }), as: "addLearner" },
  { at: DESK, does: "giveAccess", form: () => ({ asked: "new-tutor" }), as: "addTutor" },
  { at: DESK, does: "giveAccess", form: (it) => ({ learner: it.learner }), as: "makeCodes" },
  { at: DESK, does: "signOutEverywhere", form: (it) => ({ learner: it.learner }), as: "signOutLearner" },
  { at: DESK, does: "changeSettings", as: "changeWorkshopSettings" },
  { at: `${DESK}/[learner]/erase`, does: "erase", form: (it) => ({ learner: it.learner }), as: "eraseLearner" },
  { at: `${DESK}/records`, does: "tryAgain", as: "retryXapi" },
  { at: CLASSES, does: "makeNewClass", form: () => ({ name: "New", notes: "" }), as: "makeClass" },
  { at: CLASSES, does: "changeDetails", form: classForm({ name: "Other", notes: "" }), as: "changeClass" },
  { at: CLASSES, does: "archive", form: classForm({ to: "archive" }), as: "archiveClass" },
  { at: CLASSES, does: "switchJoinCode", form: classForm({ to: "new" }), as: "changeJoinCode" },
  { at: CLASSES, does: "addTutorToClass", form: classForm({ tutor: "stranger" }), as: "addClassTutor" },
  { at: CLASSES, does: "removeTutorFromClass", form: classForm({ tutor: "tutor" }), as: "removeClassTutor" },
  { at: CLASSES, does: "changeMembers", form: member("time", { factor: "1.5" }), as: "setTimeFactor" },
  { at: CLASSES, does: "changeMembers", form: member("move", { target: "evening" }), as: "moveMember" },
  { at: CLASSES, does: "changeMembers", form: member("remove"), as: "removeMember" },
  { at: CLASSES, does: "changeMembers", form: member("sign-out"), as: "signOutLearner" },
  { at: CLASSES, does: "changeMembers", form: (it) => ({ class: it.class, chosen: it.learner }), as: "makeCodes" },
  {
    at: `${CLASSES}/[id]/add`,
    does: "bringList",
    value: (it) => ({ classId: it.class, list: "Tomo Reyes" }),
    as: "previewList",
  },
  {
    at: `${CLASSES}/[id]/add`,
    does: "bringList",
    value: (it) => ({ classId: it.class, list: "Tomo Reyes", agreed: [] }),
    as: "enrolList",
  },
  { at: `${CLASSES}/[id]/progress`, does: "setAsPaper", form: classForm({ types: "overlap" }), as: "setClassPaper" },
  {
    at: `${CLASSES}/[id]/progress`,
    does: "setClassDrill",
    form: classForm({ drill: "spot" }),
    as: "setDrill",
  },
  {
    at: `${CLASSES}/[id]/progress`,
    does: "withdrawClassDrill",
    form: (it) => ({ class: it.class, set: it.setDrill }),
    as: "withdrawDrill",
  },
  { at: `${DESK}/criteria`, does: "putAway", form: (it) => ({ set: it.criteria }), as: "archiveCriteria" },
  { at: `${DESK}/criteria`, does: "takeBack", form: (it) => ({ set: it.criteria }), as: "archiveCriteria" },
  { at: `${DESK}/papers`, does: "putAway", form: (it) => ({ paper: it.paper }), as: "archivePaper" },
  { at: `${DESK}/papers`, does: "takeBack", form: (it) => ({ paper: it.paper }), as: "archivePaper" },
  { at: `${DESK}/papers`, does: "copy", form: (it) => ({ paper: it.paper }), as: "copyPaper" },
];

/** Use cases that pages ask beside the one that their row names. */
export const ASKED_BESIDES: readonly string[] = [
  "listOwnClasses",
  "listOwnAttempts",
  "listOwnSittings",
  "readClassCourses",
  "noteStillThere",
  "readDemoHistory",
  "readOwnRecord",
  "readXapiDelivery",
  "readEyeDrills",
  "readSetDrills",
];

/** Use cases that no entry asks for by itself, or not yet; each asks for permission all the same. */
export const WITHIN: readonly string[] = ["listCriteria", "readOwnCourse"];
