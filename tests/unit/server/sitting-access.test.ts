import { expect, test } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { closeReport } from "@/app/_server/use-cases/close-report";
import { enterSitting } from "@/app/_server/use-cases/enter-sitting";
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
import { keepViewTrail } from "@/app/_server/use-cases/keep-view-trail";
import { listOwnSittings } from "@/app/_server/use-cases/list-own-sittings";
import { openBench } from "@/app/_server/use-cases/open-bench";
import { planSitting } from "@/app/_server/use-cases/plan-sitting";
import { readBoard } from "@/app/_server/use-cases/read-board";
import { readClassCourses } from "@/app/_server/use-cases/read-class-courses";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { readOwnCourse } from "@/app/_server/use-cases/read-own-course";
import { readPieceSheet } from "@/app/_server/use-cases/read-piece-sheet";
import { readSittingsDesk } from "@/app/_server/use-cases/read-sittings-desk";
import { readSurface } from "@/app/_server/use-cases/read-surface";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { readClock, startSection, takeOver } from "@/app/_server/use-cases/start-section";
import { writePracticeFile } from "@/app/_server/use-cases/write-practice-file";
import { readSitting } from "@/prisma/stores/sittings";
import { freshDatabaseForEachTest } from "../../support/database";
import { begunSitting, makeAll, openRoom, plannedSitting, type Room, runOf, save, WINDOW } from "./sitting-room";

freshDatabaseForEachTest();

/** What each of them is answered: "yes" for anything that is no refusal of permission. */
type Row = [name: string, act: (caller: Caller, of: Ids, room: Room) => Promise<object>, answers: readonly string[]];
interface Ids {
  readonly id: string;
  readonly runId: string;
  readonly practiceId: string;
}

const why = { reason: "the lamp went out" };
const more = { minutes: 5, ...why };
const plan = { classId: "class", paperId: "paper", plannedAt: "2026-03-03T10:00:00Z", who: "class" };
const window = { windowId: WINDOW };
const last = { window: { id: WINDOW, base: 0 } };

/** Whoever is not signed in, kim whose section it is, ola beside her, their tutor, and the tutor of another class. */
const CALLERS = ["nobody", "kim", "ola", "tutor", "stranger"] as const;
const tutorOnly = (refusal: string) => ["not-signed-in", "not-permitted", "not-permitted", "yes", refusal];
const learnerOnly = (refusal: string) => ["not-signed-in", "yes", refusal, refusal, refusal];

