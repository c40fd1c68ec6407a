import Papa from "papaparse";
import { expect, test } from "vitest";
import { previewAnnulment } from "@/app/_server/use-cases/annul-question";
import { reopenRun, voidRun } from "@/app/_server/use-cases/govern-run";
import { beginSitting, closeSitting, openSitting, releaseSitting } from "@/app/_server/use-cases/govern-sitting";
import { previewMarkAgain } from "@/app/_server/use-cases/mark-again";
import { overruleLine } from "@/app/_server/use-cases/overrule-line";
import { readBoard } from "@/app/_server/use-cases/read-board";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { readOwnCourse } from "@/app/_server/use-cases/read-own-course";
import { readOwnSitting } from "@/app/_server/use-cases/read-own-sitting";
import { readReview } from "@/app/_server/use-cases/read-review";
import { takeBackReview } from "@/app/_server/use-cases/take-back-review";
import { writePracticeFile } from "@/app/_server/use-cases/write-practice-file";
import { writeSittingFile } from "@/app/_server/use-cases/write-sitting-file";
import { RULE_VERSION, shownMark } from "@/lib/results";
import { reviewed } from "@/lib/review";
import { listAudit } from "@/prisma/stores/audit";
import { readSitting } from "@/prisma/stores/sittings";
import { freshDatabaseForEachTest } from "../../support/database";
import { ALL, closedSitting, firstOf, missOf, sit, why } from "./review-room";
import { must, plannedSitting } from "./sitting-room";

freshDatabaseForEachTest();

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
