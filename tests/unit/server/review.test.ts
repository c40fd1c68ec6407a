import Papa from "papaparse";
import { expect, test } from "vitest";
import { annulQuestion, previewAnnulment } from "@/app/_server/use-cases/annul-question";
import { closeReport } from "@/app/_server/use-cases/close-report";
import { reopenRun, voidRun } from "@/app/_server/use-cases/govern-run";
import { beginSitting, closeSitting, openSitting, releaseSitting } from "@/app/_server/use-cases/govern-sitting";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { markAgain, previewMarkAgain } from "@/app/_server/use-cases/mark-again";
import { overruleLine } from "@/app/_server/use-cases/overrule-line";
import { readBoard } from "@/app/_server/use-cases/read-board";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { readOwnCourse } from "@/app/_server/use-cases/read-own-course";
import { readOwnSitting } from "@/app/_server/use-cases/read-own-sitting";
import { readReview } from "@/app/_server/use-cases/read-review";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { startSection } from "@/app/_server/use-cases/start-section";
import { takeBackReview } from "@/app/_server/use-cases/take-back-review";
import { writePracticeFile } from "@/app/_server/use-cases/write-practice-file";
import { writeSittingFile } from "@/app/_server/use-cases/write-sitting-file";
import { EMPTY_REPORT, type Report } from "@/lib/report";
import { RULE_VERSION, type SectionResult, shownMark, storedResultSchema } from "@/lib/results";
import { linesOf, reviewed } from "@/lib/review";
import { defaultPaper } from "@/lib/sittings";
import { database } from "@/prisma/client";
import { listAudit } from "@/prisma/stores/audit";
import { readHandedInPractice, readPractice, readQuestions } from "@/prisma/stores/practices";
import { readSitting } from "@/prisma/stores/sittings";
import { freshDatabaseForEachTest } from "../../support/database";
import { begunSitting, must, openRoom, plannedSitting, type Room, runOf, save, started, WINDOW } from "./sitting-room";
import { CAP_ONLY } from "./workshop";

freshDatabaseForEachTest();

const [PLATE] = defaultPaper().sections;
const only = (weights: Partial<typeof PLATE.weights>, questionCount = 0) => [
  { ...PLATE, questionCount, weights: { indications: 0, dimensions: 0, sentences: 0, questions: 0, ...weights } },
];
/** Nothing but indications count. */
const INDICATIONS = only({ indications: 100 });
/** Half of the marks for three questions. */
const HALF_QUESTIONS = only({ indications: 50, questions: 50 }, 3);
const ALL: Report = {
  ...CAP_ONLY,
  calls: [
    ...CAP_ONLY.calls,
    { id: "b", face: "root", type: "root-concavity", start: 50, end: 80, across: 0, size: 0.8, sentence: null },
  ],
};
const why = "seen on the piece under the lens";

async function sit(room: Room, id: string, learner: Room["kim"], report: Report) {
  const { runId, practiceId } = await started(id, learner);
  await must(saveReport(learner, practiceId, save(1, room.now(), WINDOW, report)));
  await must(handIn(learner, practiceId, { window: { id: WINDOW, base: 1 } }));
  return { runId, practiceId };
}

/** The result of a section, as marked at hand-in. */
async function firstOf(practiceId: string) {
  const [section] = (await readHandedInPractice(practiceId))?.sections ?? [];
  if (!section) throw new Error("not marked");
  return section;
}

const missOf = async (practiceId: string) => {
  const { result } = await firstOf(practiceId);
  const at = result.indications.lines.findIndex(({ kind }) => kind === "missed");
  const line = linesOf(result)[at];
  return { id: line.id, worth: line.worth };
};

/** A sitting of one plate in which ola found one of two and kim nothing. Closed, not released. */
async function closedSitting(sections = INDICATIONS, changes: Parameters<typeof openRoom>[0] = {}) {
  const room = await openRoom({ sections, ...changes });
  const id = await begunSitting(room);
  const ola = await sit(room, id, room.ola, CAP_ONLY);
  const kim = await sit(room, id, room.kim, EMPTY_REPORT);
  room.at("10:30");
  await must(closeSitting(room.tutor, id));
  return { room, id, ola, kim };
}

