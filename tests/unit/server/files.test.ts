import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { readClassResults } from "@/app/_server/use-cases/read-class-results";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { readPieceSheet } from "@/app/_server/use-cases/read-piece-sheet";
import { writeClassFile } from "@/app/_server/use-cases/write-class-file";
import { writeHistoryFile } from "@/app/_server/use-cases/write-history-file";
import { writePracticeFile } from "@/app/_server/use-cases/write-practice-file";
import { FILE_KINDS } from "@/lib/printing";
import { shownMark } from "@/lib/results";
import { createClass, enrol, leaveClass } from "@/prisma/stores/classes";
import { createPerson } from "@/prisma/stores/people";
import { freshDatabaseForEachTest } from "../../support/database";
import { CAP_ONLY, NOW, openPractice, openTestWorkshop, visitor } from "./workshop";

freshDatabaseForEachTest();

const WHO = ["nobody", "learner", "other learner", "tutor"] as const;
type Who = (typeof WHO)[number];
type Read = (caller: Caller, id: string) => Promise<{ readonly ok: boolean; readonly code?: string }>;

const [NOBODY, NOT_YOURS, NOT_FOR_YOU] = ["not-signed-in", "no-such-practice", "not-permitted"];

interface Access {
  readonly read: Read;
  /** What each is answered while the practice of the learner is open, and once it is handed in. */
  readonly open: Readonly<Record<Who, string>>;
  readonly handedIn: Readonly<Record<Who, string>>;
}

const AS_MARK_SHEET = {
  open: { nobody: NOBODY, learner: "not-handed-in", "other learner": NOT_YOURS, tutor: "not-handed-in" },
  handedIn: { nobody: NOBODY, learner: "ok", "other learner": NOT_YOURS, tutor: "ok" },
};
const OF_LEARNER = { nobody: NOBODY, learner: "ok", "other learner": NOT_FOR_YOU, tutor: "ok" };
const FOR_TUTORS = { nobody: NOBODY, learner: NOT_FOR_YOU, "other learner": NOT_FOR_YOU, tutor: "ok" };
const OF_CLASS = { open: FOR_TUTORS, handedIn: FOR_TUTORS };

const ACCESS: Readonly<Record<string, Access>> = {
  "the mark sheet, the report and the piece with answers": { read: readMarkSheet, ...AS_MARK_SHEET },
  "the file of a piece": { read: (caller, id) => writePracticeFile(caller, id, "indications"), ...AS_MARK_SHEET },
  "the file of everything that the learner handed in": {
    read: (caller) => writeHistoryFile(caller, "learner", "sections"),
    open: OF_LEARNER,
    handedIn: OF_LEARNER,
  },
  "the file of the tutor's own": {
    read: (caller) => writeHistoryFile(caller, "tutor", "sections"),
    ...OF_CLASS,
  },
  "the result list of a class": { read: (caller) => readClassResults(caller, "class"), ...OF_CLASS },
  "the file of a class": { read: (caller) => writeClassFile(caller, "class", "sections"), ...OF_CLASS },
  "the piece without answers": {
    read: readPieceSheet,
    open: { nobody: NOBODY, learner: "ok", "other learner": NOT_YOURS, tutor: NOT_YOURS },
    handedIn: { nobody: NOBODY, learner: "ok", "other learner": NOT_YOURS, tutor: "ok" },
  },
};

/** A class of the tutor with the learner in it, and not the other one. */
async function makeClass() {
  await createClass({ id: "class", name: "Evening", notes: "" }, "tutor", NOW);
  await enrol({ groupId: "class", accounts: [], learnerIds: ["learner"] }, NOW);
}

describe.each(Object.entries(ACCESS))("%s", (_name, { read, open, handedIn }) => {
  test.each(WHO)("%s", async (who) => {
    const { learner, other, tutor } = await openTestWorkshop();
    const caller = { nobody: visitor, learner, "other learner": other, tutor }[who];
    await makeClass();
    const id = await openPractice(learner);
    const answered = async () => (await read(caller, id)).code ?? "ok";
    expect(await answered()).toBe(open[who]);
    await handIn(learner, id, { sequence: 1, report: CAP_ONLY });
    expect(await answered()).toBe(handedIn[who]);
  });
});

