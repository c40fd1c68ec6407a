import { describe, expect, test } from "vitest";
import { followProgress } from "@/app/_server/use-cases/follow-progress";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { listOwnPractices } from "@/app/_server/use-cases/list-own-practices";
import { openBench } from "@/app/_server/use-cases/open-bench";
import { readEnds } from "@/app/_server/use-cases/read-ends";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { readSurface } from "@/app/_server/use-cases/read-surface";
import { readToday } from "@/app/_server/use-cases/read-today";
import { renewSpecimen } from "@/app/_server/use-cases/renew-specimen";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { startPractice } from "@/app/_server/use-cases/start-practice";
import { EMPTY_REPORT, type Report } from "@/lib/report";
import { readPractice } from "@/prisma/stores/practices";
import { countStock, failSpecimen, readSpecimenProgress, takeOrder } from "@/prisma/stores/specimens";
import { freshDatabaseForEachTest } from "../../support/database";
import {
  CAP_ONLY,
  ENDS,
  FILLET_SURFACES,
  FILLET_TRUTH,
  makeSpecimen,
  openPractice,
  openTestWorkshop,
  testSource,
} from "./workshop";

freshDatabaseForEachTest();

const CRACK: Report["calls"][number] = {
  id: "a",
  face: "fillet",
  type: "longitudinal-crack",
  start: 60,
  end: 90,
  across: -1.3,
  size: null,
  sentence: null,
};
const REPORT: Report = {
  version: 1,
  calls: [CRACK],
  measures: [{ dimension: "throat", station: 1, value: 4.6, at: null }],
  statements: [{ statement: "size", answer: "met" }],
  pieceSentence: null,
  answers: {},
};

async function onFillet() {
  const people = await openTestWorkshop();
  return { ...people, id: await openPractice(people.learner, "practice", "fillet") };
}