test("an overruling turns a fail into a pass: beside the computed mark, signed, dated, in the log, and for the course", async () => {
  const { room, id, ola } = await closedSitting();
  const before = await firstOf(ola.practiceId);
  expect(before.isPassed).toBe(false);
  const miss = await missOf(ola.practiceId);
  room.at("10:31");
  await must(overruleLine(room.tutor, ola.runId, { line: miss.id, marks: miss.worth / 1000, reason: why }));

  const after = await firstOf(ola.practiceId);
  expect(after.result).toEqual(before.result);
  expect(after).toMatchObject({
    markThousandths: before.markThousandths,
    isPassed: false,
    reviewed: { markThousandths: before.markThousandths + miss.worth, isPassed: true, at: room.now() },
    acts: [{ at: room.now(), by: { id: "tutor", name: "Name of tutor" }, reason: why }],
  });
  // what is stored beside the mark is what the acts come to
  expect(after.reviewed?.markThousandths).toBe(reviewed(after.result, after.acts).mark);
  const log = await listAudit([ola.runId]);
  expect(log.at(-1)).toMatchObject({
    act: "overrule",
    actorId: "tutor",
    reason: why,
    details: {
      lineBefore: 0,
      lineAfter: miss.worth,
      markBefore: before.markThousandths,
      markAfter: before.markThousandths + miss.worth,
      verdictBefore: "not passed",
      verdictAfter: "passed",
    },
  });
  expect(String(log.at(-1)?.details.line)).toContain("Root concavity");

  // nothing of it is told before the release
  expect(await readMarkSheet(room.ola, ola.practiceId)).toMatchObject({ ok: false, code: "marks-not-released" });
  const waiting = await must(readOwnSitting(room.ola, id));
  expect(JSON.stringify(waiting)).not.toContain(why);
  expect(waiting.sitting.sections[0].mark).toBeNull();

  const { board } = await must(readBoard(room.tutor, id));
  const row = board.learners.find(({ userId }) => userId === "ola");
  expect(row?.runs[0].mark).toMatchObject({ isPassed: true, computed: { isPassed: false } });
  expect(row?.standing).toMatchObject({ isPassed: true, due: [] });

  await must(releaseSitting(room.tutor, id));
  expect(await readOwnCourse(room.ola, "class", "paper")).toMatchObject({ next: { isPassed: true } });
  const { sheet } = await must(readMarkSheet(room.ola, ola.practiceId));
  expect(sheet.sections[0].acts[0].reason).toBe(why);

  // prints and files have the same figures
  const { text } = await must(writePracticeFile(room.ola, ola.practiceId, "sections"));
  const shown = (thousandths: number) => shownMark(thousandths).toString();
  const [line] = Papa.parse<Record<string, string>>(text.slice(1), { header: true, skipEmptyLines: true }).data;
  const [computed, counting] = [before.markThousandths, before.markThousandths + miss.worth];
  expect(line).toMatchObject({
    "Mark, of 100": shown(computed),
    "Mark, thousandths of a mark": String(computed),
    Passed: "no",
    "Reviewed mark, of 100": shown(counting),
    "Reviewed mark, thousandths of a mark": String(counting),
    "Passed as reviewed": "yes",
    "Marking rule at first": RULE_VERSION,
  });
  const ofSitting = await must(writeSittingFile(room.tutor, id, "indications"));
  expect(ofSitting.text).toContain(why);
});

test("a change after the release takes effect at once and is dated; taken back, the computed mark counts again", async () => {
  const { room, id, ola } = await closedSitting();
  await must(releaseSitting(room.tutor, id));
  const miss = await missOf(ola.practiceId);
  room.at("11:15");
  await must(overruleLine(room.tutor, ola.runId, { line: miss.id, marks: miss.worth / 1000, reason: why }));
  const own = await must(readOwnSitting(room.ola, id));
  expect(own.sitting.releasedAt).toEqual(new Date("2026-03-02T10:30:00Z"));
  expect(own.sitting.sections[0].mark?.reviewed).toMatchObject({ isPassed: true, at: room.now() });
  expect(own.standing).toBe("You have passed the butt plate.");

  const [act] = (await firstOf(ola.practiceId)).acts;
  room.at("11:20");
  await must(takeBackReview(room.tutor, ola.runId, { act: act.id, reason: "the wrong line" }));
  const back = await firstOf(ola.practiceId);
  expect(back.reviewed).toEqual({ markThousandths: back.markThousandths, isPassed: false, at: room.now() });
  expect(back.acts.map(({ reason }) => reason)).toEqual([why, "the wrong line"]);
  expect(await takeBackReview(room.tutor, ola.runId, { act: act.id, reason: why })).toMatchObject({
    code: "no-such-act",
  });
  expect((await must(readOwnSitting(room.ola, id))).standing).toContain("again on a fresh piece");
});

