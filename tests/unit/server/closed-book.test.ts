import { expect, test } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { closeRun, reopenRun } from "@/app/_server/use-cases/govern-run";
import { closeSitting, pauseSitting } from "@/app/_server/use-cases/govern-sitting";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { openBench } from "@/app/_server/use-cases/open-bench";
import { readClosedBook } from "@/app/_server/use-cases/read-closed-book";
import { readInHouseCriteria } from "@/app/_server/use-cases/read-in-house-criteria";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { startPractice } from "@/app/_server/use-cases/start-practice";
import { startSection } from "@/app/_server/use-cases/start-section";
import { writeHistoryFile } from "@/app/_server/use-cases/write-history-file";
import { writePracticeFile } from "@/app/_server/use-cases/write-practice-file";
import { defaultPaper, type PaperSection } from "@/lib/sittings";
import { freshDatabaseForEachTest } from "../../support/database";
import { begunSitting, must, openRoom, type Room, runOf, started, WINDOW } from "./sitting-room";
import { CAP_ONLY, openPractice } from "./workshop";

freshDatabaseForEachTest();

const byHeart = (): readonly PaperSection[] =>
  defaultPaper().sections.map((one) => ({ ...one, aids: { ...one.aids, criteriaTable: "closed" } }));

/** Begun, with a piece for practice on the bench of each and another one handed in. */
async function roomByHeart(sections = byHeart()) {
  const room = await openRoom({ sections: [...sections] });
  for (const learner of [room.kim, room.ola]) {
    await openPractice(learner, `open-${learner.actor?.id}`);
    const done = await openPractice(learner, `done-${learner.actor?.id}`);
    await handIn(learner, done, { sequence: 1, report: CAP_ONLY });
  }
  return { room, id: await begunSitting(room) };
}

/** What every way to the table of criteria answers somebody. */
async function waysToTheBook(room: Room, caller: Caller, of = caller.actor?.id) {
  const answers = [
    await readInHouseCriteria(caller),
    await startPractice(caller, { book: "open" }, room.source),
    await openBench(caller, `open-${of}`, room.source),
    await readMarkSheet(caller, `done-${of}`),
    await writePracticeFile(caller, `done-${of}`, "sentences"),
    await writeHistoryFile(caller, `${of}`, "sentences"),
  ];
  return answers.map((answer) => (answer.ok ? "ok" : answer.code));
}

const OPEN = ["ok", "ok", "ok", "ok", "ok", "ok"];
const SHUT = OPEN.map(() => "book-closed");

test("while a section with a closed book is open nothing shows its learner any criteria; others are not touched", async () => {
  const { room, id } = await roomByHeart();
  expect(await waysToTheBook(room, room.kim), "before it is started").toEqual(OPEN);
  const { practiceId } = await started(id, room.kim);
  expect(await waysToTheBook(room, room.kim)).toEqual(SHUT);
  expect(await readClosedBook(room.kim)).toEqual({ ok: true, sittingId: id });
  expect(await waysToTheBook(room, room.ola), "who has not started").toEqual(OPEN);
  expect(await waysToTheBook(room, room.tutor, "kim")).toEqual(["ok", "ok", "no-such-practice", "ok", "ok", "ok"]);
  // the section itself goes on, a piece by heart may be taken, and what was being written is still kept
  expect(await openBench(room.kim, practiceId, room.source)).toMatchObject({ ok: true });
  expect(await startPractice(room.kim, { book: "closed" }, room.source)).toMatchObject({ ok: true });
  expect(await saveReport(room.kim, "open-kim", { sequence: 1, report: CAP_ONLY })).toMatchObject({ ok: true });
  // a pause shuts no section
  await pauseSitting(room.tutor, id);
  expect(await waysToTheBook(room, room.kim), "paused").toEqual(SHUT);
});

test("it opens again when the section is handed in, closed by a tutor, or over by the clock alone", async () => {
  const { room, id } = await roomByHeart();
  const { practiceId } = await started(id, room.kim);
  await started(id, room.ola);
  await handIn(room.kim, practiceId, { window: { id: WINDOW, base: 0 } });
  expect(await waysToTheBook(room, room.kim)).toEqual(OPEN);
  // 120 minutes from 10:00, and nobody has swept
  room.at("12:00");
  expect(await waysToTheBook(room, room.ola)).toEqual(OPEN);
  expect(await readClosedBook(room.ola)).toEqual({ ok: true, sittingId: null });
  const other = await begunSitting(room);
  // that was at 10:00
  room.at("12:10");
  await started(other, room.ola);
  expect(await waysToTheBook(room, room.ola)).toEqual(SHUT);
  await closeSitting(room.tutor, other);
  expect(await waysToTheBook(room, room.ola)).toEqual(OPEN);
});

test("with an open book nothing is shut", async () => {
  const { room, id } = await roomByHeart(defaultPaper().sections);
  await started(id, room.kim);
  expect(await waysToTheBook(room, room.kim)).toEqual(OPEN);
});

test("nobody has sections of two sittings open at once, whose books could help each other", async () => {
  const { room, id } = await roomByHeart();
  const other = await begunSitting(room);
  await started(id, room.kim);
  const { run } = await runOf(other, room.kim);
  const start = () => startSection(room.kim, run.id, { windowId: WINDOW });
  expect(await start()).toEqual({ ok: false, code: "section-elsewhere" });
  expect(await runOf(other, room.kim)).toMatchObject({ run: { state: "waiting" } });
  // others are not touched, and it opens once the first one is over, if by the clock alone
  expect(await startSection(room.ola, (await runOf(other, room.ola)).run.id, { windowId: WINDOW })).toMatchObject({
    ok: true,
  });
  // nor is one opened again that was closed before
  const again = { minutes: 10, reason: "a fire alarm" };
  await must(closeRun(room.tutor, (await runOf(other, room.ola)).run.id));
  const olas = (await runOf(id, room.ola)).run.id;
  await must(startSection(room.ola, olas, { windowId: WINDOW }));
  expect(await reopenRun(room.tutor, (await runOf(other, room.ola)).run.id, again)).toEqual({
    ok: false,
    code: "learner-elsewhere",
  });
  // kim has half as much time again
  room.at("12:59");
  expect(await start()).toEqual({ ok: false, code: "section-elsewhere" });
  room.at("13:00");
  expect(await start()).toMatchObject({ ok: true });
});

test("two sections of two sittings that are started in the same moment: one opens", async () => {
  const { room, id } = await roomByHeart();
  const other = await begunSitting(room);
  const runs = [await runOf(id, room.kim), await runOf(other, room.kim)];
  const answers = await Promise.all(runs.map(({ run }) => startSection(room.kim, run.id, { windowId: WINDOW })));
  expect(answers.map((answer) => (answer.ok ? "ok" : answer.code)).sort()).toEqual(["ok", "section-elsewhere"]);
});
