import { readFileSync } from "node:fs";
import Database from "libsql";
import { afterEach, describe, expect, test, vi } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { cleanFile } from "@/app/_server/keep-file-clean";
import { hashPassword } from "@/app/_server/passwords";
import { eraseLearner, previewErasure } from "@/app/_server/use-cases/erase-learner";
import { changeFactor, voidRun } from "@/app/_server/use-cases/govern-run";
import { closeSitting, releaseSitting } from "@/app/_server/use-cases/govern-sitting";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { keepDrillRound } from "@/app/_server/use-cases/keep-drill-round";
import { keepViewTrail } from "@/app/_server/use-cases/keep-view-trail";
import { overruleLine } from "@/app/_server/use-cases/overrule-line";
import { askForErasure, readOwnRecord, takeBackErasure } from "@/app/_server/use-cases/own-record";
import { readBoard } from "@/app/_server/use-cases/read-board";
import { readClass } from "@/app/_server/use-cases/read-class";
import { readClassCourses } from "@/app/_server/use-cases/read-class-courses";
import { readClassProgress } from "@/app/_server/use-cases/read-class-progress";
import { readClassQuestions } from "@/app/_server/use-cases/read-class-questions";
import { readClassResults } from "@/app/_server/use-cases/read-class-results";
import { readDesk } from "@/app/_server/use-cases/read-desk";
import { readRecordsDesk } from "@/app/_server/use-cases/read-records-desk";
import { readSittingsDesk } from "@/app/_server/use-cases/read-sittings-desk";
import { writeSittingFile } from "@/app/_server/use-cases/write-sitting-file";
import { NEW_LEARNER } from "@/lib/progress";
import { linesOf } from "@/lib/review";
import { database } from "@/prisma/client";
import { enrol, updateClass } from "@/prisma/stores/classes";
import { noteClean } from "@/prisma/stores/file-care";
import { storeNextPiece } from "@/prisma/stores/next-pieces";
import { createPerson } from "@/prisma/stores/people";
import { readHandedInPractice } from "@/prisma/stores/practices";
import { readLearnerTally } from "@/prisma/stores/progress";
import { orderSpecimen } from "@/prisma/stores/specimens";
import { freshDatabaseForEachTest } from "../../support/database";
import { begunSitting, must, openRoom, type Room, save, started } from "./sitting-room";
import { CAP_ONLY, openPractice } from "./workshop";

freshDatabaseForEachTest();
afterEach(() => vi.unstubAllEnvs());

/** Words that stand nowhere but where this person is meant. */
const WHO = { id: "zq9-person-zq9", name: "Ždenka Quillfeather", signInName: "zdenka.q77" };
const TRACES = [WHO.id, WHO.name, "Quillfeather", WHO.signInName];

interface Past {
  readonly room: Room;
  readonly zdenka: Caller;
  readonly sitting: string;
  readonly runId: string;
}

/** Everything that can be kept of a learner: practices, a trail, drills, two sections of a sitting, acts, notes, statements. */
async function pastOf(): Promise<Past> {
  vi.stubEnv("XAPI_ENDPOINT", "http://127.0.0.1:1/xapi");
  const room = await openRoom();
  const person = { ...WHO, role: "learner", hasOneTimeCode: false } as const;
  await createPerson({ ...person, passwordHash: await hashPassword("long enough 1") }, room.now());
  const zdenka: Caller = { actor: person, clock: room.now };
  await enrol({ groupId: "class", accounts: [], learnerIds: [WHO.id] }, room.now());
  // in capitals, of which SQLite knows those of ASCII alone
  const notes = `${WHO.name.toUpperCase()} needs the lamp; ${WHO.signInName} too. Kim does not.`;
  await updateClass("class", { name: `Monday class of ${WHO.name}`, notes });
  await database().session.create({
    data: { id: "s", token: "token-of-zq9", userId: WHO.id, expiresAt: new Date("2026-03-09"), userAgent: "browser" },
  });
  const done = await openPractice(zdenka, "done");
  const trail = { version: 1, views: {} };
  await must(keepViewTrail(zdenka, done, { windowId: "window01", number: 1, trail }));
  await must(handIn(zdenka, done, { sequence: 1, report: CAP_ONLY }));
  await openPractice(zdenka, "lies-open");
  const round = { drill: "find-largest", gauges: ["depth-gauge"], asked: 3, right: 1, medianError: 0.2, seconds: 60 };
  await must(keepDrillRound(zdenka, round));

  const sitting = await begunSitting(room);
  const plate = await started(sitting, zdenka);
  await must(changeFactor(room.tutor, sitting, WHO.id, { factor: 1.25, reason: `${WHO.name} asked for it` }));
  room.at("10:20");
  await must(handIn(zdenka, plate.practiceId, save(1, room.now())));
  const fillet = await started(sitting, zdenka, "fillet");
  await must(voidRun(room.tutor, fillet.runId, { reason: `${WHO.name} fell ill` }));
  const kim = await started(sitting, room.kim);
  await must(handIn(room.kim, kim.practiceId, save(1, room.now())));
  const filletOfKim = await started(sitting, room.kim, "fillet");
  await must(voidRun(room.tutor, filletOfKim.runId, { reason: `Disturbed by ${WHO.name}, she says` }));
  await must(closeSitting(room.tutor, sitting));
  const sheet = await readHandedInPractice(plate.practiceId);
  const line = linesOf(sheet?.sections[0].result ?? expect.fail("not marked"))[0];
  const act = { line: line.id, marks: line.worth / 1000, reason: `Right, ${WHO.name}` };
  await must(overruleLine(room.tutor, plate.runId, act));
  await must(releaseSitting(room.tutor, sitting));
  await must(askForErasure(zdenka));
  await orderSpecimen({ id: "ahead", kind: "butt", seed: "ahead", asked: null }, "ahead", room.now());
  const next = { specimenId: "ahead", userId: WHO.id, section: "plate", chosenAt: room.now(), sections: 0 } as const;
  await storeNextPiece({ ...next, learner: NEW_LEARNER }, null);
  return { room, zdenka, sitting, runId: plate.runId };
}

