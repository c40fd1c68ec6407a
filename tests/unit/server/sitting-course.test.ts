import { expect, test } from "vitest";
import { settleSitting } from "@/app/_server/sittings/settle";
import { closeReport } from "@/app/_server/use-cases/close-report";
import { enterSitting } from "@/app/_server/use-cases/enter-sitting";
import {
  beginSitting,
  closeSitting,
  openSitting,
  releaseSitting,
  renewPieces,
} from "@/app/_server/use-cases/govern-sitting";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { openBench } from "@/app/_server/use-cases/open-bench";
import { planSitting } from "@/app/_server/use-cases/plan-sitting";
import { readBoard } from "@/app/_server/use-cases/read-board";
import { readClassCourses } from "@/app/_server/use-cases/read-class-courses";
import { readOwnCourse } from "@/app/_server/use-cases/read-own-course";
import { readToday } from "@/app/_server/use-cases/read-today";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { startSection } from "@/app/_server/use-cases/start-section";
import { builtInCriteria } from "@/lib/criteria";
import { EMPTY_REPORT, type Report } from "@/lib/report";
import { shownMark } from "@/lib/results";
import { defaultPaper } from "@/lib/sittings";
import { enrol, leaveClass } from "@/prisma/stores/classes";
import { createPaper } from "@/prisma/stores/papers";
import { readPractice } from "@/prisma/stores/practices";
import { readSitting } from "@/prisma/stores/sittings";
import { failSpecimen, putBackInterruptedOrders, takeOrder } from "@/prisma/stores/specimens";
import { freshDatabaseForEachTest } from "../../support/database";
import {
  begunSitting,
  makeAll,
  moment,
  must,
  openRoom,
  plannedSitting,
  type Room,
  runOf,
  save,
  started,
  WINDOW,
} from "./sitting-room";
import { CAP_ONLY } from "./workshop";

freshDatabaseForEachTest();

const only = (weights: object) =>
  defaultPaper().sections.map((one) => ({ ...one, weights: { ...one.weights, ...weights } }));
/** Nothing but indications count: with the truth of the test workshop, one found of two is half of the marks or so. */
const indicationsOnly = only({ dimensions: 0, sentences: 0, questions: 0 });
/** Everything that there is on the plate. */
const ALL: Report = {
  ...CAP_ONLY,
  calls: [
    ...CAP_ONLY.calls,
    { id: "b", face: "root", type: "root-concavity", start: 50, end: 80, across: 0, size: 0.8, sentence: null },
  ],
};

async function sit(room: Room, id: string, learner: Room["kim"], report: Report, isBorderline = false) {
  const { run, practiceId } = await runOf(id, learner, "plate", isBorderline);
  await must(startSection(learner, run.id, { windowId: WINDOW }));
  await must(saveReport(learner, practiceId, save(1, room.now(), WINDOW, report)));
  await must(handIn(learner, practiceId, { window: { id: WINDOW, base: 1 } }));
  const [mark] = (await readPractice(practiceId))?.marks ?? [];
  return shownMark(mark.markThousandths);
}

