import { gunzipSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { drillStockMaterial } from "@/app/_server/eye/known-material";
import { answerEyeTask } from "@/app/_server/use-cases/answer-eye-task";
import { beginEyeRound } from "@/app/_server/use-cases/begin-eye-round";
import { finishEyeRound } from "@/app/_server/use-cases/finish-eye-round";
import { readEyeDrills } from "@/app/_server/use-cases/read-eye-drills";
import { readOwnEyeRound } from "@/app/_server/use-cases/read-eye-round";
import { readEyeWindow } from "@/app/_server/use-cases/read-eye-window";
import { readOwnProgress } from "@/app/_server/use-cases/read-own-progress";
import { readSetDrills } from "@/app/_server/use-cases/read-set-drills";
import { setDrill, withdrawDrill } from "@/app/_server/use-cases/set-drill";
import { startPractice } from "@/app/_server/use-cases/start-practice";
import type { EyeAnswer, EyeChoice, EyeRoundView } from "@/lib/eye";
import { materialOf } from "@/lib/eye-tasks";
import { defaultPaper } from "@/lib/sittings";
import { STRIP_PER_MM, unpackTile } from "@/lib/surface";
import { database } from "@/prisma/client";
import { readEyeTask, answerEyeTask as storeAnswer } from "@/prisma/stores/eye-rounds";
import { countForDrills, finishSpecimen, orderSpecimen, takeOrder } from "@/prisma/stores/specimens";
import { freshDatabaseForEachTest } from "../../support/database";
import { storeDrillPiece } from "../../support/drill-piece";
import { strewnPiece } from "../../support/eye-material";
import { begunSitting, openRoom, started } from "./sitting-room";
import { makeSpecimen, NOW, openTestWorkshop, TRUTH, testSource } from "./workshop";

freshDatabaseForEachTest();

const SPOT: EyeChoice = { drill: "spot", naming: "four", isTimed: false };
const source = testSource("drills");

async function begun(caller: Caller, choice = SPOT, setDrillId: string | null = null): Promise<EyeRoundView> {
  const begun = await beginEyeRound(caller, choice, setDrillId, source);
  if (!begun.ok) throw new Error(begun.code);
  return viewed(caller, begun.id);
}

async function viewed(caller: Caller, id: string): Promise<EyeRoundView> {
  const read = await readOwnEyeRound(caller, id, source);
  if (!read.ok) throw new Error(read.code);
  return read.round;
}

/** The answer that is right, or that is not, by the stored truth. */
async function answerTo(id: string, isRight = true): Promise<EyeAnswer> {
  const kept = await readEyeTask(id);
  const isThere =
    kept?.task.windows[0].things.some(({ what, isTarget }) => isTarget && what === "imperfection") ?? false;
  return { kind: "spot", isThere: isThere === isRight };
}

async function answered(caller: Caller, { tasks: [task] }: EyeRoundView, isRight = true) {
  const done = await answerEyeTask(caller, task.id, await answerTo(task.id, isRight));
  if (!done.ok) throw new Error(done.code);
  return done;
}

describe("a round of a drill for the eye", () => {
  test("is drawn on the server, answered task by task, gone on with, and kept when it is done", async () => {
    const { learner } = await openTestWorkshop();
    await storeDrillPiece("piece", NOW);
    let round = await begun(learner);
    expect(round).toMatchObject({ ...SPOT, stage: "asking", marks: Array(12).fill(null), results: [] });
    expect(round.tasks.map(({ number }) => number)).toEqual([1, 2]);
    for (let n = 1; n <= 12; n++) {
      const { told, round: after } = await answered(learner, round, n !== 5);
      expect(told.isRight).toBe(n !== 5);
      if (n === 6) {
        expect(await viewed(learner, round.id), "after a reload").toEqual(after);
        expect(await readEyeDrills(learner)).toMatchObject({
          unfinished: { round: { id: round.id }, answered: 6, asked: 12 },
          rounds: [],
        });
      }
      round = after;
    }
    expect(round).toMatchObject({ stage: "done", tasks: [] });
    expect(round.marks.map((mark) => mark === true)).toEqual(Array.from({ length: 12 }, (_, n) => n !== 4));
    const read = await readEyeDrills(learner);
    expect(read).toMatchObject({ unfinished: null, rounds: [{ id: round.id, finishedAt: NOW }] });
    expect(read.ok && read.rounds[0].results.filter(({ isRight }) => isRight)).toHaveLength(11);
  });

  test("tells nothing before an answer: neither what is there nor where, nor which piece it is of", async () => {
    const { learner } = await openTestWorkshop();
    await storeDrillPiece("piece", NOW);
    for (const drill of ["spot", "name", "ends", "size", "pair", "mixed"] as const) {
      const round = await begun(learner, { ...SPOT, drill, naming: "list" });
      const sent = JSON.stringify(round);
      for (const word of ["secret-seed", "piece", "outline", "isTarget", "things", "specimen", "left", "middle"]) {
        expect(sent, drill).not.toContain(word);
      }
      for (const task of round.tasks) {
        const kept = await readEyeTask(task.id);
        const ids = kept?.task.windows.flatMap(({ things }) => things.map(({ id }) => id)) ?? [];
        for (const id of ids) expect(sent).not.toContain(`"${id}"`);
        if (task.kind === "spot" || task.kind === "name") expect(task.type).toBeNull();
      }
    }
  });

  test("takes the first answer to a task and no other", async () => {
    const { learner } = await openTestWorkshop();
    await storeDrillPiece("piece", NOW);
    const round = await begun(learner);
    const { id } = round.tasks[0];
    const [wrong, right] = [await answerTo(id, false), await answerTo(id, true)];
    const first = await answerEyeTask(learner, id, wrong);
    expect(first).toMatchObject({ ok: true, told: { isRight: false, answer: wrong, right } });
    expect(await answerEyeTask(learner, id, right)).toEqual(first);
    const [one, other] = await Promise.all(
      [true, false].map(async (isRight) => {
        const { id: next } = round.tasks[1];
        return answerEyeTask(learner, next, await answerTo(next, isRight));
      }),
    );
    expect(one.ok && other.ok && one.told).toEqual(other.ok && other.told);
    expect(await database().eyeTask.count({ where: { answeredAt: { not: null } } })).toBe(2);
  });

  test("refuses what answers another question, and says what would answer this one", async () => {
    const { learner } = await openTestWorkshop();
    await storeDrillPiece("piece", NOW);
    const { id } = (await begun(learner)).tasks[0];
    for (const [input, path] of [
      [{ kind: "size", value: 2 }, "kind"],
      [{ kind: "spot", isThere: "yes" }, "isThere"],
      [null, ""],
    ] as const) {
      expect(await answerEyeTask(learner, id, input)).toMatchObject({ code: "invalid-input", problem: { path } });
    }
    expect(await database().eyeTask.count({ where: { answeredAt: { not: null } } })).toBe(0);
  });

  test("of a burst ends with its time, and counts what was answered by then", async () => {
    const { learner } = await openTestWorkshop();
    await storeDrillPiece("piece", NOW);
    const round = await begun(learner, { ...SPOT, drill: "burst", isTimed: true });
    const spot = round.tasks.find(({ kind }) => kind === "spot");
    if (!spot) throw new Error("spotting and naming come in turn");
    await answerEyeTask(learner, spot.id, await answerTo(spot.id));
    const finished = await finishEyeRound(learner, round.id);
    expect(finished).toMatchObject({ ok: true, round: { stage: "done", results: [{ isRight: true }] } });
    const late = round.tasks.find(({ id }) => id !== spot.id);
    if (!late) throw new Error("two tasks are told ahead");
    const answer = late.kind === "spot" ? await answerTo(late.id) : ({ kind: "name", type: "overlap" } as const);
    expect(await answerEyeTask(learner, late.id, answer)).toMatchObject({ ok: true });
    expect(await database().eyeTask.count({ where: { answeredAt: { not: null } } }), "what came late").toBe(1);
    expect(await database().eyeTask.count(), "beside the two that were on the screen").toBe(3);
  });

  test("of a burst that was left is let go of after a day, but for what was answered, and altogether where nothing was", async () => {
    const { learner } = await openTestWorkshop();
    await storeDrillPiece("piece", NOW);
    const burst = await begun(learner, { ...SPOT, drill: "burst", isTimed: true });
    const empty = await begun(learner, { ...SPOT, drill: "burst", isTimed: true });
    const left = await begun(learner);
    const spot = burst.tasks.find(({ kind }) => kind === "spot");
    if (!spot) throw new Error("spotting and naming come in turn");
    await answerEyeTask(learner, spot.id, await answerTo(spot.id));
    const kept = async () => database().eyeTask.count({ where: { roundId: burst.id } });
    await begun(learner);
    expect(await kept()).toBe(40);
    const tomorrow = { ...learner, clock: () => new Date(NOW.getTime() + 25 * 3_600_000) };
    await begun(tomorrow);
    expect(await kept()).toBe(1);
    expect(await viewed(learner, left.id), "other rounds are gone on with").toMatchObject({ stage: "asking" });
    expect(await readOwnEyeRound(tomorrow, empty.id, source)).toMatchObject({ code: "no-such-eye-round" });
    expect(await viewed(tomorrow, burst.id)).toMatchObject({ stage: "done", results: [{ isRight: true }] });
    expect(await readEyeDrills(tomorrow), "it ended with its last answer").toMatchObject({
      rounds: [{ id: burst.id, finishedAt: NOW }],
    });
  });

  test("of another drill is not ended by its learner, and ends where its last answer was kept and its end was not", async () => {
    const { learner } = await openTestWorkshop();
    await storeDrillPiece("piece", NOW);
    let round = await begun(learner);
    round = (await answered(learner, round)).round;
    expect(await finishEyeRound(learner, round.id)).toMatchObject({ ok: true, round: { stage: "asking" } });
    for (let n = 2; n < 12; n++) round = (await answered(learner, round)).round;
    const last = { about: null, isRight: true, error: null };
    await storeAnswer(round.tasks[0].id, await answerTo(round.tasks[0].id), last, NOW);
    expect(await viewed(learner, round.id)).toMatchObject({ stage: "done", tasks: [] });
    expect(await readEyeDrills(learner)).toMatchObject({ unfinished: null, rounds: [{ id: round.id }] });
  });

  test("that was left is offered also after another one was done, and a set one goes on where it was left", async () => {
    const room = await openRoom();
    await storeDrillPiece("piece", room.now());
    const set = await setDrill(room.tutor, "class", { drill: "spot", types: ["surface-pore"] }, source);
    if (!set.ok) throw new Error(set.code);
    const left = await begun(room.kim, SPOT, set.id);
    await answered(room.kim, left);
    room.at("09:10");
    const burst = await begun(room.kim, { ...SPOT, drill: "burst", isTimed: true });
    expect(await readEyeDrills(room.kim), "a burst that is left has run out").toMatchObject({
      unfinished: { round: { id: left.id }, answered: 1 },
    });
    await finishEyeRound(room.kim, burst.id);
    expect(await readEyeDrills(room.kim)).toMatchObject({ unfinished: { round: { id: left.id } } });
    expect((await begun(room.kim, SPOT, set.id)).id).toBe(left.id);
    expect((await begun(room.kim)).id).not.toBe(left.id);
  });

  test("is in none of the figures of progress", async () => {
    const { learner } = await openTestWorkshop();
    await storeDrillPiece("piece", NOW);
    const before = await readOwnProgress(learner);
    await answered(learner, await begun(learner));
    expect(await readOwnProgress(learner)).toEqual(before);
  });
});

describe("what windows are cut from", () => {
  test("is known of a piece that was read once, and goes with the piece", async () => {
    await openTestWorkshop();
    for (const name of ["one", "two"]) await storeDrillPiece(name, NOW);
    const pieces = async () => [...new Set((await drillStockMaterial()).map(({ specimenId }) => specimenId))];
    expect(await drillStockMaterial()).toEqual(materialOf([strewnPiece("one"), strewnPiece("two")]));
    // nothing is read of it any more
    await database().specimen.updateMany({ where: { id: "one" }, data: { truth: { version: "unreadable" } } });
    expect(await pieces()).toEqual(["one", "two"]);
    await storeDrillPiece("more", NOW);
    expect(await pieces()).toEqual(["more", "one", "two"]);
    await database().specimen.deleteMany({ where: { id: "one" } });
    expect(await pieces()).toEqual(["more", "two"]);
  });

  test("waits for a piece, which is ordered behind everything else, and begins as soon as it is there", async () => {
    const { learner } = await openTestWorkshop();
    const round = await begun(learner);
    expect(round).toMatchObject({ stage: "waiting", marks: [], tasks: [] });
    expect(await countForDrills()).toEqual({ made: 0, coming: 1 });
    await viewed(learner, round.id);
    expect(await countForDrills(), "one is on its way").toEqual({ made: 0, coming: 1 });
    await source.orderAhead("butt", { ...defaultPaper().sections[0].piece });
    expect((await takeOrder())?.asked, "what a paper wants is made first").not.toBeNull();
    await storeDrillPiece("piece", NOW);
    expect(await viewed(learner, round.id)).toMatchObject({ stage: "asking", marks: Array(12).fill(null) });
  });

  test("is first what is ready on the shelf; nobody is given it to inspect after that", async () => {
    const { learner } = await openTestWorkshop();
    await makeSpecimen("on-the-shelf", false);
    await begun(learner);
    expect(await countForDrills()).toEqual({ made: 1, coming: 1 });
    const started = await startPractice(learner, {}, source);
    const practice = await database().practice.findFirstOrThrow();
    expect([started.ok, practice.specimenId]).not.toContain("on-the-shelf");
  });

  test("is more of the shelf where what was taken first has nothing to see on it", async () => {
    const { learner } = await openTestWorkshop();
    await orderSpecimen({ id: "clean", kind: "butt", seed: "secret-seed-of-clean", asked: null }, "drills", NOW);
    const truth = { ...TRUTH, items: [], clutter: [] };
    await finishSpecimen("clean", { truth, generatorVersion: truth.generator, surfaces: {}, ends: null });
    for (const name of ["shelf-1", "shelf-2"]) await makeSpecimen(name, false);
    await begun(learner);
    expect((await drillStockMaterial()).map(({ specimenId }) => specimenId)).toContain("shelf-1");
    expect(await countForDrills(), "no more than it needs").toEqual({ made: 2, coming: 1 });
  });

  test("is sent window by window: the metal of its place, and nothing that says what to look for", async () => {
    const { learner, other } = await openTestWorkshop();
    await storeDrillPiece("piece", NOW);
    const [task] = (await begun(learner)).tasks;
    const read = await readEyeWindow(learner, task.id, "0");
    if (!read.ok) throw new Error(read.code);
    const bytes = gunzipSync(read.bytes);
    const tile = unpackTile(bytes, STRIP_PER_MM);
    expect(tile.grid).toMatchObject({ columns: 46 * 8, rows: 32 * 8, x0: 0, y0: -16 });
    const kept = await readEyeTask(task.id);
    const at = kept?.task.windows[0].at;
    if (!at) throw new Error("no window");
    // the ridge of the piece, by where the window lies on it
    for (const y of [-8, 0, 5]) {
      const row = Math.floor((y + 16) * 8);
      const onPiece = at.middle + (at.isTurned ? -1 : 1) * (y + 1 / 16);
      expect(tile.height[row * 368 + 100]).toBeCloseTo(Math.max(0, 2 - Math.abs(onPiece) / 4), 1);
    }
    const text = Buffer.from(bytes).toString("latin1");
    for (const thing of kept.task.windows[0].things) expect(text).not.toContain(thing.name);
    expect(text).not.toContain("piece");
    expect(await readEyeWindow(learner, task.id, "1")).toMatchObject({ code: "no-such-eye-task" });
    expect(await readEyeWindow(other, task.id, "0")).toMatchObject({ code: "no-such-eye-task" });
  });
});

test("with a closed book open there is no naming help either; what was begun waits", async () => {
  const sections = defaultPaper().sections.map((one) => ({
    ...one,
    aids: { ...one.aids, criteriaTable: "closed" as const },
  }));
  const room = await openRoom({ sections });
  await storeDrillPiece("piece", room.now());
  const round = await begun(room.kim);
  const sitting = await begunSitting(room);
  await started(sitting, room.kim);
  const [task] = round.tasks;
  for (const refused of [
    await beginEyeRound(room.kim, SPOT, null, source),
    await readOwnEyeRound(room.kim, round.id, source),
    await readEyeWindow(room.kim, task.id, "0"),
    await answerEyeTask(room.kim, task.id, { kind: "spot", isThere: true }),
  ]) {
    expect(refused).toMatchObject({ ok: false, code: "book-closed" });
  }
  expect(await beginEyeRound(room.ola, SPOT, null, source)).toMatchObject({ ok: true });
});

describe("a drill that a tutor sets", () => {
  test("is its learners' until each has done it, and its tutors see who has and how", async () => {
    const room = await openRoom();
    await storeDrillPiece("piece", room.now());
    const set = await setDrill(room.tutor, "class", { drill: "spot", types: ["surface-pore"] }, source);
    expect(source.wantedForDrills.at(-1), "a piece with what it is about").toEqual(["surface-pore"]);
    if (!set.ok) throw new Error(set.code);
    const mine = await readEyeDrills(room.kim);
    expect(mine.ok && mine.set).toMatchObject([
      { id: set.id, drill: "spot", types: ["surface-pore"], className: "Monday class", setBy: "Name of tutor" },
    ]);
    let round = await begun(room.kim, { ...SPOT, drill: "size" }, set.id);
    expect(round.drill, "what is set, whatever else is chosen").toBe("spot");
    while (round.stage === "asking") round = (await answered(room.kim, round, round.tasks[0].number > 3)).round;
    const [after, others] = [await readEyeDrills(room.kim), await readEyeDrills(room.ola)];
    expect([after.ok && after.set, others.ok && others.set.length]).toEqual([[], 1]);
    expect(await readSetDrills(room.tutor, "class")).toMatchObject({
      drills: [
        {
          drill: { id: set.id },
          learners: [
            { name: "Name of kim", done: { asked: 12, right: 9 } },
            { name: "Name of ola", done: null },
          ],
        },
      ],
    });
    expect(await withdrawDrill(room.tutor, "class", set.id)).toEqual({ ok: true });
    expect(await withdrawDrill(room.tutor, "class", set.id)).toMatchObject({ code: "no-such-set-drill" });
    expect(await beginEyeRound(room.ola, SPOT, set.id, source)).toMatchObject({ code: "no-such-set-drill" });
    const kept = await readSetDrills(room.tutor, "class");
    expect(kept.ok && kept.drills[0].learners[0].done, "what was done is kept").not.toBeNull();
  });

  test("names what is wrong with it", async () => {
    const { tutor } = await openRoom();
    expect(await setDrill(tutor, "class", { drill: "juggling", types: ["rust"] }, source)).toMatchObject({
      code: "invalid-input",
      fields: { drill: expect.any(String), "types[0]": expect.any(String) },
    });
    expect(await database().setDrill.count()).toBe(0);
  });
});