/** Every text of every column of every table with one of these words in it, as table and column. */
function foundIn(words: readonly string[]): string[] {
  const file = (process.env.DATABASE_URL ?? "").slice("file:".length);
  const open = new Database(file);
  const tables = open.prepare("SELECT name FROM sqlite_master WHERE type = 'table'").all() as { name: string }[];
  const found = tables.flatMap(({ name: table }) => {
    const rows = open.prepare(`SELECT * FROM "${table}"`).all() as Record<string, unknown>[];
    return rows.flatMap((row) =>
      Object.entries(row).flatMap(([column, value]) => {
        const text = Buffer.isBuffer(value) ? value.toString("latin1") : String(value);
        return words.filter((word) => text.includes(word)).map((word) => `${table}.${column}: ${word}`);
      }),
    );
  });
  open.close();
  return found;
}

/** Which of these words the files of the database have in their bytes. */
function foundInBytes(words: readonly string[]): string[] {
  const file = (process.env.DATABASE_URL ?? "").slice("file:".length);
  return ["", "-wal"].flatMap((ending) => {
    const bytes = readFileSync(file + ending);
    return words.filter((word) => bytes.includes(word)).map((word) => `${ending || "file"}: ${word}`);
  });
}

describe("erasing a learner", () => {
  test("says before what goes, leaves nothing that says who it was, in no table and not in the bytes of the file; what was done stays without who", async () => {
    const { room, sitting } = await pastOf();
    expect(await must(previewErasure(room.tutor, WHO.id))).toMatchObject({
      learner: { signInName: WHO.signInName },
      askedAt: room.now(),
      goes: {
        classes: 1,
        handedIn: 1,
        open: 1,
        sections: 2,
        beingSat: 0,
        unreleased: 0,
        otherClasses: 0,
        drillRounds: 1,
        devices: 1,
        acts: 1,
      },
      // a pore and a hollow on each of two plates; the fillet is void
      stays: { sections: 2, imperfections: 4 },
      hindrance: null,
    });
    const [listed] = (await must(readSittingsDesk(room.tutor))).sittings;
    expect(foundIn(TRACES).length).toBeGreaterThan(20);
    const { tally } = await readLearnerTally(WHO.id);
    const statements = await database().xapiStatement.count();
    const before = await must(readRecordsDesk(room.tutor));
    expect(before).toMatchObject({ requests: [{ learner: { id: WHO.id } }], ofErased: { sections: 0 } });

    room.at("12:00");
    await must(eraseLearner(room.tutor, WHO.id, { signInName: WHO.signInName }));
    expect(foundIn(TRACES)).toEqual([]);
    expect(foundIn(["done", "lies-open"])).toEqual([]);
    // the piece that was chosen for them was never shown to anybody
    expect(await database().specimen.findUnique({ where: { id: "ahead" } })).toMatchObject({ isReserved: false });
    // what was cleaned up to an earlier erasure says nothing of this one
    expect(await noteClean(new Date(room.now().getTime() - 1))).toBe(false);
    expect(await cleanFile(room.now())).toBe(true);
    expect(foundInBytes(TRACES)).toEqual([]);
    expect(await cleanFile(room.now())).toBe(false);

    const after = await must(readRecordsDesk(room.tutor));
    expect(after.whole).toEqual(before.whole);
    expect(after).toMatchObject({
      requests: [],
      erasedCount: 1,
      erasures: [{ at: room.now(), by: "Name of tutor" }],
      ofErased: { sections: 2, imperfections: 4 },
    });
    expect(after.ofErased.sections).toBe(tally.sections.plate?.pieces);
    expect(await database().xapiStatement.count()).toBeLessThan(statements);

    // what others wrote stays as far as it is not about them
    const { group } = await must(readClass(room.tutor, "class"));
    expect(group.name).toBe("Monday class of an erased learner");
    expect(group.notes).toBe("an erased learner needs the lamp; an erased learner too. Kim does not.");
    const { board } = await must(readBoard(room.tutor, sitting));
    expect(board.erased).toEqual([
      {
        sections: expect.arrayContaining([
          { section: "plate", isBorderline: false, state: "handed-in", isClosed: true },
          { section: "fillet", isBorderline: false, state: "void", isClosed: true },
        ]),
      },
    ]);
    expect(board.learners.map(({ name }) => name)).toEqual(["Name of kim", "Name of ola"]);
    expect(board.learners[0].runs.map(({ voidReason }) => voidReason)).toContain(
      "Disturbed by an erased learner, she says",
    );
    const ofThem = board.log.filter(({ details }) => details.erased === "yes");
    expect(ofThem.map(({ act }) => act)).toEqual(["change-factor", "void", "overrule"]);
    expect(ofThem.every(({ reason }) => reason === null)).toBe(true);

    // every page that they were on opens
    expect((await must(readSittingsDesk(room.tutor))).sittings).toEqual([
      { ...listed, className: "Monday class of an erased learner" },
    ]);
    await must(readDesk(room.tutor));
    await must(readClassCourses(room.tutor, "class"));
    await must(readClassProgress(room.tutor, "class"));
    expect((await must(readClassResults(room.tutor, "class"))).results.map(({ learnerId }) => learnerId)).toEqual([
      "kim",
    ]);
    expect((await must(writeSittingFile(room.tutor, sitting, "sections"))).text).toContain("Name of kim");
    expect((await must(readClassQuestions(room.tutor, "class"))).analysis.marks.count).toBe(1);
  });

  test("is refused while they sit a section, for a name that is not theirs, and for another class's learner; what fails half way changes nothing", async () => {
    const { room, zdenka } = await pastOf();
    const erase = (who: Caller, signInName = WHO.signInName) => eraseLearner(who, WHO.id, { signInName });
    expect(await erase(room.tutor, "zdenka")).toEqual({ ok: false, code: "name-differs" });
    expect(await erase(room.stranger)).toEqual({ ok: false, code: "no-such-learner" });
    expect(await erase(zdenka)).toEqual({ ok: false, code: "not-permitted" });
    const [{ id }] = await database().sectionRun.findMany({ where: { userId: WHO.id, section: "plate" } });
    await database().sectionRun.update({ where: { id }, data: { state: "paused" } });
    const kept = foundIn(TRACES);
    expect(await erase(room.tutor)).toEqual({ ok: false, code: "being-sat" });
    expect(foundIn(TRACES)).toEqual(kept);
    await database().sectionRun.update({ where: { id }, data: { state: "handedIn" } });

    // their marks may be another tutor's, who is still at them; and a sitting of anybody would be held up
    await enrol({ groupId: "other-class", accounts: [], learnerIds: [WHO.id] }, room.now());
    for (const [state, code] of [
      ["closed", "marks-unreleased"],
      ["running", "sitting-on"],
    ] as const) {
      await database().sitting.updateMany({ data: { state } });
      expect(await erase(room.tutor)).toEqual({ ok: false, code });
      expect(await must(previewErasure(room.tutor, WHO.id))).toMatchObject({
        hindrance: code,
        goes: { classes: 2, otherClasses: 1, unreleased: 1 },
      });
    }
    await database().sitting.updateMany({ data: { state: "released" } });
    await database().classMember.deleteMany({ where: { groupId: "other-class" } });
    expect(foundIn(TRACES)).toEqual(kept);

    // one that fails half way changes nothing
    await database().$executeRawUnsafe(
      `CREATE TRIGGER stop BEFORE INSERT ON "AuditEntry" WHEN NEW."act" = 'erase-learner'
       BEGIN SELECT RAISE(ABORT, 'the disk is full'); END`,
    );
    await expect(erase(room.tutor)).rejects.toThrow();
    expect(foundIn(TRACES)).toEqual(kept);
    expect(await database().pooledType.count()).toBe(0);
    await database().$executeRawUnsafe("DROP TRIGGER stop");

    // the file waits while somebody is at work
    await must(erase(room.tutor, ` ${WHO.signInName.toUpperCase()} `));
    const [sitting] = await database().sitting.findMany();
    await database().sitting.update({ where: { id: sitting.id }, data: { state: "running" } });
    expect(await cleanFile(room.now())).toBe(false);
    expect((await must(readRecordsDesk(room.tutor))).isFileDirty).toBe(true);
  });
});

test("a learner asks to be erased, sees that they did, and takes it back", async () => {
  const room = await openRoom();
  await must(askForErasure(room.kim));
  expect(await must(readOwnRecord(room.kim))).toMatchObject({ askedAt: room.now() });
  expect((await must(readRecordsDesk(room.tutor))).requests.map(({ learner }) => learner.name)).toEqual([
    "Name of kim",
  ]);
  expect((await must(readRecordsDesk(room.stranger))).requests).toEqual([]);
  await must(takeBackErasure(room.kim));
  expect(await must(readOwnRecord(room.kim))).toMatchObject({ askedAt: null });
  expect((await must(readRecordsDesk(room.tutor))).requests).toEqual([]);
  expect(await askForErasure(room.tutor)).toEqual({ ok: false, code: "not-permitted" });
});
