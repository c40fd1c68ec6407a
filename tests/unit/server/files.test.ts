import Papa from "papaparse";
import { expect, test } from "vitest";
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
import { freshDatabaseForEachTest } from "../../support/database";
import { CAP_ONLY, NOW, openPractice, openTestWorkshop } from "./workshop";

freshDatabaseForEachTest();

/** A class of the tutor with the learner in it, and not the other one. */
async function makeClass() {
  await createClass({ id: "class", name: "Evening", notes: "" }, "tutor", NOW);
  await enrol({ groupId: "class", accounts: [], learnerIds: ["learner"] }, NOW);
}

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
