import { expect, test } from "vitest";
import { handInRun } from "@/app/_server/sittings/hand-in-run";
import { saveInRun } from "@/app/_server/sittings/save-in-run";
import { sweepSittings } from "@/app/_server/sittings/sweep";
import { addTime, changeFactor, pauseRun, reopenRun, resumeRun } from "@/app/_server/use-cases/govern-run";
import {
  addTimeToAll,
  closeSitting,
  pauseSitting,
  releaseSitting,
  resumeSitting,
  voidSitting,
} from "@/app/_server/use-cases/govern-sitting";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { readBoard } from "@/app/_server/use-cases/read-board";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { followClock, readClock, startSection, takeOver } from "@/app/_server/use-cases/start-section";
import { readPractice } from "@/prisma/stores/practices";
import { storeChange } from "@/prisma/stores/sitting-changes";
import { readSitting } from "@/prisma/stores/sittings";
import { freshDatabaseForEachTest } from "../../support/database";
import { begunSitting, moment, must, openRoom, plannedSitting, runOf, save, started, WINDOW } from "./sitting-room";

freshDatabaseForEachTest();

const hours = (n: number) => n * 3_600_000;
const reason = "the lamp went out";

test("a whole sitting: planned, begun, saved, handed in, closed, released", async () => {
  const room = await openRoom();
  const id = await begunSitting(room);
  const board = await must(readBoard(room.tutor, id));
  expect(board.board).toMatchObject({
    sitting: { state: "running", className: "Monday class" },
    pieces: { all: 4, ready: 4, failed: 0 },
  });
  expect(board.board.learners.map(({ userId, isIn, factor }) => [userId, isIn, factor])).toEqual([
    ["kim", true, 1.5],
    ["ola", true, 1],
  ]);
  const { runId, practiceId } = await started(id, room.ola);
  room.at("10:20");
  expect(await saveReport(room.ola, practiceId, save(1, room.now()))).toMatchObject({ ok: true, sequence: 1 });
  const clock = await must(readClock(room.ola, runId));
  expect(clock.run.clock).toEqual({ state: "going", deadline: "2026-03-02T12:00:00.000Z", remaining: null });
  const last = { window: { id: WINDOW, base: 1 } };
  expect(await handIn(room.ola, practiceId, last)).toEqual({ ok: true });
  // once more comes to the same
  expect(await handIn(room.ola, practiceId, last)).toEqual({ ok: true });
  expect(await saveReport(room.ola, practiceId, save(2, room.now()))).toMatchObject({ ok: false, code: "handed-in" });
  expect(await readMarkSheet(room.ola, practiceId)).toEqual({
    ok: false,
    code: "marks-not-released",
    sittingId: id,
  });
  // the tutor knows at once
  expect(await readMarkSheet(room.tutor, practiceId)).toMatchObject({ ok: true, isOwn: false });
  await must(closeSitting(room.tutor, id));
  await must(releaseSitting(room.tutor, id));
  expect(await readMarkSheet(room.ola, practiceId)).toMatchObject({ ok: true, isOwn: true });
  expect((await runOf(id, room.ola)).run.marksSeenAt).toEqual(moment("10:20"));
  const log = await must(readBoard(room.tutor, id));
  expect(log.board.log.map(({ act, actorName }) => `${act} by ${actorName}`)).toEqual(
    ["plan", "open", "begin", "close", "release"].map((act) => `${act} by Name of tutor`),
  );
});

test("the clock closes with the last save and marks it, whoever looks and however late", async () => {
  const room = await openRoom();
  const id = await begunSitting(room);
  const { practiceId, runId } = await started(id, room.ola);
  room.at("11:59:59");
  await must(saveReport(room.ola, practiceId, save(1, room.now())));
  room.at("12:00:05");
  // a packet that was under way is taken, one that was written later is not
  expect(await saveReport(room.ola, practiceId, save(2, moment("11:59:59")))).toMatchObject({ ok: true });
  expect(await saveReport(room.ola, practiceId, save(3, moment("12:00:01")))).toMatchObject({
    ok: false,
    code: "time-is-up",
    sequence: 2,
    savedAt: moment("12:00:05"),
  });
  await sweepSittings(room.now(), room.source);
  expect((await readPractice(practiceId))?.state).toBe("open");
  room.at("12:00:11");
  // two processes sweep at once
  await Promise.all([sweepSittings(room.now(), room.source), sweepSittings(room.now(), room.source)]);
  expect(await readPractice(practiceId)).toMatchObject({
    state: "handed-in",
    sequence: 2,
    handedInAt: moment("12:00"),
    marks: [{ section: "plate" }],
  });
  expect((await must(readClock(room.ola, runId))).run).toMatchObject({ state: "expired", shut: "time-is-up" });
  expect(await saveReport(room.ola, practiceId, save(3, moment("11:59:59")))).toMatchObject({ code: "time-is-up" });
});