const ROWS: readonly Row[] = [
  ["plan", (caller, _, { source }) => planSitting(caller, plan, source), tutorOnly("no-such-class")],
  ["course of a class", (caller) => readClassCourses(caller, "class"), tutorOnly("no-such-class")],
  ["open", (caller, { id }) => openSitting(caller, id), tutorOnly("no-such-sitting")],
  ["begin", (caller, { id }) => beginSitting(caller, id), tutorOnly("no-such-sitting")],
  ["pause", (caller, { id }) => pauseSitting(caller, id), tutorOnly("no-such-sitting")],
  ["resume", (caller, { id }) => resumeSitting(caller, id), tutorOnly("no-such-sitting")],
  ["move", (caller, { id }) => moveSitting(caller, id, { plannedAt: plan.plannedAt }), tutorOnly("no-such-sitting")],
  ["more time for all", (caller, { id }) => addTimeToAll(caller, id, more), tutorOnly("no-such-sitting")],
  [
    "extra time",
    (caller, { id }) => changeFactor(caller, id, "kim", { factor: 2, ...why }),
    tutorOnly("no-such-sitting"),
  ],
  ["renew pieces", (caller, { id }, { source }) => renewPieces(caller, id, source), tutorOnly("no-such-sitting")],
  ["board", (caller, { id }) => readBoard(caller, id), tutorOnly("no-such-sitting")],
  ["release", (caller, { id }) => releaseSitting(caller, id), tutorOnly("no-such-sitting")],
  ["pause one", (caller, { runId }) => pauseRun(caller, runId), tutorOnly("no-such-run")],
  ["resume one", (caller, { runId }) => resumeRun(caller, runId), tutorOnly("no-such-run")],
  ["more time for one", (caller, { runId }) => addTime(caller, runId, more), tutorOnly("no-such-run")],
  ["re-open one", (caller, { runId }) => reopenRun(caller, runId, more), tutorOnly("no-such-run")],
  ["start", (caller, { runId }) => startSection(caller, runId, window), learnerOnly("no-such-run")],
  ["take over", (caller, { runId }) => takeOver(caller, runId, window), learnerOnly("no-such-run")],
  ["clock", (caller, { runId }) => readClock(caller, runId), learnerOnly("no-such-run")],
  [
    "bench",
    (caller, { practiceId }, { source }) => openBench(caller, practiceId, source),
    learnerOnly("no-such-practice"),
  ],
  ["surface", (caller, { practiceId }) => readSurface(caller, practiceId, "cap"), learnerOnly("no-such-practice")],
  [
    "piece on paper",
    (caller, { practiceId }) => readPieceSheet(caller, practiceId),
    ["not-signed-in", "marks-not-released", "no-such-practice", "no-such-practice", "no-such-practice"],
  ],
  [
    "save",
    (caller, { practiceId }, { now }) => saveReport(caller, practiceId, save(1, now())),
    learnerOnly("no-such-practice"),
  ],
  [
    "where they looked",
    (caller, { practiceId }) =>
      keepViewTrail(caller, practiceId, { windowId: WINDOW, number: 1, trail: { version: 1, views: {} } }),
    learnerOnly("no-such-practice"),
  ],
  [
    "close the report",
    (caller, { practiceId }) => closeReport(caller, practiceId, last),
    learnerOnly("no-such-practice"),
  ],
  ["hand in", (caller, { practiceId }) => handIn(caller, practiceId, last), learnerOnly("no-such-practice")],
  [
    "mark sheet",
    (caller, { practiceId }) => readMarkSheet(caller, practiceId),
    ["not-signed-in", "marks-not-released", "no-such-practice", "yes", "no-such-practice"],
  ],
  [
    "file of the marks",
    (caller, { practiceId }) => writePracticeFile(caller, practiceId, "indications"),
    ["not-signed-in", "marks-not-released", "no-such-practice", "yes", "no-such-practice"],
  ],
  [
    "enter",
    (caller, { id }, { source }) => enterSitting(caller, id, source),
    ["not-signed-in", "yes", "yes", "no-such-sitting", "no-such-sitting"],
  ],
  ["own sittings", (caller) => listOwnSittings(caller), ["not-signed-in", "yes", "yes", "yes", "yes"]],
  [
    "own course",
    (caller) => readOwnCourse(caller, "class", "paper"),
    ["not-signed-in", "yes", "yes", "no-such-class", "no-such-class"],
  ],
  ["close one", (caller, { runId }) => closeRun(caller, runId), tutorOnly("no-such-run")],
  ["close", (caller, { id }) => closeSitting(caller, id), tutorOnly("no-such-sitting")],
  ["void one", (caller, { runId }) => voidRun(caller, runId, why), tutorOnly("no-such-run")],
  ["void", (caller, { id }) => voidSitting(caller, id, why), tutorOnly("no-such-sitting")],
];

const OF_PERMISSION = ["not-signed-in", "not-permitted", "no-such-", "marks-not-released", "not-expected"];