describe("a practice on a fillet", () => {
  test("takes a fillet off the shelf and never a plate, and asks for one where there is none", async () => {
    const { learner } = await openTestWorkshop();
    await makeSpecimen("a-plate", false, "plate");
    await makeSpecimen("a-fillet", false, "fillet");
    const start = async () => {
      const started = await startPractice(learner, { section: "fillet" }, testSource());
      if (!started.ok) throw new Error(started.code);
      return readPractice(started.id);
    };
    expect(await start()).toMatchObject({ specimenId: "a-fillet", section: "fillet", passMark: 70 });
    expect(await start()).toMatchObject({ specimenId: "asked-0", section: "fillet" });
    expect(await takeOrder()).toMatchObject({ id: "asked-0", kind: "fillet" });
    expect([await countStock("butt"), await countStock("fillet")]).toEqual([1, 0]);
    // and one that could not be made is replaced by a fillet
    await failSpecimen("asked-0");
    const own = await listOwnPractices(learner);
    if (!own.ok) throw new Error(own.code);
    const latest = own.open.find(({ specimenId }) => specimenId === "asked-0")!;
    await makeSpecimen("another-fillet", false, "fillet");
    expect(await renewSpecimen(learner, latest.id, testSource())).toEqual({ ok: true });
    expect(await readPractice(latest.id)).toMatchObject({ specimenId: "another-fillet" });
    expect(await readSpecimenProgress("a-plate")).toMatchObject({ state: "ready" });
  });

  test("is told what the drawing says and where the stations are, and not a word more of the truth", async () => {
    const { learner, id } = await onFillet();
    const opened = await openBench(learner, id, testSource());
    expect(opened.ok && opened.joint).toEqual({
      kind: "fillet",
      process: "135",
      position: "PB",
      baseThickness: 12,
      standingThickness: 8,
      size: { symbol: "a", value: 4 },
      stations: [41, 103, 158],
    });
    expect(opened.ok && Object.keys(opened).sort()).toEqual(["joint", "ok", "plate", "practice", "questions", "run"]);
  });

  test("has one surface and two ends, for the owner only while it is open", async () => {
    const { learner, other, tutor, id } = await onFillet();
    expect(await readSurface(learner, id, "fillet")).toMatchObject({ ok: true, bytes: FILLET_SURFACES.fillet });
    for (const face of ["cap", "root", "side"]) {
      expect(await readSurface(learner, id, face)).toEqual({ ok: false, code: "no-such-surface" });
    }
    expect(await readEnds(learner, id)).toMatchObject({ ok: true, ends: ENDS });
    for (const caller of [other, tutor]) {
      expect(await readEnds(caller, id)).toEqual({ ok: false, code: "no-such-practice" });
      expect(await readEnds(caller, id)).toEqual(await readEnds(caller, "no-such-id"));
    }
    await handIn(learner, id, { sequence: 1, report: REPORT });
    expect(await readEnds(tutor, id)).toMatchObject({ ok: true, ends: ENDS });
    expect(await readEnds(other, id)).toEqual({ ok: false, code: "no-such-practice" });
    const plate = await openPractice(learner, "plate");
    expect(await readEnds(learner, plate)).toEqual({ ok: false, code: "no-such-surface" });
    expect(await readSurface(learner, plate, "fillet")).toEqual({ ok: false, code: "no-such-surface" });
  });

  test("keeps a report within the piece, and names the field that is not", async () => {
    const { learner, id } = await onFillet();
    const problemOf = async (report: object) => {
      const saved = await saveReport(learner, id, { sequence: 9, report });
      return "problem" in saved ? saved.problem : saved;
    };
    expect(await problemOf({ ...REPORT, calls: [{ ...CRACK, end: 240 }] })).toEqual({
      path: "report.calls[0].end",
      wanted: "at most 200",
    });
    expect(await problemOf({ ...REPORT, calls: [{ ...CRACK, across: -60 }] })).toEqual({
      path: "report.calls[0].across",
      wanted: "at least -48",
    });
    expect(await problemOf(CAP_ONLY)).toMatchObject({ path: "report.calls[0].face" });
    expect(await problemOf({ ...EMPTY_REPORT, measures: CAP_ONLY.measures })).toMatchObject({
      path: "report.measures[0].dimension",
    });
    expect(await problemOf({ ...REPORT, statements: [{ statement: "size", answer: "convex" }] })).toEqual({
      path: "report.statements[0].answer",
      wanted: "one of met, not-met",
    });
    expect(await readPractice(id)).toMatchObject({ sequence: 0 });
    expect(await saveReport(learner, id, { sequence: 1, report: REPORT })).toMatchObject({ ok: true });
    expect(await saveReport(learner, id, { sequence: 1, report: REPORT })).toMatchObject({ ok: true, sequence: 1 });
    expect(await saveReport(learner, id, { sequence: 1, report: { ...REPORT, statements: [] } })).toMatchObject({
      code: "stale-save",
    });
    expect(await readPractice(id)).toMatchObject({ sequence: 1, report: REPORT });
  });

  test("on a plate's practice refuses what belongs to a fillet", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    expect(await saveReport(learner, id, { sequence: 1, report: { ...EMPTY_REPORT, calls: [CRACK] } })).toMatchObject({
      code: "malformed-report",
      problem: { path: "report.calls[0].face", wanted: "one of cap, root" },
    });
  });

  test("is marked as a fillet: indications 20, dimensions and statements 50 parts of 70", async () => {
    const { learner, tutor, id } = await onFillet();
    expect(await handIn(learner, id, { sequence: 1, report: REPORT })).toEqual({ ok: true });
    // 28,571 for the crack; two of four lines of 71,429: the throat, which has the unit left over, and the size
    expect(await readPractice(id)).toMatchObject({
      state: "handed-in",
      marks: [{ section: "fillet", passMark: 60.5, markThousandths: 28_571 + 17_858 + 17_857, isPassed: true }],
    });
    const read = await readMarkSheet(tutor, id);
    expect(read).toMatchObject({
      ok: true,
      sheet: {
        truth: FILLET_TRUTH,
        practice: { section: "fillet", report: REPORT },
        sections: [{ result: { section: "fillet", dimensions: { statements: [{ earned: 0 }, { earned: 17_857 }] } } }],
      },
    });
    expect(read).toEqual({ ...(await readMarkSheet(learner, id)), isOwn: false });
  });
});

test("nothing that a learner is told of an open practice on a fillet holds truth or seed", async () => {
  const { learner, id } = await onFillet();
  const source = testSource();
  const told = JSON.stringify([
    await followProgress(learner, id, source),
    await openBench(learner, id, source),
    await readEnds(learner, id),
    await readToday(learner),
    await listOwnPractices(learner),
    await saveReport(learner, id, { sequence: 1, report: EMPTY_REPORT }),
    await readMarkSheet(learner, id),
  ]);
  for (const known of [id, "stations", "farEnd"]) expect(told).toContain(known);
  const { items, dimensions, statements, gap } = FILLET_TRUTH;
  const numbers = [
    ...items.flatMap(({ across, worst }) => [across, ...worst.filter((place) => !Number.isInteger(place))]),
    ...dimensions.flatMap(({ value, along }) => [value, ...(along?.values ?? [])]),
    ...statements.map(({ value }) => value),
    gap.datum,
    gap.farEnd,
  ];
  const words = [
    "longitudinal-crack",
    "fillet-1",
    "secret-seed",
    "test-generator",
    "truth",
    "dimensions",
    "convex",
    "right",
  ];
  for (const secret of [...words, ...numbers.map(String)]) expect(told, secret).not.toContain(secret);
});