test("the piece without answers tells nothing of the truth but what the drawing says", async () => {
  const { learner } = await openTestWorkshop();
  const sheet = await readPieceSheet(learner, await openPractice(learner));
  expect(sheet).toEqual({
    ok: true,
    id: "practice",
    kind: "butt",
    state: "open",
    joint: { kind: "butt", process: "111", position: "PA", thickness: 10 },
  });
});

test("a file of no known kind is refused, and which ones there are is told", async () => {
  const { learner } = await openTestWorkshop();
  const id = await openPractice(learner);
  await handIn(learner, id, { sequence: 1, report: CAP_ONLY });
  for (const kind of ["", "everything", "__proto__"]) {
    expect(await writePracticeFile(learner, id, kind)).toEqual({ ok: false, code: "no-such-file" });
    expect(await writeHistoryFile(learner, "learner", kind)).toEqual({ ok: false, code: "no-such-file" });
  }
});

test("the file of everything has a row for each section that was handed in, with the mark of its mark sheet", async () => {
  const { learner, other, tutor } = await openTestWorkshop();
  for (const id of ["one", "two"]) {
    await openPractice(learner, id, id === "one" ? "plate" : "fillet");
    await handIn(learner, id, { sequence: 0, report: { ...CAP_ONLY, calls: [], measures: [] } });
  }
  await openPractice(learner, "open");
  await openPractice(other, "foreign");
  await handIn(other, "foreign", { sequence: 1, report: CAP_ONLY });
  const file = await writeHistoryFile(tutor, "learner", "sections");
  if (!file.ok) throw new Error(file.code);
  const { data } = Papa.parse<Record<string, string>>(file.text.slice(1), { header: true, skipEmptyLines: true });
  expect(data.map(({ Piece }) => Piece).sort()).toEqual(["one", "two"]);
  for (const row of data) {
    const read = await readMarkSheet(tutor, row.Piece);
    if (!read.ok) throw new Error(read.code);
    expect(Number(row["Mark, of 100"])).toBe(shownMark(read.sheet.sections[0].markThousandths));
  }
  for (const kind of FILE_KINDS) expect(await writeHistoryFile(learner, "learner", kind)).toMatchObject({ ok: true });
});

test("the file and the list of a class hold what its members handed in, and nothing of whoever has left or was never in it", async () => {
  const { learner, other, tutor } = await openTestWorkshop();
  await makeClass();
  for (const [who, id] of [
    [learner, "mine"],
    [other, "foreign"],
  ] as const) {
    await openPractice(who, id);
    await handIn(who, id, { sequence: 1, report: CAP_ONLY });
  }
  const pieces = async () => {
    const file = await writeClassFile(tutor, "class", "indications");
    if (!file.ok) throw new Error(file.code);
    const { data } = Papa.parse<Record<string, string>>(file.text.slice(1), { header: true, skipEmptyLines: true });
    return [...new Set(data.map(({ Piece }) => Piece))];
  };
  expect(await pieces()).toEqual(["mine"]);
  expect(await readClassResults(tutor, "class")).toMatchObject({
    learners: [{ id: "learner" }],
    results: [
      { practiceId: "mine", section: "plate", markThousandths: 57_143, isPassed: false, work: { kind: "practice" } },
    ],
  });
  await leaveClass("class", "learner", NOW);
  expect(await pieces()).toEqual([]);
  expect(await readClassResults(tutor, "class")).toMatchObject({ learners: [], results: [] });
});

test("another tutor's class and a learner of it do not exist for a tutor", async () => {
  const { learner, tutor } = await openTestWorkshop();
  await makeClass();
  const id = await openPractice(learner);
  await handIn(learner, id, { sequence: 1, report: CAP_ONLY });
  await createPerson(
    { id: "second", name: "Second", signInName: "second", role: "tutor", passwordHash: "x", hasOneTimeCode: false },
    NOW,
  );
  const second: Caller = { ...tutor, actor: { id: "second", name: "Second", role: "tutor", hasOneTimeCode: false } };
  expect(await writeClassFile(second, "class", "sections")).toEqual({ ok: false, code: "no-such-class" });
  expect(await writeHistoryFile(second, "learner", "sections")).toEqual({ ok: false, code: "no-such-learner" });
  expect(await writePracticeFile(second, id, "sections")).toEqual({ ok: false, code: "no-such-practice" });
  expect(await readPieceSheet(second, id)).toEqual({ ok: false, code: "no-such-practice" });
});
