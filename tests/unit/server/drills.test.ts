import { describe, expect, test } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { keepDrillRound } from "@/app/_server/use-cases/keep-drill-round";
import { readDrills } from "@/app/_server/use-cases/read-drills";
import { database } from "@/prisma/client";
import { freshDatabaseForEachTest } from "../../support/database";
import { NOW, openTestWorkshop } from "./workshop";

freshDatabaseForEachTest();

const ROUND = {
  drill: "read-scale",
  gauges: ["height-gauge", "steel-rule"],
  asked: 10,
  right: 7,
  medianError: 0.1,
  seconds: 95,
};

/** The same person, so many minutes later. */
const later = (caller: Caller, minutes: number): Caller => ({
  ...caller,
  clock: () => new Date(NOW.getTime() + minutes * 60_000),
});

describe("a finished round of a drill", () => {
  test("is kept as it was, with the time of the server", async () => {
    const { learner } = await openTestWorkshop();
    const kept = await keepDrillRound(learner, ROUND);
    expect(kept).toMatchObject({ ok: true, round: { ...ROUND, finishedAt: NOW } });
    expect(await readDrills(learner)).toMatchObject({
      ok: true,
      rounds: { "read-scale": [{ ...ROUND, finishedAt: NOW }], "seat-gauge": [], "find-largest": [] },
    });
  });

  test("may have nothing that could be read", async () => {
    const { learner } = await openTestWorkshop();
    const nothing = { drill: "seat-gauge", gauges: ["hook-gauge"], asked: 5, right: 0, medianError: null, seconds: 9 };
    expect(await keepDrillRound(learner, nothing)).toMatchObject({ ok: true });
    const read = await readDrills(learner);
    expect(read.ok && read.rounds["seat-gauge"]).toMatchObject([nothing]);
  });

  test("is seen by nobody else, not even the tutor", async () => {
    const { learner, other, tutor } = await openTestWorkshop();
    await keepDrillRound(learner, ROUND);
    for (const caller of [other, tutor]) {
      expect(await readDrills(caller)).toMatchObject({ rounds: { "read-scale": [] } });
    }
  });

  test("stands before older ones, of which five are listed for each drill", async () => {
    const { learner } = await openTestWorkshop();
    for (let n = 0; n < 7; n++) await keepDrillRound(later(learner, n), { ...ROUND, right: n });
    await keepDrillRound(learner, { ...ROUND, drill: "find-largest", gauges: ["depth-gauge"], asked: 3, right: 3 });
    const read = await readDrills(learner);
    expect(read.ok && read.rounds["read-scale"].map(({ right }) => right)).toEqual([6, 5, 4, 3, 2]);
    expect(read.ok && read.rounds["find-largest"]).toHaveLength(1);
    expect(await database().drillRound.count(), "all are kept").toBe(8);
  });

  test.each([
    [{ ...ROUND, right: 11 }, "right"],
    [{ ...ROUND, asked: 1000, right: 1000 }, "asked"],
    [{ ...ROUND, gauges: ["feeler"] }, "gauges[0]"],
    [{ ...ROUND, medianError: "none" }, "medianError"],
    [{ ...ROUND, userId: "other" }, ""],
    [null, ""],
  ])("that is not as it should be is refused and not kept: %j", async (input, path) => {
    const { learner } = await openTestWorkshop();
    expect(await keepDrillRound(learner, input)).toMatchObject({
      ok: false,
      code: "invalid-input",
      problem: { path, wanted: expect.any(String) },
    });
    expect(await database().drillRound.count()).toBe(0);
  });

  test("goes with the account it belongs to", async () => {
    const { learner } = await openTestWorkshop();
    await keepDrillRound(learner, ROUND);
    await database().user.delete({ where: { id: "learner" } });
    expect(await database().drillRound.count()).toBe(0);
  });
});
