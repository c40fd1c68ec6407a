import { SECTION_NAMES } from "@/app/_ui/section-names";
import { marksInHundredths, shownMark } from "@/lib/results";
import type { SittingState } from "@/lib/sittings";
import { isOver } from "../sitting-words";
import type { Board, BoardLearner, BoardRun, ErasedLearner, LogEntry } from "./board";

/** "Butt plate", "Butt plate, second piece". */
export const runName = ({ section, isBorderline }: Pick<BoardRun, "section" | "isBorderline">): string =>
  isBorderline ? `${SECTION_NAMES[section]}, second piece` : SECTION_NAMES[section];

/** How a section stands, in a few words. */
export function runWords(run: BoardRun, sitting: SittingState): string {
  switch (run.state) {
    case "waiting":
      if (isOver(sitting)) return "not sat";
      if (run.piece === "failed") return "the piece could not be made";
      if (run.piece === "making") return "piece being made";
      return sitting === "running" || sitting === "paused" ? "not started" : "piece ready";
    case "running":
      return run.clock.state === "standing" ? "paused with everybody" : "inspecting";
    case "paused":
      return "paused";
    case "handed-in":
      return "handed in";
    case "expired":
      return run.closedBy === "tutor" ? "closed by a tutor" : "time was up";
    case "void":
      return "void";
  }
}

/** How a section ended whose learner was erased. */
export function erasedWords({ state }: ErasedLearner["sections"][number]): string {
  if (state === "handed-in" || state === "expired") return "was sat; report and mark are erased";
  return state === "void" ? "void; erased" : "not sat; erased";
}

/** How many are in, at it, done: one sentence over the board. */
export function boardSummary({ learners, erased, sitting }: Pick<Board, "learners" | "erased" | "sitting">): string {
  const runs = [
    ...learners.flatMap((learner): readonly Pick<BoardRun, "state">[] => learner.runs),
    ...erased.flatMap(({ sections }) => sections),
  ].filter(({ state }) => state !== "void");
  const isIn = learners.filter((learner) => learner.isIn).length;
  const open = runs.filter(({ state }) => state === "running" || state === "paused").length;
  const closed = runs.filter(({ state }) => state === "handed-in" || state === "expired").length;
  if (isOver(sitting.state)) return `${closed} of ${runs.length} sections were sat.`;
  return `${isIn} of ${learners.length} learners in. ${open || "No"} ${open === 1 ? "section" : "sections"} open, ${closed} of ${runs.length} closed.`;
}

const ACTS: Readonly<Record<string, string>> = {
  plan: "planned the sitting",
  move: "set another time",
  open: "opened the sitting",
  begin: "began the sitting",
  pause: "paused",
  resume: "resumed",
  close: "closed",
  release: "released the marks",
  void: "made void",
  "add-time": "gave more time",
  "re-open": "opened again",
  "change-factor": "changed the extra time",
  overrule: "overruled a line",
  annul: "annulled a question",
  "mark-again": "had a section marked again",
  "take-back": "took back a change",
};

/** One act of a tutor in words: "gave more time: 10 min, Kim, butt plate". */
export function actWords({ act, subject, details }: LogEntry, learners: readonly BoardLearner[]): string {
  const what = ACTS[act] ?? act;
  const { minutes, factor } = details;
  const amount = [minutes !== undefined && `${minutes} min`, factor !== undefined && `× ${factor}`].filter(Boolean);
  const whom = subjectWords(subject, details, act, learners);
  const rest = [...amount, ...whom, ...reviewWords(details)];
  return rest.length > 0 ? `${what}: ${rest.join(", ")}` : what;
}

const inMarks = (thousandths: string | number): string => marksInHundredths(Number(thousandths));

/** What was done to a mark: the line before and after, then mark and verdict before and after. */
function reviewWords(details: LogEntry["details"]): readonly string[] {
  const { line, lineBefore, lineAfter, counts, markBefore, markAfter, verdictBefore, verdictAfter } = details;
  if (markBefore === undefined || markAfter === undefined) return [];
  const ofLine =
    lineBefore === undefined || lineAfter === undefined ? "" : `, ${inMarks(lineBefore)} → ${inMarks(lineAfter)}`;
  const shown = (thousandths: string | number) => shownMark(Number(thousandths)).toFixed(1);
  return [
    ...(line ? [`“${line}”${ofLine}`] : []),
    ...(counts ? [String(counts)] : []),
    `mark ${shown(markBefore)} ${verdictBefore} → ${shown(markAfter)} ${verdictAfter}`,
  ];
}

const SPEAKS_OF_ALL = new Set(["pause", "resume", "close", "void", "add-time"]);

function subjectWords(
  subject: LogEntry["subject"],
  { learnerId, erased }: LogEntry["details"],
  act: string,
  learners: readonly BoardLearner[],
): readonly string[] {
  if (subject.kind === "run") {
    const learner = learners.find(({ runs }) => runs.some(({ runId }) => runId === subject.id));
    const run = learner?.runs.find(({ runId }) => runId === subject.id);
    return learner && run ? [learner.name, runName(run).toLowerCase()] : [];
  }
  if (erased !== undefined) return ["an erased learner"];
  if (learnerId !== undefined) return learners.filter(({ userId }) => userId === learnerId).map(({ name }) => name);
  return SPEAKS_OF_ALL.has(act) ? ["the whole sitting"] : [];
}
