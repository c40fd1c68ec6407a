import { cpSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "libsql";
import { afterEach, beforeEach, expect, test } from "vitest";
import { writeRecord } from "@/app/_server/use-cases/write-record";
import { wholeRecordSchema } from "@/lib/record";
import { RULE_VERSION } from "@/lib/results";
import { defaultPaper } from "@/lib/sittings";
import { closeDatabase } from "@/prisma/client";
import { readNextPiece } from "@/prisma/stores/next-pieces";
import { listPractices, readHandedInPractice, readPractice } from "@/prisma/stores/practices";
import { countCounted } from "@/prisma/stores/progress";
import { readSitting } from "@/prisma/stores/sittings";
import { countStock, readEndViews, readTruth, takeReadySpecimen } from "@/prisma/stores/specimens";
import { readWorkshop } from "@/prisma/stores/workshops";
import { migrate } from "@/prisma/tools/migrate.mjs";
import { markCap } from "../../support/marking-simulation";
import { TRUTH } from "./workshop";

const MIGRATIONS = "prisma/migrations";
let folder: string;
let url: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "toeline-migration-"));
  url = `file:${join(folder, "old.db")}`;
  process.env.DATABASE_URL = url;
});
afterEach(async () => {
  await closeDatabase();
  rmSync(folder, { recursive: true, force: true });
});

/** Only the migrations of before this one. */
function migrateBefore(migration: string): void {
  const old = join(folder, "migrations");
  const all = readdirSync(MIGRATIONS).filter((name) => /^\d/.test(name));
  const names = all.sort().slice(
    0,
    all.findIndex((name) => name.endsWith(migration)),
  );
  expect(names.length).toBeGreaterThan(0);
  for (const name of names) cpSync(join(MIGRATIONS, name), join(old, name), { recursive: true });
  migrate(url, old);
}

/** What was stored while each face of a plate was a section and nothing but indications was marked. */
function oldRows() {
  const { clutter: _, dimensions: __, statements: ___, ...truth } = TRUTH;
  const report = {
    version: 1,
    calls: [{ id: "a", face: "cap", type: "surface-pore", start: 100, end: null, across: 1, size: 1.5 }],
  };
  const { totals, lines, earned } = markCap(
    TRUTH.items.filter(({ face }) => face === "cap"),
    [{ id: "a", face: "cap", type: "surface-pore", start: 100, end: null, across: 1, size: 1.5, sentence: null }],
  );
  const common = {
    version: 1,
    ruleVersion: "1.0",
    passMark: 62.5,
    mark: earned,
    shown: 100,
    passed: true,
    totals,
    lines,
  };
  return {
    truth: JSON.stringify(truth),
    report: JSON.stringify(report),
    result: JSON.stringify({ ...common, section: "cap" }),
    earned,
  };
}