test("whoever fails a section sits it again, alone, on a fresh piece, in a sitting planned for what is due", async () => {
  const room = await openRoom({ sections: indicationsOnly.slice(0, 1) });
  const first = await begunSitting(room);
  expect(await sit(room, first, room.kim, ALL)).toBe(100);
  expect(await sit(room, first, room.ola, EMPTY_REPORT)).toBe(0);
  // not released: a learner knows nothing, the tutor does
  expect(await readOwnCourse(room.ola, "class", "paper")).toMatchObject({ next: { due: [{ why: "first" }] } });
  await must(closeSitting(room.tutor, first));
  await must(releaseSitting(room.tutor, first));
  expect(await readOwnCourse(room.ola, "class", "paper")).toMatchObject({ next: { due: [{ why: "re-sit" }] } });
  const { papers } = await must(readClassCourses(room.tutor, "class"));
  expect(papers.map(({ paperId }) => paperId)).toEqual(["paper"]);
  expect(papers[0].members.map(({ person, next }) => [person.id, next.isPassed])).toEqual([
    ["kim", true],
    ["ola", false],
  ]);
  const again = await plannedSitting(room, "due");
  const stored = await readSitting(again);
  expect(stored?.runs.map(({ run }) => [run.userId, run.section])).toEqual([["ola", "plate"]]);
  expect(stored?.runs[0].specimenId).not.toBe((await runOf(first, room.ola)).specimenId);
  // it is not for the whole class
  expect(await enterSitting(room.kim, again, room.source)).toEqual({ ok: false, code: "not-expected" });
  await must(openSitting(room.tutor, again));
  await must(beginSitting(room.tutor, again));
  room.at("10:05");
  expect(await sit(room, again, room.ola, ALL)).toBe(100);
  await must(closeSitting(room.tutor, again));
  await must(releaseSitting(room.tutor, again));
  const done = await must(readOwnCourse(room.ola, "class", "paper"));
  expect(done.course).toMatchObject({ isPassed: true, round: 1 });
  expect(done.course.attempts.map(({ kind, outcome }) => [kind, outcome])).toEqual([
    ["first", "failed"],
    ["re-sit", "passed"],
  ]);
  const input = { classId: "class", paperId: "paper", plannedAt: "2026-03-02T10:00:00Z", who: "due" };
  expect(await planSitting(room.tutor, input, room.source)).toEqual({ ok: false, code: "nobody-expected" });
});

/** A room with a paper whose pass mark is a little above the marks for half of what is there. */
async function roomWithNearPaper() {
  // one of two found earns 40 to 60 marks, so a pass mark a little above is missed by little
  const room = await openRoom({ sections: indicationsOnly });
  const half = await sit(room, await begunSitting(room), room.ola, CAP_ONLY);
  expect(half).toBeGreaterThan(20);
  const passMark = Math.round((half + 5) * 10) / 10;
  const criteria = builtInCriteria("iso-5817-2014-c");
  if (!criteria) throw new Error("no criteria");
  await createPaper({
    id: "near",
    versionId: "near-1",
    ownerId: "tutor",
    createdAt: room.now(),
    paper: {
      ...defaultPaper(),
      borderlinePiece: true,
      sections: indicationsOnly.slice(0, 1).map((one) => ({ ...one, passMark })),
    },
    criteria: { plate: criteria },
  });
  return { room, half };
}

/** Begins a sitting of that paper now, for the class or for some of it. */
async function beginNear(room: Room, learnerIds?: readonly string[]): Promise<string> {
  const plan = { classId: "class", paperId: "near", plannedAt: "2026-03-02T11:00:00Z", who: "class", learnerIds };
  const { id } = await must(planSitting(room.tutor, plan, room.source));
  await makeAll();
  await must(openSitting(room.tutor, id));
  await must(beginSitting(room.tutor, id));
  return id;
}

test("just short of the pass mark: one parallel piece at once, and the mean of both decides", async () => {
  const { room, half } = await roomWithNearPaper();
  const id = await beginNear(room);
  expect(await sit(room, id, room.ola, CAP_ONLY)).toBe(half);
  expect(await sit(room, id, room.kim, EMPTY_REPORT)).toBe(0);
  await Promise.all([settleSitting(id, room.now(), room.source), settleSitting(id, room.now(), room.source)]);
  await settleSitting(id, room.now(), room.source);
  const stored = await readSitting(id);
  expect(stored?.runs.filter(({ run }) => run.isBorderline).map(({ run }) => run.userId)).toEqual(["ola"]);
  const course = async () => {
    const { papers } = await must(readClassCourses(room.tutor, "class"));
    const near = papers.find(({ paperId }) => paperId === "near");
    return { attempts: near?.members[1].rounds.flatMap(({ attempts }) => attempts) ?? [] };
  };
  expect((await course()).attempts.map(({ outcome }) => outcome)).toEqual(["undecided"]);
  await makeAll();
  room.at("11:30");
  expect(await sit(room, id, room.ola, ALL, true)).toBe(100);
  expect((await course()).attempts.map(({ kind, outcome, decidedOn }) => [kind, outcome, decidedOn])).toEqual([
    ["first", null, null],
    ["borderline", "passed", expect.closeTo((half + 100) / 2, 0)],
  ]);
});