test("what cannot be done says why and changes nothing", async () => {
  const { room, id, ola, kim } = await closedSitting();
  const miss = await missOf(ola.practiceId);
  const act = (input: object) => overruleLine(room.tutor, ola.runId, input);
  expect(await act({ line: miss.id, marks: miss.worth / 1000 + 0.1, reason: why })).toMatchObject({
    code: "invalid-input",
    fields: { marks: expect.stringContaining("which is what the line is worth") },
  });
  expect(await act({ line: miss.id, marks: 1, reason: " " })).toMatchObject({
    code: "invalid-input",
    fields: { reason: "reason: 1 to 300 characters" },
  });
  expect(await act({ line: miss.id, marks: null, reason: why })).toMatchObject({ code: "invalid-input" });
  expect(await act({ line: "indications 99", marks: 1, reason: why })).toMatchObject({ code: "no-such-line" });
  expect(await previewAnnulment(room.tutor, ola.runId, { question: "q1" })).toMatchObject({ code: "no-such-question" });
  expect(await previewMarkAgain(room.tutor, ola.runId)).toMatchObject({ code: "same-rule" });
  expect((await firstOf(ola.practiceId)).acts).toEqual([]);
  expect((await firstOf(ola.practiceId)).reviewed).toBeUndefined();
  expect(await listAudit([ola.runId])).toEqual([]);
  // a void section counts for nothing, and one that is open again has no mark
  await must(voidRun(room.tutor, kim.runId, { reason: why }));
  expect(await readReview(room.tutor, kim.runId)).toMatchObject({ code: "not-reviewable" });
  await act({ line: miss.id, marks: 1, reason: why });
  await must(reopenRun(room.tutor, ola.runId, { minutes: 5, reason: why }));
  expect(await act({ line: miss.id, marks: 1, reason: why })).toMatchObject({ code: "not-reviewable" });
  // the mark is gone with what was said of it; the log keeps that
  expect((await readSitting(id))?.runs.find(({ run }) => run.id === ola.runId)?.marks).toEqual([]);
  expect((await listAudit([ola.runId])).map((entry) => entry.act)).toEqual(["overrule", "re-open"]);
});

test("two tutors at one mark: whoever looked at an older state of it changes nothing", async () => {
  const { room, ola } = await closedSitting();
  const { id, worth } = await missOf(ola.practiceId);
  const both = await Promise.all(
    [worth, 0].map((marks) => overruleLine(room.tutor, ola.runId, { line: id, marks: marks / 1000, reason: why })),
  );
  const done = both.filter(({ ok }) => ok).length;
  const { acts, result, reviewed: stored } = await firstOf(ola.practiceId);
  expect(acts).toHaveLength(done);
  expect(done).toBeGreaterThan(0);
  expect(stored?.markThousandths).toBe(reviewed(result, acts).mark);
  expect(await listAudit([ola.runId])).toHaveLength(done);
});

test("a verdict that flips after the re-sit was sat: nothing is lost, and the re-sit changes nothing any more", async () => {
  const { room, id, ola } = await closedSitting();
  await must(releaseSitting(room.tutor, id));
  const again = await plannedSitting(room, "due");
  // planned: the board asks for no second plan
  expect((await must(readBoard(room.tutor, id))).board.sitting.resits).toBe("planned");
  expect((await must(readReview(room.tutor, ola.runId))).later).toMatchObject([{ sittingId: again, isToCome: true }]);
  room.at("10:40");
  await must(openSitting(room.tutor, again));
  await must(beginSitting(room.tutor, again));
  const resit = await sit(room, again, room.ola, ALL);
  await must(closeSitting(room.tutor, again));
  await must(releaseSitting(room.tutor, again));
  const kinds = async () => {
    const { course } = await must(readOwnCourse(room.ola, "class", "paper"));
    return [course.isPassed, ...course.attempts.map(({ kind, outcome }) => `${kind} ${outcome}`)];
  };
  expect(await kinds()).toEqual([true, "first failed", "re-sit passed"]);

  const miss = await missOf(ola.practiceId);
  await must(overruleLine(room.tutor, ola.runId, { line: miss.id, marks: miss.worth / 1000, reason: why }));
  expect(await kinds()).toEqual([true, "first passed", "extra null"]);
  // the re-sit is kept as it was
  expect((await firstOf(resit.practiceId)).markThousandths).toBe(100_000);
  expect(await must(readMarkSheet(room.ola, resit.practiceId))).toMatchObject({ isOwn: true });

  // and back again: then it is the re-sit
  const [act] = (await firstOf(ola.practiceId)).acts;
  await must(takeBackReview(room.tutor, ola.runId, { act: act.id, reason: "it was right at first" }));
  expect(await kinds()).toEqual([true, "first failed", "re-sit passed"]);
});

