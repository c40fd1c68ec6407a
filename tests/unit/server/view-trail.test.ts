import { describe, expect, test } from "vitest";
import { pauseRun, resumeRun } from "@/app/_server/use-cases/govern-run";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { keepViewTrail } from "@/app/_server/use-cases/keep-view-trail";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import type { Viewport } from "@/lib/bench";
import { merged, NO_TRAIL, noteLook, packTrail, type Trail, unpackTrail } from "@/lib/trail";
import { readPractice } from "@/prisma/stores/practices";
import { readViewTrail } from "@/prisma/stores/view-trails";
import { freshDatabaseForEachTest } from "../../support/database";
import { begunSitting, must, openRoom, runOf, started } from "./sitting-room";
import { openPractice, openTestWorkshop } from "./workshop";

freshDatabaseForEachTest();

const CAP: Viewport = { aspect: "cap", width: 900, height: 500, x: 100, up: 0, scale: 9 };
const looked = (seconds: number, view: Viewport = CAP): Trail =>
  noteLook(NO_TRAIL, { view, torch: { azimuth: 90, elevation: 14 }, lens: null }, 2 * seconds);
const sending = (windowId: string, number: number, trail: Trail) => ({ windowId, number, trail: packTrail(trail) });

describe("windows of one practice", () => {
  test("each counts once, however often and in whatever order its sendings come", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    const sent = [
      sending("firstwindow", 1, looked(2)),
      sending("firstwindow", 2, looked(7)),
      sending("secondwindow", 1, looked(4, { ...CAP, aspect: "root" })),
    ];
    for (const at of [1, 0, 2, 1, 2, 0]) expect(await keepViewTrail(learner, id, sent[at])).toMatchObject({ ok: true });
    expect(await readViewTrail(id)).toEqual(merged(looked(7), looked(4, { ...CAP, aspect: "root" })));
  });

  test("many that arrive at once leave the newest of every window", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    const all = [3, 1, 4, 2].flatMap((number) =>
      ["firstwindow", "secondwindow"].map((windowId) => sending(windowId, number, looked(number))),
    );
    await Promise.all(all.map((one) => keepViewTrail(learner, id, one)));
    expect(await readViewTrail(id)).toEqual(looked(8));
  });

  test("there are so many and no more, and those known go on", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    for (let at = 0; at < 100; at++) await keepViewTrail(learner, id, sending(`window${at + 100}`, 1, looked(1)));
    expect(await keepViewTrail(learner, id, sending("onetoomany", 1, looked(1)))).toEqual({
      ok: false,
      code: "too-many-windows",
    });
    expect(await keepViewTrail(learner, id, sending("window150", 2, looked(3)))).toMatchObject({ ok: true });
    expect(await readViewTrail(id)).toEqual(looked(102));
  });
});

test("it touches neither the report nor its number, and the mark sheet brings it to learner and tutor", async () => {
  const { learner, tutor } = await openTestWorkshop();
  const id = await openPractice(learner);
  const before = await readPractice(id);
  await keepViewTrail(learner, id, sending("firstwindow", 1, looked(5)));
  expect(await readPractice(id)).toEqual(before);
  await handIn(learner, id, undefined);
  for (const caller of [learner, tutor]) {
    const read = await readMarkSheet(caller, id);
    if (!read.ok || !read.trail) throw new Error("there is no trail");
    expect(unpackTrail(read.trail)).toEqual(looked(5));
  }
});

test("a piece that was handed in takes none, and one without any says so", async () => {
  const { learner } = await openTestWorkshop();
  const id = await openPractice(learner);
  await handIn(learner, id, undefined);
  const late = await keepViewTrail(learner, id, sending("firstwindow", 1, looked(5)));
  expect(late).toEqual({ ok: false, code: "already-handed-in" });
  expect(await readMarkSheet(learner, id)).toMatchObject({ ok: true, trail: null });
});

test("in a sitting it is taken while the section is open, and neither before its start nor after its end", async () => {
  const room = await openRoom();
  const sitting = await begunSitting(room);
  const { practiceId } = await runOf(sitting, room.kim);
  const send = (number: number) => keepViewTrail(room.kim, practiceId, sending("firstwindow", number, looked(number)));
  expect(await send(1)).toMatchObject({ ok: false, code: "not-started" });
  const { runId } = await started(sitting, room.kim);
  expect(await send(2)).toMatchObject({ ok: true });
  await must(pauseRun(room.tutor, runId));
  // what was seen before the pause
  expect(await send(3)).toMatchObject({ ok: true });
  await must(resumeRun(room.tutor, runId));
  room.at("16:00");
  expect(await send(4)).toMatchObject({ ok: false, code: "time-is-up" });
  expect(await readViewTrail(practiceId)).toEqual(looked(3));
});

test.each([
  [{ windowId: "x" }, "windowId"],
  [{ number: 0 }, "number"],
  [{ trail: { version: 2, views: {} } }, "trail.version"],
  [{ trail: { version: 1, views: { cap: [1, 5] } } }, "trail.views.cap"],
  [{ trail: { version: 1, views: { cap: [0, 1799, -1, 1] } } }, "trail.views.cap[2]"],
  [{ trail: packTrail(looked(1, { ...CAP, aspect: "fillet" })) }, "trail.views.fillet"],
  [{ seed: 1 }, ""],
])("case %#: refused at its place", async (change, path) => {
  const { learner } = await openTestWorkshop();
  const id = await openPractice(learner);
  const answer = await keepViewTrail(learner, id, { ...sending("firstwindow", 1, looked(1)), ...change });
  expect(answer).toMatchObject({ ok: false, code: "invalid-input", problem: { path } });
  expect(await readViewTrail(id)).toBeNull();
});
