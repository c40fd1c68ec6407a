import { describe, expect, test } from "vitest";
import { database } from "@/prisma/client";
import {
  countStock,
  orderSpecimen,
  putBackInterruptedOrders,
  readSpecimenProgress,
  takeOrder,
  takeReadySpecimen,
} from "@/prisma/stores/specimens";
import { freshDatabaseForEachTest } from "../../support/database";
import { makeSpecimen, NOW, openPractice, openTestWorkshop } from "./workshop";

freshDatabaseForEachTest();

describe("the shelf", () => {
  test("never gives the same specimen to two who ask at once", async () => {
    for (const id of ["a", "b", "c"]) await makeSpecimen(id, false);
    const taken = await Promise.all(Array.from({ length: 5 }, () => takeReadySpecimen("butt")));
    expect(taken.filter((id) => id !== null).sort()).toEqual(["a", "b", "c"]);
    expect(taken.filter((id) => id === null)).toHaveLength(2);
  });

  test("keeps what somebody has reserved for them", async () => {
    await makeSpecimen("mine", true);
    expect(await takeReadySpecimen("butt")).toBeNull();
    expect(await readSpecimenProgress("mine")).toMatchObject({ state: "taken" });
    expect(await countStock("butt")).toBe(0);
  });
});

describe("orders", () => {
  test("somebody who waits comes before the stock", async () => {
    await orderSpecimen({ id: "stock", kind: "butt", seed: "1", asked: null }, "stock", NOW);
    await orderSpecimen({ id: "waited-for", kind: "butt", seed: "2", asked: null }, "awaited", NOW);
    expect(await takeOrder()).toEqual({ id: "waited-for", kind: "butt", seed: "2", isAwaited: true, asked: null });
    expect(await takeOrder()).toEqual({ id: "stock", kind: "butt", seed: "1", isAwaited: false, asked: null });
    expect(await takeOrder()).toBeNull();
  });

  test("that a stopped server left half done are made again", async () => {
    await orderSpecimen({ id: "half", kind: "butt", seed: "1", asked: null }, "stock", NOW);
    await takeOrder();
    await putBackInterruptedOrders();
    expect(await takeOrder()).toMatchObject({ id: "half" });
  });

  test("a seed is never used twice", async () => {
    await orderSpecimen({ id: "one", kind: "butt", seed: "same", asked: null }, "stock", NOW);
    await expect(orderSpecimen({ id: "two", kind: "butt", seed: "same", asked: null }, "stock", NOW)).rejects.toThrow();
  });
});

test("the database refuses a practice of nobody, and takes a person's practices away with them", async () => {
  const { learner } = await openTestWorkshop();
  await openPractice(learner);
  const row = await database().practice.findFirstOrThrow({
    omit: { truth: true, criteria: true, questions: true, handedInAt: true },
  });
  await expect(
    database().practice.create({ data: { ...row, id: "orphan", userId: "nobody", report: {} } }),
  ).rejects.toThrow();
  await database().user.delete({ where: { id: "learner" } });
  expect(await database().practice.count()).toBe(0);
});
