import { describe, expect, test } from "vitest";
import { NEW_LEARNER } from "@/lib/progress";
import { database } from "@/prisma/client";
import { storeNextPiece } from "@/prisma/stores/next-pieces";
import { createPerson } from "@/prisma/stores/people";
import {
  countStock,
  hurrySpecimen,
  orderSpecimen,
  putBackInterruptedOrders,
  readSpecimenProgress,
  type Turn,
  takeOrder,
  takeReadySpecimen,
  wantedStock,
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

test("the stock of plates grows with the learners there are, and has an end", async () => {
  await openTestWorkshop();
  const add = async (from: number, to: number) => {
    for (let n = from; n <= to; n++) {
      const person = {
        id: `l${n}`,
        name: `L ${n}`,
        signInName: `l${n}`,
        role: "learner",
        hasOneTimeCode: false,
      } as const;
      await createPerson({ ...person, passwordHash: "none" }, NOW);
    }
  };
  expect([await wantedStock("butt"), await wantedStock("fillet")]).toEqual([1, 1]);
  await add(3, 9);
  expect([await wantedStock("butt"), await wantedStock("fillet")]).toEqual([3, 1]);
  await add(10, 40);
  expect(await wantedStock("butt")).toBe(8);
});

describe("orders", () => {
  test("somebody who waits comes before the stock", async () => {
    await orderSpecimen({ id: "stock", kind: "butt", seed: "1", asked: null }, "stock", NOW);
    await orderSpecimen({ id: "waited-for", kind: "butt", seed: "2", asked: null }, "awaited", NOW);
    const order = { kind: "butt", asked: null };
    expect(await takeOrder()).toEqual({ ...order, id: "waited-for", seed: "2", isAwaited: true, turn: null });
    expect(await takeOrder()).toEqual({ ...order, id: "stock", seed: "1", isAwaited: false, turn: "stock" });
    expect(await takeOrder()).toBeNull();
  });

  test("made ahead take turns between sittings, learners for whom one was chosen, and the stock, the oldest of each first", async () => {
    await openTestWorkshop();
    const order = (id: string, orderedFor: "ahead" | "stock" | "drills", second: number) =>
      orderSpecimen({ id, kind: "butt", seed: id, asked: null }, orderedFor, new Date(NOW.getTime() + second * 1000));
    await order("drill", "drills", 0);
    for (const n of [1, 2, 3]) await order(`sat ${n}`, "ahead", n);
    for (const [n, userId] of ["learner", "other"].entries()) {
      await order(`chosen ${n}`, "ahead", 4 + n);
      const rest = { section: "plate", chosenAt: NOW, sections: 0, learner: NEW_LEARNER } as const;
      await storeNextPiece({ specimenId: `chosen ${n}`, userId, ...rest }, null);
    }
    await order("shelf", "stock", 9);
    const taken: string[] = [];
    let after: Turn | null = null;
    for (let next = await takeOrder(); next; next = await takeOrder({ after })) {
      taken.push(next.id);
      if (next.turn) after = next.turn;
    }
    expect(taken).toEqual(["sat 1", "chosen 0", "shelf", "sat 2", "chosen 1", "sat 3", "drill"]);
  });

  test("ahead, waiting or being made, become awaited once somebody comes", async () => {
    for (const id of ["first", "second"])
      await orderSpecimen({ id, kind: "butt", seed: id, asked: null }, "ahead", new Date(NOW.getTime()));
    const making = await takeOrder();
    for (const id of ["first", "second"]) expect(await hurrySpecimen(id)).toBe(true);
    expect(await takeOrder({ isAwaitedOnly: true })).toMatchObject({ isAwaited: true, turn: null });
    // and is so still where the server was stopped over it
    await putBackInterruptedOrders();
    expect(await database().specimen.findUnique({ where: { id: making?.id } })).toMatchObject({ isAwaited: true });
    await makeSpecimen("made");
    expect(await hurrySpecimen("made")).toBe(false);
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