test("a verdict that flips while a re-sit is planned: the plan stays, and nothing is due", async () => {
  const { room, id, ola } = await closedSitting();
  await must(releaseSitting(room.tutor, id));
  expect((await must(readBoard(room.tutor, id))).board.sitting.resits).toBe("due");
  const again = await plannedSitting(room, "due");
  const miss = await missOf(ola.practiceId);
  await must(overruleLine(room.tutor, ola.runId, { line: miss.id, marks: miss.worth / 1000, reason: why }));
  const planned = await readSitting(again);
  expect(planned?.runs.filter(({ run }) => run.userId === "ola").map(({ run }) => run.state)).toEqual(["waiting"]);
  expect(await readOwnCourse(room.ola, "class", "paper")).toMatchObject({ next: { isPassed: true, due: [] } });
});

/** Both sit the same plate; ola answers all three questions by their keys, kim none. */
async function sittingWithQuestions() {
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
async function changeResult(
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

test("a question is annulled for everybody who was asked it, after the preview has said whose marks change", async () => {
  const { room, ola, kim } = await sittingWithQuestions();
  const ofOla = (await firstOf(ola.practiceId)).result.questions;
  if (!ofOla) throw new Error("nothing asked");
  // kim was asked ola's first question as her third, with other wrong options, and answered it wrongly
  await changeResult(kim.practiceId, (result) => {
    const [shared] = ofOla.lines;
    const lines = result.questions?.lines.map((line, at) => {
      const { kind, stem, key } = shared;
      const options = shared.options.map((option, n) => (n === key ? option : `none of these ${n}`));
      // nor was it among what she was asked otherwise
      const other = { ...line, stem: `Something else, number ${at}` };
      return at === 2 ? { ...line, kind, stem, options, key, written: (key + 1) % 4 } : other;
    });
    return { ...result, questions: result.questions && { ...result.questions, lines } };
  });
  const before = { ola: await firstOf(ola.practiceId), kim: await firstOf(kim.practiceId) };

  const { ok: _, rows, ...preview } = await must(previewAnnulment(room.tutor, ola.runId, { question: "q1" }));
  // ola has everything for the others that its share goes to; kim had nothing for it, and nothing for the others
  expect(preview).toEqual({ asked: 2, marks: 0, verdicts: 0 });
  expect(rows.map(({ learner }) => learner)).toEqual(["Name of kim", "Name of ola"]);
  const seen = { marks: 0, verdicts: 0 };
  expect(
    await annulQuestion(room.tutor, ola.runId, { question: "q1", reason: why, seen: { marks: 1, verdicts: 0 } }),
  ).toMatchObject({ code: "review-changed" });
  await must(annulQuestion(room.tutor, ola.runId, { question: "q1", reason: why, seen }));
  const annulled = async (practiceId: string) => {
    const { result, acts } = await firstOf(practiceId);
    return reviewed(result, acts)
      .lines.filter(({ list }) => list === "questions")
      .map((line) => line.annulled);
  };
  expect(await annulled(ola.practiceId)).toEqual(["shared-out", null, null]);
  expect(await annulled(kim.practiceId)).toEqual([null, null, "shared-out"]);
  expect((await listAudit([ola.runId, kim.runId])).map(({ act, reason }) => [act, reason])).toEqual([
    ["annul", why],
    ["annul", why],
  ]);
  expect(await previewAnnulment(room.tutor, ola.runId, { question: "q1" })).toMatchObject({ code: "no-such-question" });

  // taken back at one, it comes back for both
  const [act] = (await firstOf(kim.practiceId)).acts;
  await must(takeBackReview(room.tutor, kim.runId, { act: act.id, reason: "it was right" }));
  for (const who of ["ola", "kim"] as const) {
    const after = await firstOf(who === "ola" ? ola.practiceId : kim.practiceId);
    expect(reviewed(after.result, after.acts).mark).toBe(before[who].markThousandths);
  }
});

test("what is asked about a piece is annulled for those on that piece alone, and a mark goes up by it", async () => {
  const { room, ola, kim } = await sittingWithQuestions();
  const { result } = await firstOf(kim.practiceId);
  // kim's first is right after all; her second is annulled: of three worth 50 one was right, of two one
  await changeResult(kim.practiceId, ({ questions, ...rest }) => {
    const lines = questions?.lines.map((line, at) =>
      at === 0
        ? { ...line, kind: "weld-width", stem: "How wide is it?", written: line.key, earned: line.worth }
        : { ...line, kind: "cap-height" },
    );
    const earned = lines?.[0].earned ?? 0;
    return {
      ...rest,
      mark: rest.mark + earned,
      shown: shownMark(rest.mark + earned),
      questions: questions && { ...questions, lines, earned },
    };
  });
  const preview = await must(previewAnnulment(room.tutor, kim.runId, { question: "q2" }));
  expect([preview.asked, preview.marks]).toEqual([1, 1]);
  await must(
    annulQuestion(room.tutor, kim.runId, {
      question: "q2",
      reason: why,
      seen: { marks: preview.marks, verdicts: preview.verdicts },
    }),
  );
  const after = await firstOf(kim.practiceId);
  expect(reviewed(after.result, after.acts).parts.questions?.earned).toBe(25_000);
  expect(result.questions?.worth).toBe(50_000);
  expect((await firstOf(ola.practiceId)).acts).toEqual([]);
});

/** As a rule would mark that gave nothing for indications. */
function nothingEarned(result: SectionResult) {
  const lines = result.indications.lines.map((line) => ({ ...line, earned: 0, parts: [], cost: 0, back: 0 }));
  return { ...result, mark: 0, shown: 0, passed: false, indications: { ...result.indications, earned: 0, lines } };
}

test("marked under an older rule: both marks are kept with their versions, and the tutor says which counts", async () => {
  const { room, ola } = await closedSitting();
  const { result: asMarked, markThousandths } = await firstOf(ola.practiceId);
  // the same by an older rule: nothing would differ
  await changeResult(ola.practiceId, (result) => ({ ...result, ruleVersion: "2.9" }));
  expect(await must(previewMarkAgain(room.tutor, ola.runId))).toMatchObject({
    lines: [],
    again: { mark: markThousandths },
  });
  const same = { first: markThousandths, again: markThousandths };
  expect(await markAgain(room.tutor, ola.runId, { counts: true, seen: same, reason: why })).toMatchObject({
    code: "nothing-differs",
  });
  // by one that gave nothing for what was found in the right place
  await changeResult(ola.practiceId, nothingEarned);
  const preview = await must(previewMarkAgain(room.tutor, ola.runId));
  expect(preview).toMatchObject({
    first: { ruleVersion: "2.9", shown: 0, waiting: [] },
    again: { ruleVersion: RULE_VERSION, mark: asMarked.mark, waiting: [] },
  });
  expect(preview.lines.length).toBeGreaterThan(0);
  const seen = { first: preview.first.mark, again: preview.again.mark };
  for (const other of [
    { ...seen, first: 1 },
    { ...seen, again: 1 },
  ]) {
    expect(await markAgain(room.tutor, ola.runId, { counts: true, seen: other, reason: why })).toMatchObject({
      code: "review-changed",
    });
  }
  await must(markAgain(room.tutor, ola.runId, { counts: false, seen, reason: "the class sat by 2.9" }));
  expect((await firstOf(ola.practiceId)).reviewed).toMatchObject({ markThousandths: 0 });
  await must(markAgain(room.tutor, ola.runId, { counts: true, seen, reason: why }));
  const after = await firstOf(ola.practiceId);
  expect(after.reviewed?.markThousandths).toBe(preview.again.mark);
  expect([after.result.ruleVersion, after.result.mark]).toEqual(["2.9", 0]);
  const { sheet } = await must(readReview(room.tutor, ola.runId));
  expect(sheet.review?.markedAgain).toMatchObject({
    first: { ruleVersion: "2.9", shown: 0 },
    again: { ruleVersion: RULE_VERSION },
    counts: "again",
  });
  expect(sheet.sections[0].ruleVersion).toBe(RULE_VERSION);
  expect((await listAudit([ola.runId])).map(({ act, reason }) => [act, reason])).toEqual([
    ["mark-again", "the class sat by 2.9"],
    ["mark-again", why],
  ]);
});

test("before it is marked again each choice says what would count and what would wait; back and forth nothing is lost", async () => {
  const { room, ola } = await closedSitting();
  await changeResult(ola.practiceId, (result) => ({ ...nothingEarned(result), ruleVersion: "2.9" }));
  const { worth, id: line } = await missOf(ola.practiceId);
  const overrule = (marks: number) =>
    must(overruleLine(room.tutor, ola.runId, { line, marks: marks / 1000, reason: why }));
  const preview = () => must(previewMarkAgain(room.tutor, ola.runId));
  const again = async (counts: boolean) => {
    const shown = await preview();
    const seen = { first: shown.first.mark, again: shown.again.mark };
    await must(markAgain(room.tutor, ola.runId, { counts, seen, reason: why }));
    const { reviewed: stored, result, acts } = await firstOf(ola.practiceId);
    // it came to what was shown, and that is what stands beside it
    expect(stored?.markThousandths).toBe(counts ? seen.again : seen.first);
    expect(reviewed(result, acts).mark).toBe(stored?.markThousandths);
    return stored?.markThousandths;
  };
  const marksOf = (waiting: readonly { readonly marks: number; readonly ruleVersion: string }[]) =>
    waiting.map(({ marks, ruleVersion }) => [marks, ruleVersion]);

  await overrule(worth);
  const ofFirst = await preview();
  expect(ofFirst.first).toMatchObject({ computed: 0, mark: worth, waiting: [] });
  expect(marksOf(ofFirst.again.waiting)).toEqual([[worth, "2.9"]]);
  expect(ofFirst.again.waiting[0].line).toContain("Root concavity");
  const computed = ofFirst.again.mark;
  expect(await again(true)).toBe(computed);

  await overrule(worth - 1_000);
  const ofBoth = await preview();
  expect([ofBoth.first.mark, ofBoth.again.mark]).toEqual([worth, computed + worth - 1_000]);
  expect(marksOf(ofBoth.first.waiting)).toEqual([[worth - 1_000, RULE_VERSION]]);
  expect(marksOf(ofBoth.again.waiting)).toEqual([[worth, "2.9"]]);
  expect(await again(false)).toBe(worth);
  expect(await again(true)).toBe(computed + worth - 1_000);
});

test("in the log an overruled question is before and after of one worth, also where another was annulled", async () => {
  const { room, kim } = await sittingWithQuestions();
  // kim's second is right; her first is annulled, so that it brings more than it was worth when it was marked
  await changeResult(kim.practiceId, ({ questions, ...rest }) => {
    const lines = questions?.lines.map((line, at) =>
      at === 1 ? { ...line, written: line.key, earned: line.worth } : { ...line, kind: "weld-width" },
    );
    const earned = lines?.[1].earned ?? 0;
    const mark = rest.mark + earned;
    return { ...rest, mark, shown: shownMark(mark), questions: questions && { ...questions, lines, earned } };
  });
  const { marks, verdicts } = await must(previewAnnulment(room.tutor, kim.runId, { question: "q1" }));
  await must(annulQuestion(room.tutor, kim.runId, { question: "q1", reason: why, seen: { marks, verdicts } }));
  const { result, acts } = await firstOf(kim.practiceId);
  const worth = result.questions?.lines[1].worth ?? 0;
  expect(reviewed(result, acts).lines.find(({ id }) => id === "questions 1")?.reviewed.earned).toBeGreaterThan(worth);
  const logged = async (given: number) => {
    await must(overruleLine(room.tutor, kim.runId, { line: "questions 1", marks: given, reason: why }));
    return (await listAudit([kim.runId])).at(-1)?.details;
  };
  expect(await logged(8)).toMatchObject({ lineBefore: worth, lineAfter: 8_000, lineWorth: worth });
  expect(await logged(4)).toMatchObject({ lineBefore: 8_000, lineAfter: 4_000, lineWorth: worth });
});
