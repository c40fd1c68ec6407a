import { describe, expect, test } from "vitest";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { EMPTY_REPORT } from "@/lib/report";
import { readPractice } from "@/prisma/stores/practices";
import { freshDatabaseForEachTest } from "../../support/database";
import { CAP_ONLY, NOW, openPractice, openTestWorkshop } from "./workshop";

freshDatabaseForEachTest();

describe("the order of saves", () => {
  test("a newer number is kept, with the time of the server", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    expect(await saveReport(learner, id, { sequence: 1, report: CAP_ONLY })).toEqual({
      ok: true,
      sequence: 1,
      savedAt: NOW,
    });
    expect(await saveReport(learner, id, { sequence: 4, report: EMPTY_REPORT })).toMatchObject({ ok: true });
    expect(await readPractice(id)).toMatchObject({ sequence: 4, report: EMPTY_REPORT });
  });

  test("the very same save again is accepted and changes nothing", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    await saveReport(learner, id, { sequence: 2, report: CAP_ONLY });
    const reordered = {
      measures: CAP_ONLY.measures,
      calls: [Object.fromEntries(Object.entries(CAP_ONLY.calls[0]).reverse())],
      version: 1,
    };
    expect(await saveReport(learner, id, { sequence: 2, report: reordered })).toMatchObject({ ok: true, sequence: 2 });
    expect(await readPractice(id)).toMatchObject({ sequence: 2, report: CAP_ONLY });
  });

  test.each([
    ["an older number", 1, EMPTY_REPORT],
    ["the same number with other contents", 2, EMPTY_REPORT],
    ["an older number with the same contents", 1, CAP_ONLY],
  ])("%s is refused, with the newer version", async (_case, sequence, report) => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    await saveReport(learner, id, { sequence: 2, report: CAP_ONLY });
    expect(await saveReport(learner, id, { sequence, report })).toEqual({
      ok: false,
      code: "stale-save",
      sequence: 2,
      report: CAP_ONLY,
      savedAt: expect.any(Date),
    });
    expect(await readPractice(id)).toMatchObject({ sequence: 2, report: CAP_ONLY });
  });

  test("a window that was cut off cannot write over what another one saved meanwhile", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    const left = { id: "leftwindow", base: 0 };
    const right = { id: "rightwindow", base: 0 };
    expect(await saveReport(learner, id, { sequence: 3, report: CAP_ONLY, window: left })).toMatchObject({ ok: true });
    const cutOff = { sequence: 30, report: EMPTY_REPORT, window: right };
    expect(await saveReport(learner, id, cutOff)).toEqual({
      ok: false,
      code: "stale-save",
      sequence: 3,
      report: CAP_ONLY,
      savedAt: expect.any(Date),
    });
    // the same window goes on even where the answer to its last save was lost
    expect(await saveReport(learner, id, { sequence: 5, report: CAP_ONLY, window: left })).toMatchObject({ ok: true });
    // and the other one once it has seen it
    const seen = { ...cutOff, window: { ...right, base: 5 } };
    expect(await saveReport(learner, id, seen)).toMatchObject({ ok: true, sequence: 30 });
    expect(await readPractice(id)).toMatchObject({ sequence: 30, report: EMPTY_REPORT, windowId: "rightwindow" });
  });

  test("of many that arrive at once in any order, the highest number stays", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    const sequences = [3, 9, 1, 7, 2, 8, 5, 4, 6];
    const reportOf = (sequence: number) => ({ version: 1, calls: [{ ...CAP_ONLY.calls[0], start: sequence }] });
    await Promise.all(sequences.map((sequence) => saveReport(learner, id, { sequence, report: reportOf(sequence) })));
    expect(await readPractice(id)).toMatchObject({ sequence: 9, report: reportOf(9) });
  });
});

describe("what is not a report", () => {
  const call = CAP_ONLY.calls[0];
  test.each([
    [{ report: CAP_ONLY }, "sequence", "a number"],
    [{ sequence: 1.5, report: CAP_ONLY }, "sequence", "a whole number"],
    [{ sequence: 1 }, "report", "an object"],
    [{ sequence: 1, report: { version: 2, calls: [] } }, "report.version", "one of 1"],
    [{ sequence: 1, report: { version: 1, calls: [{ ...call, start: 301 }] } }, "report.calls[0].start", "at most 300"],
    [
      { sequence: 1, report: { version: 1, calls: [call, { ...call, id: "b", across: "left" }] } },
      "report.calls[1].across",
      "a number",
    ],
    [{ sequence: 1, report: { version: 1, calls: [{ ...call, seed: 1 }] } }, "report.calls[0]", "no field named seed"],
    [
      { sequence: 1, report: { version: 1, calls: Array.from({ length: 201 }, (_, i) => ({ ...call, id: `c${i}` })) } },
      "report.calls",
      "at most 200 entries",
    ],
  ])("case %#: refused at its place", async (input, path, wanted) => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    expect(await saveReport(learner, id, input)).toEqual({
      ok: false,
      code: "malformed-report",
      problem: { path, wanted },
    });
    expect(await readPractice(id)).toMatchObject({ sequence: 0 });
  });
});

test("nothing is accepted after handing in", async () => {
  const { learner } = await openTestWorkshop();
  const id = await openPractice(learner);
  await saveReport(learner, id, { sequence: 1, report: CAP_ONLY });
  await handIn(learner, id, undefined);
  for (const sequence of [1, 2]) {
    expect(await saveReport(learner, id, { sequence, report: CAP_ONLY })).toEqual({
      ok: false,
      code: "already-handed-in",
    });
  }
  expect(await readPractice(id)).toMatchObject({ sequence: 1, report: CAP_ONLY });
});