test("a database of before sections of papers keeps its rows, and everything in them is read back", async () => {
  migrateBefore("_sections_of_papers");
  const { truth, report, result, earned } = oldRows();
  const database = new Database(join(folder, "old.db"));
  const day = "2026-03-02T08:00:00.000+00:00";
  database
    .prepare(
      "INSERT INTO Workshop (id, name, allowsOwnAccounts, capPassMark, rootPassMark, createdAt) VALUES ('workshop', 'Old shop', 0, 71.5, 68, ?)",
    )
    .run(day);
  database
    .prepare(
      "INSERT INTO User (id, name, email, username, role, createdAt, updatedAt) VALUES ('ada', 'Ada', 'a@x', 'ada', 'learner', ?, ?)",
    )
    .run(day, day);
  const specimen = database.prepare(
    "INSERT INTO Specimen (id, seed, state, isReserved, stage, generatorVersion, truth, createdAt) VALUES (?, ?, ?, 0, '', '1', ?, ?)",
  );
  specimen.run("taken", "seed 1", "taken", truth, day);
  specimen.run("ready", "seed 2", "ready", truth, day);
  const surface = database.prepare("INSERT INTO SpecimenSurface (specimenId, face, bytes) VALUES ('taken', ?, ?)");
  for (const face of ["cap", "root"]) surface.run(face, Buffer.from([1, 2]));
  const practice = database.prepare(
    "INSERT INTO Practice (id, userId, specimenId, state, capPassMark, rootPassMark, report, sequence, startedAt, handedInAt, truth, generatorVersion) VALUES (?, 'ada', 'taken', ?, ?, ?, ?, 3, ?, ?, ?, ?)",
  );
  practice.run("open", "open", 60, 75, report, day, null, null, null);
  practice.run("done", "handedIn", 62.5, 70, report, day, day, truth, "1");
  database
    .prepare(
      "INSERT INTO Attempt (id, practiceId, section, passMark, markThousandths, isPassed, ruleVersion, result, handedInAt) VALUES ('m', 'done', 'cap', 62.5, ?, 1, '1.0', ?, ?)",
    )
    .run(earned, result, day);
  database.close();

  expect(migrate(url)).toEqual([
    expect.stringMatching(/_sections_of_papers$/),
    expect.stringMatching(/_drill_rounds$/),
    expect.stringMatching(/_criteria_sets$/),
    expect.stringMatching(/_criteria_of_practices$/),
    expect.stringMatching(/_classes$/),
    expect.stringMatching(/_papers$/),
    expect.stringMatching(/_questions_of_practices$/),
    expect.stringMatching(/_sittings$/),
    expect.stringMatching(/_reviews_of_marks$/),
    expect.stringMatching(/_view_trails$/),
    expect.stringMatching(/_demo_history$/),
    expect.stringMatching(/_progress$/),
    expect.stringMatching(/_marks_by_learner$/),
    expect.stringMatching(/_next_pieces$/),
    expect.stringMatching(/_latest_marks_by_section$/),
    expect.stringMatching(/_eye_drills$/),
    expect.stringMatching(/_records_leave_and_go$/),
    expect.stringMatching(/_next_piece_of_its_kind$/),
    expect.stringMatching(/_orders_found_by_state$/),
  ]);

  // what was asked of either face is never asked more of
  expect(await readWorkshop()).toEqual({
    name: "Old shop",
    allowsOwnAccounts: false,
    passMarks: { plate: 68, fillet: 70 },
  });
  expect(await readPractice("open")).toMatchObject({
    section: "plate",
    passMark: 60,
    sequence: 3,
    report: { measures: [], statements: [], pieceSentence: null, answers: {}, calls: [{ sentence: null }] },
    reportClosedAt: null,
    criteria: null,
    book: "open",
  });
  expect(await listPractices("ada")).toHaveLength(2);
  const done = await readHandedInPractice("done");
  expect(done).toMatchObject({
    truth: { ...TRUTH, dimensions: [], statements: [] },
    practice: { section: "plate", passMark: 62.5 },
    sections: [
      {
        section: "cap",
        passMark: 62.5,
        markThousandths: earned,
        ruleVersion: "1.0",
        result: { version: 3, dimensions: null, sentences: null },
      },
    ],
  });
  expect(RULE_VERSION).not.toBe("1.0");
  expect((await readTruth("taken"))?.truth).toEqual({ ...TRUTH, dimensions: [], statements: [] });
  expect(await readEndViews("taken")).toBeNull();
  // what lay ready is a plate
  expect([await countStock("butt"), await countStock("fillet")]).toEqual([1, 0]);
  expect(await takeReadySpecimen("fillet")).toBeNull();
  expect(await takeReadySpecimen("butt")).toBe("ready");
  expect(migrate(url)).toEqual([]);

  // and a record of it has the shape of today
  const ada = { id: "ada", name: "Ada", role: "learner", hasOneTimeCode: false } as const;
  const written = await writeRecord({ actor: ada, clock: () => new Date(day) }, "ada", "json");
  let text = "";
  for await (const chunk of written.ok ? written.chunks : expect.fail(written.code)) text += chunk;
  const { pieces } = wholeRecordSchema.parse(JSON.parse(text));
  expect(pieces.map((piece) => [piece.id, piece.marked?.sections[0].account.section])).toEqual([
    ["done", "cap"],
    ["open", undefined],
  ]);
});

