import { describe, expect, test } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { closeReport } from "@/app/_server/use-cases/close-report";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { openBench } from "@/app/_server/use-cases/open-bench";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { DEFAULT_CRITERIA } from "@/lib/criteria";
import { type ChosenOptions, EMPTY_REPORT } from "@/lib/report";
import type { Section } from "@/lib/results";
import { createPractice, readPractice } from "@/prisma/stores/practices";
import { readQuestions } from "@/prisma/stores/report-saves";
import { orderSpecimen } from "@/prisma/stores/specimens";
import { freshDatabaseForEachTest } from "../../support/database";
import { CAP_ONLY, makeSpecimen, NOW, openPractice, openTestWorkshop, testSource } from "./workshop";

freshDatabaseForEachTest();

/** A practice that ends with questions. */
async function openAsked(section: Section = "plate"): Promise<{ learner: Caller; other: Caller; id: string }> {
  const { learner, other } = await openTestWorkshop();
  const specimenId = await makeSpecimen("asked", true, section);
  const practice = { id: "asked", userId: "learner", specimenId, section, passMark: 70 } as const;
  await createPractice({ ...practice, criteria: DEFAULT_CRITERIA, book: "open", startedAt: NOW });
  return { learner, other, id: "asked" };
}

/** Closes it as it is in CAP_ONLY; returns what is asked. */
async function closed(learner: Caller, id: string) {
  const answer = await closeReport(learner, id, { sequence: 1, report: CAP_ONLY });
  if (!answer.ok) throw new Error(answer.code);
  return answer.questions;
}

const answering = (answers: ChosenOptions) => ({ ...CAP_ONLY, answers });

async function questionsOnSheet(learner: Caller, id: string) {
  const read = await readMarkSheet(learner, id);
  if (!read.ok) throw new Error(read.code);
  return read.sheet.sections[0].result.questions;
}

describe("closing the report", () => {
  test.each([
    // 10 on a plate, 5 on a fillet: what the paper says
    ["plate", 10],
    ["fillet", 5],
  ] as const)("on a %s asks %i questions and tells nothing else of them", async (section, count) => {
    const { learner, id } = await openAsked(section);
    const answer = await closeReport(learner, id, { sequence: 1, report: EMPTY_REPORT });
    expect(answer).toMatchObject({ ok: true, sequence: 1, reportClosedAt: NOW });
    if (!answer.ok) return;
    expect(answer.questions).toHaveLength(count);
    for (const question of answer.questions) expect(Object.keys(question).sort()).toEqual(["id", "options", "stem"]);
    const sent = JSON.stringify([answer, await openBench(learner, id, testSource())]);
    const kept = await readQuestions(id);
    expect(kept).toHaveLength(count);
    for (const { kind, explanation } of kept) {
      expect(sent).not.toContain(explanation);
      expect(sent).not.toContain(`"${kind}"`);
    }
    expect(sent).not.toContain('"key"');
    expect(sent).not.toContain('"place"');
  });

  test("keeps the version sent along, and the bench shows questions only from then on", async () => {
    const { learner, id } = await openAsked();
    expect(await openBench(learner, id, testSource())).toMatchObject({ questions: null });
    const questions = await closed(learner, id);
    expect(await readPractice(id)).toMatchObject({ state: "open", report: CAP_ONLY, sequence: 1, reportClosedAt: NOW });
    expect(await openBench(learner, id, testSource())).toMatchObject({ questions });
  });

  test("twice, and at once from two windows, gives the same questions", async () => {
    const { learner, id } = await openAsked();
    await saveReport(learner, id, { sequence: 1, report: CAP_ONLY });
    const answers = await Promise.all([1, 2, 3].map(() => closeReport(learner, id, undefined)));
    const again = await closeReport(learner, id, { sequence: 1, report: CAP_ONLY });
    for (const answer of answers) expect(answer).toEqual(again);
    expect(again).toMatchObject({ ok: true });
  });

  test("is refused where another window is ahead, and the report stays open", async () => {
    const { learner, id } = await openAsked();
    await saveReport(learner, id, { sequence: 5, report: CAP_ONLY });
    expect(await closeReport(learner, id, { sequence: 4, report: EMPTY_REPORT })).toMatchObject({
      ok: false,
      code: "stale-save",
      sequence: 5,
      report: CAP_ONLY,
    });
    expect(await readPractice(id)).toMatchObject({ reportClosedAt: null });
  });

  test("from a window that wrote something else is refused with the closed version", async () => {
    const { learner, id } = await openAsked();
    await closed(learner, id);
    await saveReport(learner, id, { sequence: 2, report: answering({ q1: 3 }) });
    const kept = { ok: false, code: "report-closed", sequence: 2, report: answering({ q1: 3 }) };
    expect(await closeReport(learner, id, { sequence: 9, report: EMPTY_REPORT })).toMatchObject(kept);
    // the same words, but without the answers that were given meanwhile
    expect(await closeReport(learner, id, { sequence: 1, report: CAP_ONLY })).toMatchObject(kept);
  });

  test("is refused of somebody else's piece, one that is not made, one handed in, and one nothing is asked about", async () => {
    const { learner, other, id } = await openAsked();
    expect(await closeReport(other, id, undefined)).toEqual({ ok: false, code: "no-such-practice" });
    await orderSpecimen({ id: "unmade", kind: "butt", seed: "secret", asked: null }, "awaited", NOW);
    const early = { id: "early", userId: "learner", specimenId: "unmade", section: "plate", passMark: 70 } as const;
    await createPractice({ ...early, criteria: DEFAULT_CRITERIA, book: "open", startedAt: NOW });
    expect(await closeReport(learner, "early", undefined)).toEqual({ ok: false, code: "specimen-not-made" });
    const older = await openPractice(learner, "older");
    expect(await closeReport(learner, older, undefined)).toEqual({ ok: false, code: "no-questions" });
    await handIn(learner, id, undefined);
    expect(await closeReport(learner, id, undefined)).toEqual({ ok: false, code: "already-handed-in" });
  });
});

