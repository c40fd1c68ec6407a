import { closeReport } from "@/app/_server/use-cases/close-report";
import { closeSitting } from "@/app/_server/use-cases/govern-sitting";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { startSection } from "@/app/_server/use-cases/start-section";
import { EMPTY_REPORT, type Report } from "@/lib/report";
import { storedResultSchema } from "@/lib/results";
import { linesOf } from "@/lib/review";
import { defaultPaper } from "@/lib/sittings";
import { database } from "@/prisma/client";
import { readHandedInPractice, readPractice } from "@/prisma/stores/practices";
import { readQuestions } from "@/prisma/stores/report-saves";
import { begunSitting, must, openRoom, type Room, runOf, save, started, WINDOW } from "./sitting-room";
import { CAP_ONLY } from "./workshop";

const [PLATE] = defaultPaper().sections;
const only = (weights: Partial<typeof PLATE.weights>, questionCount = 0) => [
  { ...PLATE, questionCount, weights: { indications: 0, dimensions: 0, sentences: 0, questions: 0, ...weights } },
];
/** Nothing but indications count. */
export const INDICATIONS = only({ indications: 100 });
/** Half of the marks for three questions. */
export const HALF_QUESTIONS = only({ indications: 50, questions: 50 }, 3);
export const ALL: Report = {
  ...CAP_ONLY,
  calls: [
    ...CAP_ONLY.calls,
    { id: "b", face: "root", type: "root-concavity", start: 50, end: 80, across: 0, size: 0.8, sentence: null },
  ],
};
export const why = "seen on the piece under the lens";

export async function sit(room: Room, id: string, learner: Room["kim"], report: Report) {
  const { runId, practiceId } = await started(id, learner);
  await must(saveReport(learner, practiceId, save(1, room.now(), WINDOW, report)));
  await must(handIn(learner, practiceId, { window: { id: WINDOW, base: 1 } }));
  return { runId, practiceId };
}

/** The result of a section, as marked at hand-in. */
export async function firstOf(practiceId: string) {
  const [section] = (await readHandedInPractice(practiceId))?.sections ?? [];
  if (!section) throw new Error("not marked");
  return section;
}

export const missOf = async (practiceId: string) => {
  const { result } = await firstOf(practiceId);
  const at = result.indications.lines.findIndex(({ kind }) => kind === "missed");
  const line = linesOf(result)[at];
  return { id: line.id, worth: line.worth };
};

/** A sitting of one plate in which ola found one of two and kim nothing. Closed, not released. */
export async function closedSitting(sections = INDICATIONS, changes: Parameters<typeof openRoom>[0] = {}) {
  const room = await openRoom({ sections, ...changes });
  const id = await begunSitting(room);
  const ola = await sit(room, id, room.ola, CAP_ONLY);
  const kim = await sit(room, id, room.kim, EMPTY_REPORT);
  room.at("10:30");
  await must(closeSitting(room.tutor, id));
  return { room, id, ola, kim };
}

/** Both sit the same plate; ola answers all three questions by their keys, kim none. */
export async function sittingWithQuestions() {
  const room = await openRoom({ sections: HALF_QUESTIONS, forms: "same" });
  const id = await begunSitting(room);
  const sat = async (learner: Room["kim"], isRight: boolean) => {
    const { run, practiceId } = await runOf(id, learner);
    await must(startSection(learner, run.id, { windowId: WINDOW }));
    const criteria = (await readPractice(practiceId))?.criteria;
    if (!criteria) throw new Error("no criteria");
    await must(saveReport(learner, practiceId, save(1, room.now(), WINDOW, CAP_ONLY)));
    await must(closeReport(learner, practiceId, { window: { id: WINDOW, base: 1 } }));
    const answers = Object.fromEntries(
      (await readQuestions(practiceId)).map(({ id: question, key }) => [question, isRight ? key : (key + 1) % 4]),
    );
    await must(saveReport(learner, practiceId, save(2, room.now(), WINDOW, { ...CAP_ONLY, answers })));
    await must(handIn(learner, practiceId, { window: { id: WINDOW, base: 2 } }));
    return { runId: run.id, practiceId };
  };
  const ola = await sat(room.ola, true);
  const kim = await sat(room.kim, false);
  await must(closeSitting(room.tutor, id));
  return { room, id, ola, kim };
}

/** Puts other questions into a stored mark, so that a test need not wait for both to draw the same. */
export async function changeResult(
  practiceId: string,
  change: (result: ReturnType<typeof storedResultSchema.parse>) => object,
) {
  const row = await database().attempt.findFirstOrThrow({ where: { practiceId } });
  const result = storedResultSchema.parse(change(storedResultSchema.parse(row.result)));
  await database().attempt.update({
    where: { id: row.id },
    data: { result: JSON.parse(JSON.stringify(result)), ruleVersion: result.ruleVersion },
  });
}
