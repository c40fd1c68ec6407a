import { describe, expect, test } from "vitest";
import { isPassword } from "@/app/_server/passwords";
import { joinWorkshop, OWN_ACCOUNTS } from "@/app/_server/use-cases/join-workshop";
import { openDemoWorkshop } from "@/app/_server/use-cases/open-demo-workshop";
import { setUpWorkshop } from "@/app/_server/use-cases/set-up-workshop";
import { database } from "@/prisma/client";
import { readDemoHistory } from "@/prisma/stores/demo-history";
import { readWorkshop, updateWorkshop } from "@/prisma/stores/workshops";
import { freshDatabaseForEachTest } from "../../support/database";
import { clock } from "./workshop";

freshDatabaseForEachTest();

const tutor = {
  workshop: "North Bay",
  name: "Ada Brandt",
  signInName: "Ada.B",
  password: "correct horse",
  confirmation: "correct horse",
};

describe("set up the workshop", () => {
  test("makes one tutor, whose password is kept as an Argon2id hash only", async () => {
    expect(await setUpWorkshop({ clock }, tutor)).toEqual({ ok: true, signInName: "ada.b" });
    const user = await database().user.findFirstOrThrow({ include: { accounts: true } });
    expect(user).toMatchObject({ name: "Ada Brandt", username: "ada.b", role: "tutor" });
    const stored = user.accounts[0].password ?? "";
    expect(stored).toMatch(/^\$argon2id\$/);
    expect(await isPassword(stored, "correct horse")).toBe(true);
    expect(await readWorkshop()).toMatchObject({ name: "North Bay", passMarks: { plate: 70 } });
  });

  test("is done once: whoever comes second changes nothing", async () => {
    await setUpWorkshop({ clock }, tutor);
    const second = await setUpWorkshop({ clock }, { ...tutor, workshop: "Mine now", signInName: "intruder" });
    expect(second).toEqual({ ok: false, code: "already-set-up" });
    expect(await openDemoWorkshop({ clock }, { withPast: false })).toEqual({ ok: false, code: "already-set-up" });
    expect(await database().user.count()).toBe(1);
    expect(await readWorkshop()).toMatchObject({ name: "North Bay" });
  });

  test.each([
    ["password", { password: "nine char", confirmation: "nine char" }],
    ["confirmation", { confirmation: "correct house" }],
    ["signInName", { signInName: "a b" }],
    ["name", { name: "   " }],
    ["workshop", { workshop: "" }],
  ])("says what is wrong with %s", async (field, change) => {
    const refused = await setUpWorkshop({ clock }, { ...tutor, ...change });
    expect(refused).toMatchObject({ ok: false, code: "invalid-input", fields: { [field]: expect.any(String) } });
    expect(await readWorkshop()).toBeNull();
  });
});

describe("the demo workshop", () => {
  test("has one tutor and four learners with passwords of their own that work", async () => {
    const opened = await openDemoWorkshop({ clock }, { withPast: false });
    if (!opened.ok) throw new Error(opened.code);
    expect(opened.accounts.map(({ role }) => role).sort()).toEqual([
      "learner",
      "learner",
      "learner",
      "learner",
      "tutor",
    ]);
    expect(new Set(opened.accounts.map(({ password }) => password)).size).toBe(5);
    for (const { signInName, password } of opened.accounts) {
      const user = await database().user.findUniqueOrThrow({
        where: { username: signInName },
        include: { accounts: true },
      });
      expect(await isPassword(user.accounts[0].password ?? "", password)).toBe(true);
    }
  });
});

describe("the past of a demo workshop", () => {
  test("is noted with the workshop, if there is to be one", async () => {
    expect(await openDemoWorkshop({ clock }, { withPast: true })).toMatchObject({ ok: true });
    expect(await readDemoHistory()).toEqual({ openedAt: clock(), done: 0, total: 0, finishedAt: null });
  });

  test("is not noted for people only", async () => {
    await openDemoWorkshop({ clock }, { withPast: false });
    expect(await readDemoHistory()).toBeNull();
  });

  test("leaves no workshop behind where it cannot be noted: nobody would know its passwords", async () => {
    await database().demoHistory.create({ data: { id: "demo", openedAt: clock() } });
    expect(await openDemoWorkshop({ clock }, { withPast: true })).toMatchObject({ ok: false });
    expect(await readWorkshop()).toBeNull();
    expect(await database().user.count()).toBe(0);
  });
});

describe("make an account of one's own", () => {
  const learner = { name: "Kim Duarte", signInName: "kim", password: "welding rod", confirmation: "welding rod" };

  test("makes a learner, never a tutor", async () => {
    await setUpWorkshop({ clock }, tutor);
    expect(await joinWorkshop({ clock }, { ...learner, role: "tutor" })).toEqual({ ok: true, signInName: "kim" });
    expect(await database().user.findUniqueOrThrow({ where: { username: "kim" } })).toMatchObject({ role: "learner" });
  });

  test("refuses a name that is taken, however it is written", async () => {
    await setUpWorkshop({ clock }, tutor);
    expect(await joinWorkshop({ clock }, { ...learner, signInName: "ADA.B" })).toEqual({
      ok: false,
      code: "sign-in-name-taken",
    });
    expect(await database().account.count()).toBe(1);
  });

  test("is not made by the hundred from one address", async () => {
    await setUpWorkshop({ clock }, tutor);
    const taken = { ...learner, signInName: "ada.b" };
    const from = (address: string, later = 0) => ({ address, clock: () => new Date(clock().getTime() + later) });
    for (let n = 0; n < OWN_ACCOUNTS; n++) {
      expect(await joinWorkshop(from("10.0.0.1"), taken)).toEqual({ ok: false, code: "sign-in-name-taken" });
    }
    expect(await joinWorkshop(from("10.0.0.1"), learner)).toEqual({ ok: false, code: "too-many-accounts" });
    expect(await joinWorkshop(from("10.0.0.2"), learner)).toMatchObject({ ok: true });
    expect(await joinWorkshop(from("10.0.0.1", 61_000), taken)).toEqual({ ok: false, code: "sign-in-name-taken" });
  });

  test("is refused where the tutor has switched it off, and before there is a workshop", async () => {
    expect(await joinWorkshop({ clock }, learner)).toEqual({ ok: false, code: "not-set-up" });
    await setUpWorkshop({ clock }, tutor);
    await updateWorkshop({ name: "North Bay", allowsOwnAccounts: false, passMarks: { plate: 70, fillet: 70 } });
    expect(await joinWorkshop({ clock }, learner)).toEqual({ ok: false, code: "own-accounts-off" });
  });
});