describe("saving once the report is closed", () => {
  test("keeps answers and refuses every other change, with what is kept", async () => {
    const { learner, id } = await openAsked();
    await closed(learner, id);
    const answered = answering({ q1: 2, q10: 0 });
    expect(await saveReport(learner, id, { sequence: 2, report: answered })).toMatchObject({ ok: true });
    const [call] = CAP_ONLY.calls;
    for (const changed of [
      { ...answered, calls: [{ ...call, start: 101 }] },
      { ...answered, calls: [] },
      { ...answered, measures: [] },
      { ...answered, pieceSentence: "reject" },
    ]) {
      expect(await saveReport(learner, id, { sequence: 3, report: changed })).toMatchObject({
        ok: false,
        code: "report-closed",
        sequence: 2,
        report: answered,
      });
    }
    expect(await readPractice(id)).toMatchObject({ sequence: 2, report: answered });
  });

  test.each([
    [{ q11: 0 }, "report.answers.q11", /^one of the questions asked: q1, q2, .*q10$/],
    [{ q1: 4 }, "report.answers.q1", /^at most 3$/],
    [{ q1: "A" }, "report.answers.q1", /^a number$/],
    [{ first: 1 }, "report.answers.first", /^the id of a question, q1 to q99$/],
  ])("refuses %j at its place", async (answers, path, wanted) => {
    const { learner, id } = await openAsked();
    await closed(learner, id);
    expect(await saveReport(learner, id, { sequence: 2, report: { ...CAP_ONLY, answers } })).toMatchObject({
      code: "malformed-report",
      problem: { path, wanted: expect.stringMatching(wanted) },
    });
  });

  test("before that there is nothing to answer", async () => {
    const { learner, id } = await openAsked();
    const early = { sequence: 1, report: answering({ q1: 0 }) };
    expect(await saveReport(learner, id, early)).toEqual({ ok: false, code: "report-open" });
    expect(await closeReport(learner, id, early)).toEqual({ ok: false, code: "report-open" });
    expect(await handIn(learner, id, early)).toEqual({ ok: false, code: "report-open" });
    expect(await readPractice(id)).toMatchObject({ sequence: 0, state: "open" });
  });
});

describe("handing in", () => {
  test("marks the answers by the key that was kept: right ones earn all, wrong ones and blanks nothing", async () => {
    const { learner, id } = await openAsked();
    await closed(learner, id);
    const kept = await readQuestions(id);
    const answers = Object.fromEntries(kept.slice(0, 8).map(({ id: q, key }, n) => [q, n < 6 ? key : (key + 1) % 4]));
    expect(await handIn(learner, id, { sequence: 2, report: answering(answers) })).toEqual({ ok: true });
    const part = await questionsOnSheet(learner, id);
    // 15 of 100 parts among ten questions, six of them right
    expect([part?.worth, part?.earned]).toEqual([15_000, 9_000]);
    expect(part?.lines.map(({ written }) => written)).toEqual([...Object.values(answers), null, null]);
    expect(part?.lines.map(({ key }) => key)).toEqual(kept.map(({ key }) => key));
  });

  test("without closing leaves every question unanswered", async () => {
    const { learner, id } = await openAsked();
    expect(await handIn(learner, id, { sequence: 1, report: CAP_ONLY })).toEqual({ ok: true });
    const part = await questionsOnSheet(learner, id);
    expect([part?.worth, part?.earned, part?.lines.length]).toEqual([15_000, 0, 10]);
    expect(part?.lines.every(({ written }) => written === null)).toBe(true);
  });

  test("of a piece of before has no part for questions", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    await handIn(learner, id, { sequence: 1, report: CAP_ONLY });
    expect(await questionsOnSheet(learner, id)).toBeNull();
  });
});
