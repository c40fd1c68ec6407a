import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { voidRun } from "@/app/_server/use-cases/govern-run";
import { beginSitting, closeSitting, openSitting, releaseSitting } from "@/app/_server/use-cases/govern-sitting";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { readClassResults } from "@/app/_server/use-cases/read-class-results";
import { readLearner } from "@/app/_server/use-cases/read-learner";
import { writeClassFile } from "@/app/_server/use-cases/write-class-file";
import { writeHistoryFile } from "@/app/_server/use-cases/write-history-file";
import { writePracticeFile } from "@/app/_server/use-cases/write-practice-file";
import { enrol } from "@/prisma/stores/classes";
import { freshDatabaseForEachTest } from "../../support/database";
import { begunSitting, must, openRoom, plannedSitting, type Room, runOf, save, started } from "./sitting-room";

freshDatabaseForEachTest();

type Row = Readonly<Record<string, string>>;

async function rowsOf(file: Promise<{ readonly ok: boolean; readonly text?: string }>): Promise<readonly Row[]> {
  const { text } = await file;
  if (text === undefined) throw new Error("refused");
  return Papa.parse<Row>(text.slice(1), { header: true, skipEmptyLines: true }).data;
}

/** What a row says it was handed in for. */
const work = (row: Row) => [row.Work, row.Paper, row.Round, row.Attempt, row.Counts].join("|");

const PAPER = "Butt plate and fillet weld";
const ofClass = (room: Room) => rowsOf(writeClassFile(room.tutor, "class", "sections"));
const ofKim = (caller: Caller) => rowsOf(writeHistoryFile(caller, "kim", "sections"));

/** Kim hands in the plate at 10:20 of a sitting that begins at 10:00. */
async function sat(room: Room) {
  const id = await begunSitting(room);
  const { runId, practiceId } = await started(id, room.kim);
  room.at("10:20");
  await must(handIn(room.kim, practiceId, save(1, room.now())));
  return { id, runId, practiceId };
}

describe("a section that was sat", () => {
  test("stands in lists and files for tutors from closing on, and for its learner from the release on", async () => {
    const room = await openRoom();
    const { id, practiceId } = await sat(room);
    expect(await ofClass(room)).toEqual([]);
    expect((await must(readLearner(room.tutor, "kim"))).sat).toEqual([]);
    expect((await rowsOf(writePracticeFile(room.tutor, practiceId, "sections"))).map(work)).toEqual([
      `sitting|${PAPER}|||yes`,
    ]);

    await must(closeSitting(room.tutor, id));
    expect((await ofClass(room)).map(work)).toEqual([`sitting|${PAPER}|1|first time|yes`]);
    expect((await ofKim(room.tutor)).map(({ Piece }) => Piece)).toEqual([practiceId]);
    expect((await must(readLearner(room.tutor, "kim"))).sat).toMatchObject([{ practiceId, isVoid: false }]);
    expect((await must(readClassResults(room.tutor, "class"))).results).toMatchObject([
      { practiceId, learnerId: "kim", section: "plate", passMark: 70, isPassed: false },
    ]);
    expect(await ofKim(room.kim)).toEqual([]);

    await must(releaseSitting(room.tutor, id));
    expect((await ofKim(room.kim)).map(work)).toEqual([`sitting|${PAPER}|1|first time|yes`]);
    expect((await rowsOf(writePracticeFile(room.kim, practiceId, "questions"))).map(work)[0]).toBe(
      `sitting|${PAPER}|1|first time|yes`,
    );
  });

  test("is marked as void and does not count where it was made void; what follows is the first attempt again", async () => {
    const room = await openRoom();
    const { id, runId } = await sat(room);
    await must(voidRun(room.tutor, runId, { reason: "the light failed" }));
    await must(closeSitting(room.tutor, id));
    room.at("11:00");
    const second = await plannedSitting(room, "due");
    await must(openSitting(room.tutor, second));
    await must(beginSitting(room.tutor, second));
    const again = await started(second, room.kim);
    room.at("11:05");
    await must(handIn(room.kim, again.practiceId, save(1, room.now())));
    await must(closeSitting(room.tutor, second));
    expect((await ofClass(room)).map(work).sort()).toEqual([
      `sitting|${PAPER}|1|first time|yes`,
      `sitting|${PAPER}||void, does not count|no`,
    ]);
  });

  test("is told as a re-sit where it repeats a failed one", async () => {
    const room = await openRoom();
    const { id } = await sat(room);
    await must(closeSitting(room.tutor, id));
    room.at("11:00");
    const second = await plannedSitting(room, "due");
    await must(openSitting(room.tutor, second));
    await must(beginSitting(room.tutor, second));
    const again = await started(second, room.kim);
    room.at("11:05");
    await must(handIn(room.kim, again.practiceId, save(1, room.now())));
    await must(closeSitting(room.tutor, second));
    expect((await ofKim(room.tutor)).map(work)).toEqual([
      `sitting|${PAPER}|1|re-sit|yes`,
      `sitting|${PAPER}|1|first time|yes`,
    ]);
  });

  test("is nothing for a tutor of another class, also where the learner is in it", async () => {
    const room = await openRoom();
    const { id } = await sat(room);
    await must(closeSitting(room.tutor, id));
    await enrol({ groupId: "other-class", accounts: [], learnerIds: ["kim"] }, room.now());
    expect((await must(readLearner(room.stranger, "kim"))).sat).toEqual([]);
    expect(await ofKim(room.stranger)).toEqual([]);
    expect(await rowsOf(writeClassFile(room.stranger, "other-class", "sections"))).toEqual([]);
    expect((await runOf(id, room.kim)).isMarked).toBe(true);
  });
});
