import Papa from "papaparse";
import { expect, test } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { voidRun } from "@/app/_server/use-cases/govern-run";
import { closeSitting, releaseSitting } from "@/app/_server/use-cases/govern-sitting";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { keepDrillRound } from "@/app/_server/use-cases/keep-drill-round";
import { keepViewTrail } from "@/app/_server/use-cases/keep-view-trail";
import { overruleLine } from "@/app/_server/use-cases/overrule-line";
import { writeClassStatements } from "@/app/_server/use-cases/write-class-statements";
import { writeRecord } from "@/app/_server/use-cases/write-record";
import { type WholeRecord, wholeRecordSchema } from "@/lib/record";
import { linesOf } from "@/lib/review";
import { database } from "@/prisma/client";
import { readHandedInPractice } from "@/prisma/stores/practices";
import { createSetDrill } from "@/prisma/stores/set-drills";
import { freshDatabaseForEachTest } from "../../support/database";
import { problemsOf } from "../../support/xapi-rules";
import { begunSitting, must, openRoom, save, started } from "./sitting-room";
import { CAP_ONLY, openPractice } from "./workshop";

freshDatabaseForEachTest();

async function textOf(written: Promise<{ readonly ok: boolean; readonly chunks?: AsyncGenerator<string> }>) {
  const { chunks } = await written;
  let text = "";
  for await (const chunk of chunks ?? expect.fail("refused")) text += chunk;
  return text;
}

/** The record of kim as somebody gets it, by its documented shape. */
const recordFor = async (who: Caller): Promise<WholeRecord> =>
  wholeRecordSchema.parse(JSON.parse(await textOf(writeRecord(who, "kim", "json"))));

test("the record of somebody new is whole as well", async () => {
  const room = await openRoom();
  const record = await recordFor(room.kim);
  expect(record).toMatchObject({
    format: "toeline-learner-record",
    version: 1,
    madeAt: "2026-03-02T09:00:00.000Z",
    madeFor: "learner",
    person: { id: "kim", name: "Name of kim", signInName: "kim" },
    classes: [{ id: "class", name: "Monday class", timeFactor: 1.5, leftAt: null }],
    pieces: [],
    sittings: [],
  });
  expect(JSON.parse(await textOf(writeRecord(room.kim, "kim", "xapi")))).toEqual([]);
});