test("a sitting of before learners could be erased is read back, and nobody of it was", async () => {
  migrateBefore("_records_leave_and_go");
  const database = new Database(join(folder, "old.db"));
  const day = "2026-03-02T08:00:00.000+00:00";
  const course = { openedAt: null, begunAt: null, pauses: [], closedAt: null, wasClosed: false };
  const rest = { releasedAt: null, voided: null, graceSeconds: 60 };
  const add = (sql: string, ...values: unknown[]) => database.prepare(sql).run(...values);
  add("INSERT INTO ClassGroup (id, name, createdAt) VALUES ('class', 'Monday class', ?)", day);
  add("INSERT INTO Paper (id, createdAt, updatedAt) VALUES ('paper', ?, ?)", day, day);
  add(
    "INSERT INTO PaperVersion (id, paperId, number, content, criteria, savedAt) VALUES ('v', 'paper', 1, ?, '{}', ?)",
    JSON.stringify(defaultPaper()),
    day,
  );
  add(
    "INSERT INTO Sitting (id, groupId, paperVersionId, isForWholeClass, state, plannedAt, course, revision, createdAt) VALUES ('sitting', 'class', 'v', 1, 'planned', ?, ?, 2, ?)",
    day,
    JSON.stringify({ ...course, ...rest }),
    day,
  );
  database.close();
  expect(migrate(url)).toEqual([
    expect.stringMatching(/_records_leave_and_go$/),
    expect.stringMatching(/_next_piece_of_its_kind$/),
    expect.stringMatching(/_orders_found_by_state$/),
  ]);
  expect(await readSitting("sitting")).toMatchObject({
    sitting: { state: "planned", graceSeconds: 60 },
    revision: 2,
    groupName: "Monday class",
    erased: [],
  });
});

test("a piece that waited before pieces were outdated by those of their kind alone still waits, after all of its kind that counted", async () => {
  migrateBefore("_next_piece_of_its_kind");
  const database = new Database(join(folder, "old.db"));
  const day = "2026-03-02T08:00:00.000+00:00";
  const add = (sql: string, ...values: unknown[]) => database.prepare(sql).run(...values);
  add(
    "INSERT INTO User (id, name, email, username, role, createdAt, updatedAt) VALUES ('ada', 'Ada', 'a@x', 'ada', 'learner', ?, ?)",
    day,
    day,
  );
  for (const id of ["waits", "done"])
    add("INSERT INTO Specimen (id, seed, state, createdAt) VALUES (?, ?, 'taken', ?)", id, id, day);
  const inSittings = { p3: "released", p4: "closed" };
  const plates = { p1: "plate", p2: "plate", p3: "plate", p4: "plate" };
  for (const [id, section] of Object.entries({ ...plates, f1: "fillet" })) {
    add(
      "INSERT INTO Practice (id, userId, specimenId, section, report, startedAt) VALUES (?, 'ada', 'done', ?, '{}', ?)",
      id,
      section,
      day,
    );
    add(
      "INSERT INTO Attempt (id, practiceId, section, passMark, markThousandths, isPassed, ruleVersion, result, handedInAt) VALUES (?, ?, ?, 60, 0, 0, '1', '{}', ?)",
      id,
      id,
      section,
      day,
    );
  }
  add("INSERT INTO ClassGroup (id, name, createdAt) VALUES ('class', 'Monday class', ?)", day);
  add("INSERT INTO Paper (id, createdAt, updatedAt) VALUES ('paper', ?, ?)", day, day);
  add(
    "INSERT INTO PaperVersion (id, paperId, number, content, criteria, savedAt) VALUES ('v', 'paper', 1, '{}', '{}', ?)",
    day,
  );
  for (const [id, state] of Object.entries(inSittings)) {
    add(
      "INSERT INTO Sitting (id, groupId, paperVersionId, isForWholeClass, state, plannedAt, course, createdAt) VALUES (?, 'class', 'v', 1, ?, ?, '{}', ?)",
      state,
      state,
      day,
      day,
    );
    add(
      "INSERT INTO SectionRun (id, sittingId, userId, section, state, course, practiceId) VALUES (?, ?, 'ada', 'plate', 'handedIn', '{}', ?)",
      id,
      state,
      id,
    );
  }
  add(
    "INSERT INTO NextPiece (specimenId, userId, section, waits, chosenAt, revision, learner) VALUES ('waits', 'ada', 'plate', 1, ?, 3, '{}')",
    day,
  );
  database.close();
  expect(migrate(url)).toEqual([
    expect.stringMatching(/_next_piece_of_its_kind$/),
    expect.stringMatching(/_orders_found_by_state$/),
  ]);
  expect(await readNextPiece("ada", "plate")).toEqual({ specimenId: "waits", state: "taken", sections: 3 });
  expect(await countCounted("ada", "plate"), "all but the one that is not released").toBe(3);
});
