import { describe, expect, test } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { hashPassword, isPassword } from "@/app/_server/passwords";
import { chooseOwnPassword } from "@/app/_server/use-cases/choose-own-password";
import { archiveClass } from "@/app/_server/use-cases/edit-class";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { endOwnSessions, listOwnSessions } from "@/app/_server/use-cases/own-sessions";
import { readLearner } from "@/app/_server/use-cases/read-learner";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { signOutLearner } from "@/app/_server/use-cases/sign-out-learner";
import { database } from "@/prisma/client";
import { createClass, enrol, leaveClass, setJoinCode } from "@/prisma/stores/classes";
import { createPerson, readPasswordHash, replaceByOneTimeCodes } from "@/prisma/stores/people";
import { freshDatabaseForEachTest } from "../../support/database";
import { CAP_ONLY, NOW, openPractice, openTestWorkshop, visitor } from "./workshop";

freshDatabaseForEachTest();

/**
 * Everybody who could ask about the class "spring" of the tutor and the learner in it, who has handed in "practice". The
 * newcomer is another learner of it who has not yet chosen a password.
 */
async function everybody() {
  const { tutor, learner, other } = await openTestWorkshop();
  const account = { name: "Name", passwordHash: "", hasOneTimeCode: false };
  await createPerson({ ...account, id: "foreign", role: "tutor", signInName: "foreign" }, NOW);
  await createPerson(
    { ...account, id: "newcomer", role: "learner", signInName: "newcomer", hasOneTimeCode: true },
    NOW,
  );
  await createClass({ id: "spring", name: "Spring", notes: "" }, "tutor", NOW);
  await createClass({ id: "autumn", name: "Autumn", notes: "" }, "tutor", NOW);
  await createClass({ id: "theirs", name: "Theirs", notes: "" }, "foreign", NOW);
  await enrol({ groupId: "spring", accounts: [], learnerIds: ["learner", "newcomer"] }, NOW);
  await enrol({ groupId: "theirs", accounts: [], learnerIds: ["other"] }, NOW);
  await setJoinCode("autumn", "KMT4RW");
  await handIn(learner, await openPractice(learner), { sequence: 1, report: CAP_ONLY });
  const callerOf = (id: string, role: "tutor" | "learner", hasOneTimeCode = false): Caller => ({
    ...tutor,
    actor: { id, name: "Name", role, hasOneTimeCode },
  });
  return {
    nobody: visitor,
    newcomer: callerOf("newcomer", "learner", true),
    other,
    foreign: callerOf("foreign", "tutor"),
    learner,
    tutor,
  };
}
describe("a learner changes hands", () => {
  test("out of every class every tutor works with them, in another class only its own do", async () => {
    const { tutor, foreign } = await everybody();
    const isTheirs = async (caller: Caller) => (await readMarkSheet(caller, "practice")).ok;
    expect([await isTheirs(tutor), await isTheirs(foreign)]).toEqual([true, false]);
    await leaveClass("spring", "learner", NOW);
    expect([await isTheirs(tutor), await isTheirs(foreign)]).toEqual([true, true]);
    await enrol({ groupId: "theirs", accounts: [], learnerIds: ["learner"] }, NOW);
    expect([await isTheirs(tutor), await isTheirs(foreign)]).toEqual([false, true]);
    await enrol({ groupId: "spring", accounts: [], learnerIds: ["learner"] }, NOW);
    expect([await isTheirs(tutor), await isTheirs(foreign)]).toEqual([true, true]);
  });

  test("an archived class keeps its learners to its own tutors", async () => {
    const { tutor, foreign } = await everybody();
    await archiveClass(tutor, "spring", true);
    expect(await readLearner(tutor, "learner")).toMatchObject({ ok: true });
    expect(await readLearner(foreign, "learner")).toEqual({ ok: false, code: "no-such-learner" });
  });

  test("nobody reads what another tutor practises", async () => {
    const { tutor, foreign } = await everybody();
    await handIn(foreign, await openPractice(foreign, "own"), { sequence: 1, report: CAP_ONLY });
    expect(await readMarkSheet(foreign, "own")).toMatchObject({ ok: true });
    expect(await readMarkSheet(tutor, "own")).toEqual({ ok: false, code: "no-such-practice" });
  });
});