test("what stood in line while a section was marked changes nothing of what the marks are for", async () => {
  const room = await openRoom();
  const id = await begunSitting(room);
  const { practiceId, runId } = await started(id, room.ola);
  await must(saveReport(room.ola, practiceId, save(1, room.now())));
  room.at("12:00:05");
  await sweepSittings(room.now(), room.source);
  const before = await readSitting(id);
  if (!before) throw new Error("no sitting");
  room.at("12:00:11");
  await sweepSittings(room.now(), room.source);
  expect(await readPractice(practiceId)).toMatchObject({ state: "handed-in", sequence: 1 });

  // read before the marks were made, stored after
  const runs = before.runs.map(({ run }) => (run.id === runId ? { ...run, sequence: 2, savedAt: room.now() } : run));
  const nothingElse = { newRuns: [], audit: null, questions: [], concernsOthers: false };
  expect(await storeChange({ before, next: { sitting: before.sitting, runs }, ...nothingElse })).toBe(false);
  // come in within the grace, and its turn came after
  const late = { ...save(2, moment("11:59:59")), madeAt: moment("11:59:59") };
  expect(await saveInRun(runId, "ola", late, moment("12:00:06"))).toMatchObject({ ok: false, code: "time-is-up" });
  expect(await handInRun(runId, late, moment("12:00:06"))).toMatchObject({ ok: false, code: "time-is-up" });
  expect(await readPractice(practiceId)).toMatchObject({ sequence: 1, marks: [{ section: "plate" }] });
});

test("pauses of all and of one, extra time live: each moves the deadline by what it says", async () => {
  const room = await openRoom();
  const id = await begunSitting(room);
  const ola = await started(id, room.ola);
  const kim = await started(id, room.kim);
  const deadlines = async () =>
    Promise.all(
      [ola, kim].map(async ({ runId }, n) => {
        const { run } = await must(readClock(n === 0 ? room.ola : room.kim, runId));
        return run.clock.deadline?.slice(11, 19) ?? run.clock.remaining;
      }),
    );
  expect(await deadlines()).toEqual(["12:00:00", "13:00:00"]);
  room.at("10:30");
  await must(pauseSitting(room.tutor, id));
  expect(await deadlines()).toEqual([hours(1.5), hours(2.5)]);
  // what was under way is kept, what is written while the clock stands is not taken
  room.at("10:30:02");
  await must(saveReport(room.ola, ola.practiceId, save(1, moment("10:30"))));
  room.at("10:31");
  expect(await saveReport(room.ola, ola.practiceId, save(2, room.now()))).toMatchObject({
    code: "paused",
    sequence: 1,
  });
  room.at("10:45");
  await must(resumeSitting(room.tutor, id));
  expect(await deadlines()).toEqual(["12:15:00", "13:15:00"]);
  await must(pauseRun(room.tutor, kim.runId));
  room.at("10:50");
  await must(resumeRun(room.tutor, kim.runId));
  expect(await deadlines()).toEqual(["12:15:00", "13:20:00"]);
  await must(addTime(room.tutor, ola.runId, { minutes: 7, reason }));
  await must(addTimeToAll(room.tutor, id, { minutes: 10, reason }));
  expect(await deadlines()).toEqual(["12:32:00", "13:30:00"]);
  await must(changeFactor(room.tutor, id, "ola", { factor: 1.25, reason }));
  // a quarter of 120 minutes more
  expect(await deadlines()).toEqual(["13:02:00", "13:30:00"]);
  expect((await runOf(id, room.ola, "fillet")).run.factor).toBe(1.25);
  expect(await addTime(room.tutor, ola.runId, { minutes: 0, reason: " " })).toMatchObject({
    code: "invalid-input",
    fields: { minutes: expect.stringContaining("1 to 240"), reason: expect.stringContaining("reason") },
  });
});

test("one live session: the newest window writes, an older one is told", async () => {
  const room = await openRoom();
  const id = await begunSitting(room);
  const { runId, practiceId } = await started(id, room.ola);
  await must(saveReport(room.ola, practiceId, save(1, room.now())));
  // starting again, from a second window, changes nothing; taking over does
  expect((await must(startSection(room.ola, runId, { windowId: "window02" }))).run.liveWindowId).toBe(WINDOW);
  expect((await must(takeOver(room.ola, runId, { windowId: "window02" }))).run.liveWindowId).toBe("window02");
  expect(await saveReport(room.ola, practiceId, save(2, room.now()))).toMatchObject({
    code: "other-window",
    sequence: 1,
  });
  await must(saveReport(room.ola, practiceId, save(2, room.now(), "window02")));
  expect(await handIn(room.ola, practiceId, { window: { id: WINDOW, base: 1 } })).toMatchObject({
    code: "other-window",
  });
});

