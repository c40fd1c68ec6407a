import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { readPieceSheet } from "@/app/_server/use-cases/read-piece-sheet";
import { writeHistoryFile } from "@/app/_server/use-cases/write-history-file";
import { writePracticeFile } from "@/app/_server/use-cases/write-practice-file";
import { FILE_KINDS } from "@/lib/printing";
import { shownMark } from "@/lib/results";
import { freshDatabaseForEachTest } from "../../support/database";
import { CAP_ONLY, openPractice, openTestWorkshop, visitor } from "./workshop";

freshDatabaseForEachTest();

const WHO = ["nobody", "learner", "other learner", "tutor"] as const;
type Who = (typeof WHO)[number];
type Read = (caller: Caller, id: string) => Promise<{ readonly ok: boolean; readonly code?: string }>;

const [NOBODY, NOT_YOURS, NOBODYS] = ["not-signed-in", "no-such-practice", "no-such-learner"];

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
const OF_LEARNER = { nobody: NOBODY, learner: "ok", "other learner": NOBODYS, tutor: "ok" };

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
    open: { nobody: NOBODY, learner: NOBODYS, "other learner": NOBODYS, tutor: "ok" },
    handedIn: { nobody: NOBODY, learner: NOBODYS, "other learner": NOBODYS, tutor: "ok" },
  },
  "the piece without answers": {
    read: readPieceSheet,
    open: { nobody: NOBODY, learner: "ok", "other learner": NOT_YOURS, tutor: NOT_YOURS },
    handedIn: { nobody: NOBODY, learner: "ok", "other learner": NOT_YOURS, tutor: "ok" },
  },
};

describe.each(Object.entries(ACCESS))("%s", (_name, { read, open, handedIn }) => {
  test.each(WHO)("%s", async (who) => {
    const { learner, other, tutor } = await openTestWorkshop();
    const caller = { nobody: visitor, learner, "other learner": other, tutor }[who];
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