test("whoever's time ends last is offered the parallel piece as well: the sitting waits for the marks", async () => {
  const { room, half } = await roomWithNearPaper();
  const id = await beginNear(room, ["ola"]);
  const { practiceId } = await started(id, room.ola);
  await must(saveReport(room.ola, practiceId, save(1, room.now(), WINDOW, CAP_ONLY)));
  room.at("12:00:01");
  await settleSitting(id, room.now(), room.source);
  expect((await readPractice(practiceId))?.marks).toEqual([]);
  room.at("12:00:11");
  await settleSitting(id, room.now(), room.source);
  const [mark] = (await readPractice(practiceId))?.marks ?? [];
  expect(shownMark(mark.markThousandths)).toBe(half);
  const stored = await readSitting(id);
  expect(stored?.sitting.state).toBe("running");
  // runs come in no order
  const states = stored?.runs.map(({ run }) => `${run.isBorderline ? "parallel piece" : "first"} ${run.state}`);
  expect(states?.sort()).toEqual(["first expired", "parallel piece waiting"]);
});

test("one piece for all where the paper says so; who joins late sits the same", async () => {
  const room = await openRoom({ forms: "same" });
  await leaveClass("class", "ola", room.now());
  const id = await plannedSitting(room);
  expect(new Set((await readSitting(id))?.runs.map(({ specimenId }) => specimenId)).size).toBe(2);
  await enrol({ groupId: "class", accounts: [], learnerIds: ["ola"] }, room.now());
  await must(openSitting(room.tutor, id));
  await must(enterSitting(room.ola, id, room.source));
  expect((await runOf(id, room.ola)).specimenId).toBe((await runOf(id, room.kim)).specimenId);
});

test("who joins late gets pieces made while they wait, and the clock stands until one is there", async () => {
  const room = await openRoom();
  await leaveClass("class", "ola", room.now());
  const id = await plannedSitting(room);
  await enrol({ groupId: "class", accounts: [], learnerIds: ["ola"] }, room.now());
  // before it is open nothing is made for them
  expect(await enterSitting(room.ola, id, room.source)).toMatchObject({ ok: true, sitting: { sections: [] } });
  await must(openSitting(room.tutor, id));
  await must(beginSitting(room.tutor, id));
  const entered = await Promise.all([1, 2].map(() => enterSitting(room.ola, id, room.source)));
  expect(entered.map(({ ok }) => ok)).toEqual([true, true]);
  const { run, practiceId } = await runOf(id, room.ola);
  expect(await startSection(room.ola, run.id, { windowId: WINDOW })).toEqual({ ok: false, code: "piece-not-made" });
  expect(await readBoard(room.tutor, id)).toMatchObject({ board: { pieces: { ready: 2 } } });
  // somebody waits: it comes before whatever is made ahead
  expect(await takeOrder({ isAwaitedOnly: true })).toMatchObject({ asked: { blueprint: expect.any(String) } });
  await putBackInterruptedOrders();
  await makeAll();
  room.at("10:30");
  const answer = await must(startSection(room.ola, run.id, { windowId: WINDOW }));
  expect(answer.run.clock.deadline).toBe("2026-03-02T12:30:00.000Z");
  // sections of sittings are no pieces on one's own bench
  expect(await readToday(room.ola)).toMatchObject({ ok: true, open: [], handedIn: [], canStart: true });
  expect((await readPractice(practiceId))?.startedAt).toEqual(moment("10:30"));
});