test("opened again: minutes of its own, the marks are taken back, and made anew at its end", async () => {
  const room = await openRoom();
  const id = await begunSitting(room);
  const { runId, practiceId } = await started(id, room.ola);
  await must(saveReport(room.ola, practiceId, save(1, room.now())));
  await must(handIn(room.ola, practiceId, { window: { id: WINDOW, base: 1 } }));
  expect((await readPractice(practiceId))?.marks).toHaveLength(1);
  room.at("10:10");
  await must(reopenRun(room.tutor, runId, { minutes: 10, reason }));
  expect(await readPractice(practiceId)).toMatchObject({ state: "open", marks: [], sequence: 1 });
  await must(saveReport(room.ola, practiceId, save(2, room.now())));
  room.at("10:20:11");
  await sweepSittings(room.now(), room.source);
  expect(await readPractice(practiceId)).toMatchObject({
    state: "handed-in",
    sequence: 2,
    handedInAt: moment("10:20"),
  });
});

test("a step and a clock meet: whatever comes at once, every save that was answered is there", async () => {
  const room = await openRoom();
  const id = await begunSitting(room);
  const ola = await started(id, room.ola);
  const kim = await started(id, room.kim);
  const answers = await Promise.all([
    saveReport(room.ola, ola.practiceId, save(1, room.now())),
    saveReport(room.kim, kim.practiceId, save(1, room.now())),
    pauseRun(room.tutor, ola.runId),
    addTimeToAll(room.tutor, id, { minutes: 5, reason }),
    sweepSittings(room.now(), room.source).then(() => ({ ok: true as const })),
  ]);
  expect(answers.map((answer) => answer.ok)).toEqual([true, true, true, true, true]);
  const stored = await readSitting(id);
  expect(stored?.runs.filter(({ run }) => run.addedMinutes.length === 1)).toHaveLength(4);
  expect((await runOf(id, room.ola)).run).toMatchObject({ state: "paused", sequence: 1 });
  expect((await runOf(id, room.kim)).run).toMatchObject({ state: "running", sequence: 1 });
});

test("a sitting made void counts for nothing, and shows no marks", async () => {
  const room = await openRoom({ feedback: "at-once" });
  const id = await begunSitting(room);
  const { practiceId } = await started(id, room.ola);
  await must(handIn(room.ola, practiceId, { window: { id: WINDOW, base: 0 } }));
  expect(await readMarkSheet(room.ola, practiceId)).toMatchObject({ ok: true });
  expect(await voidSitting(room.tutor, id, {})).toMatchObject({ code: "invalid-input" });
  await must(voidSitting(room.tutor, id, { reason }));
  expect(await readMarkSheet(room.ola, practiceId)).toMatchObject({ ok: false, code: "marks-not-released" });
  expect((await must(readBoard(room.tutor, id))).board).toMatchObject({
    sitting: { state: "void", voidReason: reason },
  });
});

test("nothing starts before its time, nor before its piece is made", async () => {
  const room = await openRoom();
  const id = await plannedSitting(room);
  const { run } = await runOf(id, room.ola);
  expect(await startSection(room.ola, run.id, { windowId: WINDOW })).toEqual({ ok: false, code: "not-begun" });
  expect(await startSection(room.ola, run.id, { windowId: "no" })).toMatchObject({ code: "invalid-input" });
});

test("live views of a class share one reading for a moment, and what they tell carries the time of that reading", async () => {
  const room = await openRoom();
  const id = await begunSitting(room);
  const { runId, practiceId } = await started(id, room.kim);
  const told = () => must(followClock(room.kim, runId));
  room.at("10:00:10");
  expect(await told()).toEqual(await must(readClock(room.kim, runId)));
  await must(saveReport(room.kim, practiceId, save(1, room.now())));
  // within the moment: as it was, and said to be of then
  expect(await told()).toMatchObject({ now: moment("10:00:10"), run: { sequence: 0 } });
  room.at("10:00:11");
  expect(await told()).toMatchObject({ now: moment("10:00:11"), run: { sequence: 1 } });
  // a clock that goes back has no reading to share
  room.at("10:00:05");
  expect(await told()).toMatchObject({ now: moment("10:00:05"), run: { sequence: 1 } });
});