test("the record grows with what its reader may know, and says what it leaves out", async () => {
  const room = await openRoom();
  const { kim, tutor } = room;
  const round = { drill: "find-largest", gauges: ["depth-gauge"], asked: 3, right: 1, medianError: 0.2, seconds: 60 };
  await must(keepDrillRound(kim, round));
  await createSetDrill({ id: "drill", groupId: "class", setById: "tutor", drill: "mixed", types: [] }, room.now());
  for (const [one, setDrillId] of [
    ["set", "drill"],
    ["own", null],
  ] as const) {
    const begun = {
      id: one,
      userId: "kim",
      drill: "mixed",
      naming: "four",
      isTimed: false,
      begunAt: room.now(),
    } as const;
    const task = {
      id: `task-${one}`,
      number: 1,
      kind: "spot",
      content: {},
      answer: {},
      answeredAt: room.now(),
      isRight: true,
    } as const;
    await database().eyeRound.create({
      data: { ...begun, setDrillId, finishedAt: room.now(), tasks: { create: task } },
    });
  }
  await openPractice(kim, "lies-open");
  const id = await begunSitting(room);
  const { runId, practiceId } = await started(id, kim);
  const trail = { version: 1, views: {} };
  await must(keepViewTrail(kim, practiceId, { windowId: "window01", number: 1, trail }));
  room.at("10:20");
  await must(handIn(kim, practiceId, save(1, room.now())));
  const fillet = await started(id, kim, "fillet");
  await must(voidRun(tutor, fillet.runId, { reason: "the lamp went out" }));
  await must(closeSitting(tutor, id));
  const sheet = await readHandedInPractice(practiceId);
  const line = linesOf(sheet?.sections[0].result ?? expect.fail("not marked"))[0];
  await must(overruleLine(tutor, runId, { line: line.id, marks: 0, reason: "not there" }));

  // closed and not released: their own report, and nothing of what there was to find
  const early = await textOf(writeRecord(kim, "kim", "json"));
  expect(early).not.toMatch(/root-concavity|secret-seed|generator|"key"|rightOption|overrule/);
  const before = wholeRecordSchema.parse(JSON.parse(early));
  const sat = (record: WholeRecord) => record.pieces.find((piece) => piece.id === practiceId);
  expect(sat(before)).toMatchObject({
    sectionOfSitting: runId,
    marked: null,
    viewTrail: { unitSeconds: 0.5, binMm: 5 },
    report: { indications: [{ type: "surface-pore", typeNumber: "2017", startMm: 100, sizeMm: 1.5 }] },
  });
  expect(before.leftOut.join(" ")).toContain(
    "1 handed-in pieces: their sitting is not over, or its marks are not released",
  );
  expect(before.leftOut.join(" ")).toContain("1 pieces of sections that are void");
  expect(before.log.map(({ act }) => act)).toEqual(["void"]);
  expect(before.progress.sections).toEqual([]);
  expect(JSON.parse(await textOf(writeRecord(kim, "kim", "xapi")))).toHaveLength(1);

  // the tutor of the class knows the marks, and not what is still being written
  const ofTutor = await recordFor(tutor);
  expect(sat(ofTutor)?.marked?.sections[0].acts).toMatchObject([
    { kind: "overrule", reason: "not there", by: "Name of tutor" },
  ]);
  expect(ofTutor.pieces.find((piece) => piece.id === "lies-open")).toMatchObject({ report: null, marked: null });
  expect(ofTutor.devices).toEqual([]);
  // drills are the learner's own, but for those that were set
  expect(ofTutor.drillRounds).toEqual([]);
  expect(ofTutor.eyeRounds.map(({ id: one }) => one)).toEqual(["set"]);
  expect(before.eyeRounds).toHaveLength(2);
  expect(ofTutor.leftOut.join(" ")).toContain("Rounds of drills");

  await must(releaseSitting(tutor, id));
  const after = await recordFor(kim);
  const marked = sat(after)?.marked ?? expect.fail("still covered");
  expect(marked.truths.map(({ type }) => type)).toEqual(["surface-pore", "root-concavity"]);
  const [{ account, countingMarkThousandths }] = marked.sections;
  const sum = [account.indications, account.dimensions, account.statements, account.sentences, account.questions]
    .flat()
    .reduce((total, one) => total + one.earnedThousandths, 0);
  expect(sum).toBe(account.markThousandths);
  expect(countingMarkThousandths).toBe(account.markThousandths - line.earned);
  expect(after.sittings).toMatchObject([
    {
      id,
      state: "released",
      sections: [
        { section: "plate", state: "handed-in", timeFactor: 1.5, attempt: "first", round: 1 },
        { section: "fillet", state: "void", void: { reason: "the lamp went out" } },
      ],
    },
  ]);
  expect(after.log.map(({ act }) => act)).toEqual(["void", "overrule"]);
  expect(after.drillRounds).toMatchObject([{ drill: "find-largest", medianErrorMm: 0.2 }]);
  expect(after.progress.sections).toMatchObject([{ section: "plate", sums: { pieces: 1 } }]);

  // the same as CSV, value by value
  const csv = await textOf(writeRecord(kim, "kim", "csv"));
  const { data } = Papa.parse<Record<string, string>>(csv.slice(1), { header: true, skipEmptyLines: true });
  expect(data).toHaveLength(leavesIn(after));
  const cellOf = (part: string, entry: string, field: string) =>
    // an id that begins with a hyphen has an apostrophe before it, or a spreadsheet would work it out
    data.find((row) => row.Part === part && row.Entry.replace(/^'/, "") === entry && row.Field === field)?.Value;
  expect(cellOf("pieces", practiceId, "report.indications.1.startMm")).toBe("100");
  expect(cellOf("person", "", "signInName")).toBe("kim");
  expect(cellOf("drillRounds", after.drillRounds[0].id, "seconds")).toBe("60");

  // and as statements, with the ids that a record store is told
  const told = JSON.parse(await textOf(writeRecord(kim, "kim", "xapi"))) as { verb: { id: string }; id: string }[];
  expect(told.flatMap(problemsOf)).toEqual([]);
  expect(new Set(told.map(({ verb }) => verb.id.split("/").at(-1)))).toEqual(
    new Set(["answered", "failed", "completed"]),
  );
  const ofClass = JSON.parse(await textOf(writeClassStatements(tutor, "class"))) as { id: string }[];
  const withoutDrills = told.filter(({ verb }) => !verb.id.endsWith("/completed"));
  expect(ofClass.map(({ id: one }) => one)).toEqual(withoutDrills.map(({ id: one }) => one));
  expect(await writeRecord(kim, "kim", "zip")).toEqual({ ok: false, code: "no-such-file" });
});

/** How many single values something has. */
const leavesIn = (value: unknown): number =>
  typeof value !== "object" || value === null
    ? 1
    : Object.values(value).reduce((sum: number, one) => sum + leavesIn(one), 0);

test("pieces are made one after the other, and others come in between", async () => {
  const room = await openRoom();
  for (const id of ["one", "two", "three"]) {
    await must(handIn(room.kim, await openPractice(room.kim, id), { sequence: 1, report: CAP_ONLY }));
  }
  const { chunks } = await must(writeRecord(room.kim, "kim", "json"));
  let isFirst = true;
  let hadATurn = false;
  for await (const chunk of chunks) {
    if (!chunk.includes('"handed-in"')) continue;
    // whoever waited since the piece before was let in
    expect(hadATurn).toBe(!isFirst);
    isFirst = false;
    hadATurn = false;
    setImmediate(() => {
      hadATurn = true;
    });
  }
  expect(isFirst).toBe(false);
});
