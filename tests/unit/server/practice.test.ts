import { describe, expect, test } from "vitest";
import { followProgress } from "@/app/_server/use-cases/follow-progress";
import { openBench } from "@/app/_server/use-cases/open-bench";
import { readSurface } from "@/app/_server/use-cases/read-surface";
import { readToday } from "@/app/_server/use-cases/read-today";
import { renewSpecimen } from "@/app/_server/use-cases/renew-specimen";
import { startPractice } from "@/app/_server/use-cases/start-practice";
import { api1104, iso5817 } from "@/lib/criteria";
import { MAX_OPEN_PRACTICES } from "@/lib/practice";
import { readPractice } from "@/prisma/stores/practices";
import { failSpecimen, finishSpecimen, takeOrder } from "@/prisma/stores/specimens";
import { updateWorkshop } from "@/prisma/stores/workshops";
import { freshDatabaseForEachTest } from "../../support/database";
import { makeSpecimen, NOW, openPractice, openTestWorkshop, SURFACES, TRUTH, testSource } from "./workshop";

freshDatabaseForEachTest();

describe("start a practice", () => {
  test("takes the plate that is ready", async () => {
    const { learner } = await openTestWorkshop();
    await makeSpecimen("on-the-shelf", false);
    const started = await startPractice(learner, {}, testSource());
    if (!started.ok) throw new Error(started.code);
    expect(await readPractice(started.id)).toMatchObject({ specimenId: "on-the-shelf", sequence: 0, state: "open" });
  });

  test("asks for a plate where none is ready, and follows it until it is made", async () => {
    const { learner } = await openTestWorkshop();
    const source = testSource();
    const started = await startPractice(learner, {}, source);
    if (!started.ok) throw new Error(started.code);
    expect(await followProgress(learner, started.id, source)).toMatchObject({ plate: { state: "making" } });
    expect(await openBench(learner, started.id, source)).toMatchObject({ ok: true, joint: null });
    expect(await readSurface(learner, started.id, "cap")).toEqual({ ok: false, code: "specimen-not-made" });
    const order = await takeOrder();
    if (!order) throw new Error("nothing was ordered");
    await finishSpecimen(order.id, {
      truth: TRUTH,
      generatorVersion: "test-generator",
      surfaces: SURFACES,
      ends: null,
    });
    expect(await followProgress(learner, started.id, source)).toMatchObject({ plate: { state: "made" } });
    const opened = await openBench(learner, started.id, source);
    // what a drawing says, and not a word more of the truth
    const { kind, process, position, thickness } = TRUTH.joint;
    expect(opened).toMatchObject({ ok: true, joint: { kind, process, position, thickness } });
    expect(opened.ok && Object.keys(opened).sort()).toEqual(["joint", "ok", "plate", "practice", "questions", "run"]);
    expect(opened.ok && opened.joint && Object.keys(opened.joint)).toEqual([
      "kind",
      "process",
      "position",
      "thickness",
    ]);
  });

  test("goes by the workshop's pass marks unless others are given", async () => {
    const { learner } = await openTestWorkshop();
    await updateWorkshop({ name: "Test shop", allowsOwnAccounts: true, passMarks: { plate: 65.5, fillet: 72 } });
    const source = testSource();
    const passMarkAfter = async (input: object) => {
      const started = await startPractice(learner, input, source);
      return started.ok ? (await readPractice(started.id))?.passMark : started.code;
    };
    expect(await passMarkAfter({})).toBe(65.5);
    expect(await passMarkAfter({ passMark: 81 })).toBe(81);
    expect(await passMarkAfter({ section: "fillet" })).toBe(72);
  });

  test.each([
    [{ passMark: 0 }, { ok: true }],
    [{ passMark: 100 }, { ok: true }],
    [{ passMark: 101 }, { code: "invalid-input", problem: { path: "passMark", wanted: "at most 100" } }],
    [{ passMark: -1 }, { code: "invalid-input", problem: { path: "passMark", wanted: "at least 0" } }],
    [{ passMark: "70" }, { code: "invalid-input", problem: { path: "passMark", wanted: "a number" } }],
    [{ section: "fillet", passMark: 50 }, { ok: true }],
    [{ section: "cap" }, { code: "invalid-input", problem: { path: "section", wanted: "one of plate, fillet" } }],
    [{ passMark: 69.95 }, { code: "invalid-input", problem: { path: "passMark" } }],
    [{ passMarks: { cap: 70 } }, { code: "invalid-input", problem: { wanted: "no field named passMarks" } }],
  ])("with %j answers %j", async (input, answer) => {
    const { learner } = await openTestWorkshop();
    expect(await startPractice(learner, input, testSource())).toMatchObject(answer);
  });

  test("keeps the criteria whole and the book with it, ISO 5817 level C and an open table unless others are asked for", async () => {
    const { learner } = await openTestWorkshop();
    const source = testSource();
    const kept = async (input: object, minutes = 0) => {
      const clock = () => new Date(NOW.getTime() + 60_000 * minutes);
      const started = await startPractice({ ...learner, clock }, input, source);
      return started.ok ? readPractice(started.id) : null;
    };
    expect(await kept({})).toMatchObject({ criteria: iso5817({ level: "C", edition: 2014 }), book: "open" });
    expect(await kept({ criteriaId: "api-1104", book: "closed" }, 1)).toMatchObject({
      criteria: api1104(),
      book: "closed",
    });
    // what was chosen last stands there the next time
    expect(await readToday(learner)).toMatchObject({
      criteria: { choice: { criteriaId: "api-1104", book: "closed" } },
    });
  });

  test.each([
    [{ criteriaId: "iso-5817-1066-z" }, { path: "criteriaId", wanted: /id of a built-in or an in-house/ }],
    [{ book: "half open" }, { path: "book", wanted: /one of open, closed/ }],
  ])("refuses %j and names the field", async (input, { path, wanted }) => {
    const { learner } = await openTestWorkshop();
    expect(await startPractice(learner, input, testSource())).toMatchObject({
      ok: false,
      code: "invalid-input",
      problem: { path, wanted: expect.stringMatching(wanted) },
    });
  });

  test("keeps the number of unfinished plates of one person within bounds", async () => {
    const { learner, other } = await openTestWorkshop();
    const source = testSource();
    for (let i = 0; i < MAX_OPEN_PRACTICES; i++)
      expect(await startPractice(learner, {}, source)).toMatchObject({ ok: true });
    expect(await startPractice(learner, {}, source)).toEqual({ ok: false, code: "too-many-open" });
    expect(await startPractice(other, {}, source)).toMatchObject({ ok: true });
  });
});