test("who may do what in a sitting, and that a refusal changes nothing", async () => {
  const room = await openRoom();
  const id = await begunSitting(room);
  const { run, practiceId } = await runOf(id, room.kim);
  await startSection(room.kim, run.id, window);
  const of = { id, runId: run.id, practiceId };
  const table: string[] = [];
  for (const [name, act, answers] of ROWS) {
    for (const [n, caller] of CALLERS.entries()) {
      const before = await readSitting(id);
      const answer = (await act(room[caller], of, room)) as { ok: boolean; code?: string };
      const isRefused = !answer.ok && OF_PERMISSION.some((code) => answer.code?.startsWith(code));
      table.push(`${name} by ${caller}: ${isRefused ? answer.code : "yes"}`);
      expect(table.at(-1)).toBe(`${name} by ${caller}: ${answers[n]}`);
      if (isRefused) expect(await readSitting(id)).toEqual(before);
    }
  }
  expect(table).toHaveLength(ROWS.length * CALLERS.length);
});

test("before its clock goes nothing of a piece can be seen, and after it is closed nothing until the marks may be known", async () => {
  const room = await openRoom();
  const id = await plannedSitting(room);
  const { run, practiceId } = await runOf(id, room.kim);
  expect(await readSurface(room.kim, practiceId, "cap")).toMatchObject({ code: "not-started" });
  expect(await openBench(room.kim, practiceId, room.source)).toMatchObject({ code: "not-started" });
  await openSitting(room.tutor, id);
  await beginSitting(room.tutor, id);
  expect(await readSurface(room.kim, practiceId, "cap")).toMatchObject({ code: "not-started" });
  await startSection(room.kim, run.id, window);
  expect(await readSurface(room.kim, practiceId, "cap")).toMatchObject({ ok: true });
  expect(await openBench(room.kim, practiceId, room.source)).toMatchObject({
    ok: true,
    questions: null,
    run: { state: "running", liveWindowId: WINDOW, questionCount: 10, aids: { asksReading: false } },
  });
  await handIn(room.kim, practiceId, last);
  expect(await readSurface(room.kim, practiceId, "cap")).toMatchObject({ code: "handed-in" });
  await closeSitting(room.tutor, id);
  await releaseSitting(room.tutor, id);
  expect(await readSurface(room.kim, practiceId, "cap")).toMatchObject({ ok: true });
  expect(await readPieceSheet(room.kim, practiceId)).toMatchObject({ ok: true });
  expect(await writePracticeFile(room.kim, practiceId, "sections")).toMatchObject({ ok: true });
});

test("until marks are released, no answer to a learner says anything of marks, truth, seed or keys", async () => {
  const room = await openRoom();
  const id = await begunSitting(room);
  const { run, practiceId } = await runOf(id, room.kim);
  await startSection(room.kim, run.id, window);
  await saveReport(room.kim, practiceId, save(1, room.now()));
  const told: unknown[] = [await openBench(room.kim, practiceId, room.source)];
  told.push(await closeReport(room.kim, practiceId, { window: { id: WINDOW, base: 1 } }));
  told.push(await openBench(room.kim, practiceId, room.source));
  told.push(await handIn(room.kim, practiceId, { window: { id: WINDOW, base: 1 } }));
  await closeSitting(room.tutor, id);
  told.push(
    await readMarkSheet(room.kim, practiceId),
    await readClock(room.kim, run.id),
    await listOwnSittings(room.kim),
    await enterSitting(room.kim, id, room.source),
    await readOwnCourse(room.kim, "class", "paper"),
    await saveReport(room.kim, practiceId, save(2, room.now())),
  );
  const text = JSON.stringify(told);
  for (const secret of ["secret-seed", "markThousandths", '"key"', "explanation", "cap-1", "root-1"]) {
    expect(text.includes(secret), secret).toBe(false);
  }
  // and that these words would be found: the tutor is told
  expect(JSON.stringify(await readMarkSheet(room.tutor, practiceId))).toContain("cap-1");
});

test("pieces are ordered for a sitting as its paper asks for them, and nobody else gets one", async () => {
  const room = await openRoom();
  await plannedSitting(room);
  expect(await makeAll()).toBe(0);
  const sittings = await readSittingsDesk(room.tutor);
  expect(sittings).toMatchObject({ ok: true, sittings: [{ learners: 2, sections: 4, closed: 0, state: "planned" }] });
});