test("a piece that could not be made is told on the board and ordered anew", async () => {
  const room = await openRoom();
  const id = await plannedSitting(room);
  const { specimenId } = await runOf(id, room.kim);
  await failSpecimen(specimenId);
  expect(await readBoard(room.tutor, id)).toMatchObject({ board: { pieces: { all: 4, ready: 3, failed: 1 } } });
  expect(await renewPieces(room.tutor, id, room.source)).toEqual({ ok: true, renewed: 1 });
  expect(await renewPieces(room.tutor, id, room.source)).toEqual({ ok: true, renewed: 0 });
  await makeAll();
  expect(await readBoard(room.tutor, id)).toMatchObject({ board: { pieces: { ready: 4, failed: 0 } } });
});

test("a piece for all that could not be made is ordered anew once, whoever comes in, and all go on sitting the same", async () => {
  const room = await openRoom({ forms: "same" });
  const id = await begunSitting(room);
  const before = (await runOf(id, room.kim)).specimenId;
  await failSpecimen(before);
  await Promise.all([room.kim, room.ola, room.kim].map((learner) => must(enterSitting(learner, id, room.source))));
  const { specimenId } = await runOf(id, room.kim);
  expect(specimenId).not.toBe(before);
  expect((await runOf(id, room.ola)).specimenId).toBe(specimenId);
  await must(enterSitting(room.ola, id, room.source));
  expect((await runOf(id, room.ola)).specimenId).toBe(specimenId);
  expect((await runOf(id, room.kim, "fillet")).specimenId).toBe((await runOf(id, room.ola, "fillet")).specimenId);
});

test("the report is closed, then as many questions are put as the paper says, and stay the same", async () => {
  const sections = defaultPaper().sections.map((one) => ({ ...one, questionCount: 3 }));
  const room = await openRoom({ sections });
  const id = await begunSitting(room);
  const { practiceId } = await started(id, room.ola);
  const input = save(1, room.now());
  const closed = await must(closeReport(room.ola, practiceId, input));
  expect(closed.questions).toHaveLength(3);
  expect(await closeReport(room.ola, practiceId, input)).toMatchObject({ ok: true, questions: closed.questions });
  expect(await openBench(room.ola, practiceId, room.source)).toMatchObject({ questions: closed.questions });
  expect(await saveReport(room.ola, practiceId, save(2, room.now(), WINDOW, ALL))).toMatchObject({
    code: "report-closed",
  });
  const [{ id: q }] = closed.questions;
  const answered = { ...CAP_ONLY, answers: { [q]: 2 } };
  await must(saveReport(room.ola, practiceId, save(2, room.now(), WINDOW, answered)));
  await must(handIn(room.ola, practiceId, { window: { id: WINDOW, base: 2 } }));
  expect((await readPractice(practiceId))?.report.answers).toEqual({ [q]: 2 });
});

test("a plan that cannot be is told by field", async () => {
  const room = await openRoom();
  const plan = (changes: object) =>
    planSitting(
      room.tutor,
      { classId: "class", paperId: "paper", plannedAt: "2026-03-02T10:00:00Z", who: "class", ...changes },
      room.source,
    );
  expect(await plan({ plannedAt: "tomorrow" })).toMatchObject({
    fields: { plannedAt: expect.stringContaining("zone") },
  });
  expect(await plan({ who: "some" })).toMatchObject({ fields: { who: "who: class, or due" } });
  expect(await plan({ learnerIds: ["stranger"] })).toMatchObject({
    fields: { learnerIds: expect.stringContaining("stranger") },
  });
  expect(await plan({ paperId: "none" })).toEqual({ ok: false, code: "no-such-paper" });
  expect(await plan({ learnerIds: ["ola"] })).toMatchObject({ ok: true });
});