describe("a plate that could not be made", () => {
  test("is replaced, and only then", async () => {
    const { learner } = await openTestWorkshop();
    const source = testSource();
    const started = await startPractice(learner, {}, source);
    if (!started.ok) throw new Error(started.code);
    expect(await renewSpecimen(learner, started.id, source)).toEqual({ ok: false, code: "specimen-not-failed" });
    await failSpecimen("asked-0");
    expect(await followProgress(learner, started.id, source)).toMatchObject({ plate: { state: "failed" } });
    expect(await renewSpecimen(learner, started.id, source)).toEqual({ ok: true });
    expect(await readPractice(started.id)).toMatchObject({ specimenId: "asked-1" });
  });
});

describe("the surfaces", () => {
  test("come as they are stored, to the owner only while the practice is open", async () => {
    const { learner, other, tutor } = await openTestWorkshop();
    const id = await openPractice(learner);
    expect(await readSurface(learner, id, "cap")).toMatchObject({ ok: true, bytes: SURFACES.cap });
    expect(await readSurface(learner, id, "root")).toMatchObject({ ok: true, bytes: SURFACES.root });
    expect(await readSurface(learner, id, "side")).toEqual({ ok: false, code: "no-such-surface" });
    for (const caller of [other, tutor]) {
      expect(await readSurface(caller, id, "cap")).toEqual(await readSurface(caller, "no-such-id", "cap"));
    }
  });
});

test("what the bench is told holds neither truth nor seed", async () => {
  const { learner } = await openTestWorkshop();
  const id = await openPractice(learner);
  const told = JSON.stringify(await followProgress(learner, id, testSource()));
  expect(told).toContain(id);
  for (const secret of [
    "surface-pore",
    "root-concavity",
    "cap-1",
    "secret-seed",
    "test-generator",
    "truth",
    "dimensions",
  ]) {
    expect(told).not.toContain(secret);
  }
});