describe("a password of one's own", () => {
  const chosen = { password: "torch and mirror", confirmation: "torch and mirror" };

  test("takes the place of the code, ends other sessions, and is asked of nobody else", async () => {
    const { newcomer, learner, nobody } = await everybody();
    const code = "abcd-efgh-2345";
    await replaceByOneTimeCodes([{ userId: "newcomer", passwordHash: await hashPassword(code) }], NOW);
    const expiresAt = new Date(NOW.getTime() + 1e6);
    for (const id of ["this", "that"]) {
      await database().session.create({ data: { id, token: id, userId: "newcomer", expiresAt } });
    }
    const here = { ...newcomer, sessionId: "this" };
    expect(await chooseOwnPassword(here, { password: code, confirmation: code })).toEqual({
      ok: false,
      code: "code-as-password",
    });
    expect(await chooseOwnPassword(here, { ...chosen, confirmation: "x" })).toMatchObject({
      code: "invalid-input",
      fields: { confirmation: expect.any(String) },
    });
    expect(await chooseOwnPassword(here, { password: "short", confirmation: "short" })).toMatchObject({
      fields: { password: expect.any(String) },
    });
    expect(await database().user.findUnique({ where: { id: "newcomer" } })).toMatchObject({ hasOneTimeCode: true });
    expect(await chooseOwnPassword(here, chosen)).toEqual({ ok: true });
    expect(await database().user.findUnique({ where: { id: "newcomer" } })).toMatchObject({ hasOneTimeCode: false });
    const stored = (await readPasswordHash("newcomer")) ?? "";
    expect([await isPassword(stored, code), await isPassword(stored, chosen.password)]).toEqual([false, true]);
    expect(await database().session.findMany({ select: { id: true } })).toEqual([{ id: "this" }]);
    expect(await chooseOwnPassword(learner, chosen)).toEqual({ ok: false, code: "not-permitted" });
    expect(await chooseOwnPassword(nobody, chosen)).toEqual({ ok: false, code: "not-signed-in" });
  });
});

describe("sessions", () => {
  test("are listed and ended by whoever has them, and a tutor ends all of a learner's", async () => {
    const { learner, other, tutor } = await everybody();
    const add = (id: string, userId: string, hours: number) =>
      database().session.create({
        data: {
          id,
          token: id,
          userId,
          userAgent: `agent ${id}`,
          createdAt: new Date(NOW.getTime() - hours * 3_600_000),
          expiresAt: new Date(NOW.getTime() + (id === "over" ? -1 : 1) * 3_600_000),
        },
      });
    await add("one", "learner", 1);
    await add("two", "learner", 2);
    await add("three", "learner", 3);
    await add("over", "learner", 4);
    await add("other", "other", 1);
    const here = { ...learner, sessionId: "two" };
    const listed = await listOwnSessions(here);
    expect(listed.ok && listed.sessions.map(({ id, isThisOne, userAgent }) => [id, isThisOne, userAgent])).toEqual([
      ["one", false, "agent one"],
      ["two", true, "agent two"],
      ["three", false, "agent three"],
    ]);
    expect(await endOwnSessions(here, "other"), "another's").toEqual({ ok: false, code: "no-such-session" });
    expect(await endOwnSessions(here, "one")).toEqual({ ok: true });
    expect(await endOwnSessions(here, null)).toEqual({ ok: true });
    const left = async () => (await database().session.findMany({ orderBy: { id: "asc" } })).map(({ id }) => id);
    expect(await left()).toEqual(["other", "two"]);
    expect(await signOutLearner(tutor, "learner")).toMatchObject({ ok: true, ended: 1 });
    expect(await left()).toEqual(["other"]);
    expect(await listOwnSessions(other)).toMatchObject({ sessions: [{ id: "other" }] });
  });
});

test("a tutor reads learners only, without what they are still writing", async () => {
  const { tutor, learner } = await openTestWorkshop();
  await openPractice(learner);
  expect(await readLearner(tutor, "learner")).toMatchObject({ learner: { id: "learner" }, openCount: 1, handedIn: [] });
  for (const id of ["tutor", "nobody", "practice"]) {
    expect(await readLearner(tutor, id)).toEqual({ ok: false, code: "no-such-learner" });
  }
});
