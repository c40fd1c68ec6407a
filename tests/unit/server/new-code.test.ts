import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { expect, test } from "vitest";
import { isPassword } from "@/app/_server/passwords";
import { newCodeForTutor } from "@/app/_server/use-cases/new-code-for-tutor";
import { database } from "@/prisma/client";
import { readPasswordHash } from "@/prisma/stores/people";
import { freshDatabaseForEachTest } from "../../support/database";
import { clock, NOW, openTestWorkshop } from "./workshop";

freshDatabaseForEachTest();

const command = (args: readonly string[], env: object = {}) =>
  spawnSync(process.execPath, ["--import", "tsx", "seed/commands/new-code.ts", ...args], {
    env: { ...process.env, ...env },
    encoding: "utf8",
  });

test("a tutor's new code takes the place of the password, signs out, and is in the audit without the code", async () => {
  await openTestWorkshop();
  const expiresAt = new Date(NOW.getTime() + 1e6);
  await database().session.create({ data: { id: "s", token: "s", userId: "tutor", expiresAt } });
  const made = await newCodeForTutor({ clock }, " Tutor ");
  if (!made.ok) throw new Error(made.code);
  expect(made.slip).toMatchObject({ name: "Name of tutor", signInName: "tutor" });
  const stored = (await readPasswordHash("tutor")) ?? "";
  expect([await isPassword(stored, made.slip.code), await isPassword(stored, "long enough 1")]).toEqual([true, false]);
  expect(await database().user.findUnique({ where: { id: "tutor" } })).toMatchObject({ hasOneTimeCode: true });
  expect(await database().session.count()).toBe(0);
  const entries = await database().auditEntry.findMany();
  expect(entries).toMatchObject([
    { at: NOW, actorId: "operator", act: "new-code", subjectKind: "person", subjectId: "tutor" },
  ]);
  expect(JSON.stringify(entries)).not.toContain(made.slip.code);
});

test("nobody else gets one: not a learner, not a name that nobody has", async () => {
  await openTestWorkshop();
  const before = await readPasswordHash("learner");
  for (const name of ["learner", "nobody", ""]) {
    expect(await newCodeForTutor({ clock }, name)).toEqual({ ok: false, code: "no-such-tutor" });
  }
  expect(await readPasswordHash("learner")).toBe(before);
  expect(await database().auditEntry.count()).toBe(0);
});

test("the command prints a code that works, and says what is wrong otherwise", async () => {
  await openTestWorkshop();
  const done = command(["--sign-in-name", "tutor"]);
  expect(done.stderr).toBe("");
  expect(done.status).toBe(0);
  const code = /^ {2}([a-z0-9]{4}-[a-z0-9]{4}-[a-z0-9]{4})$/m.exec(done.stdout)?.[1] ?? "";
  expect(await isPassword((await readPasswordHash("tutor")) ?? "", code)).toBe(true);

  const unknown = command(["--sign-in-name", "tutr"]);
  expect([unknown.status, unknown.stdout]).toEqual([2, ""]);
  expect(unknown.stderr).toContain("no tutor here signs in as tutr, so nothing was changed");
  expect(command([]).stderr).toMatch(/^--sign-in-name: the name that the tutor signs in with/);

  const path = "/tmp/no-such-folder/toeline.db";
  const nowhere = command(["--sign-in-name", "tutor"], { DATABASE_URL: `file:${path}` });
  expect([nowhere.status, existsSync(path)]).toEqual([2, false]);
  expect(nowhere.stderr).toContain(`there is no database at ${path}`);
});
