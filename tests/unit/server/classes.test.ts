import { beforeEach, describe, expect, test } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { isPassword } from "@/app/_server/passwords";
import { addLearner, addTutor } from "@/app/_server/use-cases/add-person";
import { moveMember, removeMember, setTimeFactor } from "@/app/_server/use-cases/class-members";
import { addClassTutor, removeClassTutor } from "@/app/_server/use-cases/class-tutors";
import { archiveClass, changeClass, changeJoinCode, makeClass } from "@/app/_server/use-cases/edit-class";
import { enrolList, previewList } from "@/app/_server/use-cases/enrol-list";
import { JOIN_CODE_TRIES, joinClass } from "@/app/_server/use-cases/join-class";
import { joinWorkshop } from "@/app/_server/use-cases/join-workshop";
import { listClasses } from "@/app/_server/use-cases/list-classes";
import { makeCodes } from "@/app/_server/use-cases/make-codes";
import { readClass } from "@/app/_server/use-cases/read-class";
import { readDesk } from "@/app/_server/use-cases/read-desk";
import { database } from "@/prisma/client";
import { createClass, enrol, listMembers, setJoinCode } from "@/prisma/stores/classes";
import { createPerson, readPasswordHash } from "@/prisma/stores/people";
import { readWorkshop, updateWorkshop } from "@/prisma/stores/workshops";
import { freshDatabaseForEachTest } from "../../support/database";
import { NOW, openTestWorkshop } from "./workshop";

freshDatabaseForEachTest();

const later = (seconds: number) => new Date(NOW.getTime() + seconds * 1000);
const at = (caller: Caller, seconds: number): Caller => ({ ...caller, clock: () => later(seconds) });

let tutor: Caller;
let colleague: Caller;
let learner: Caller;

/** The tutor's class "spring" has the learner in it; "autumn" is empty; the colleague's class "theirs" has "far" in it. */
beforeEach(async () => {
  const people = await openTestWorkshop();
  ({ tutor, learner } = people);
  for (const [id, role] of [
    ["colleague", "tutor"],
    ["far", "learner"],
  ] as const) {
    const account = { id, role, name: `Name of ${id}`, signInName: id, passwordHash: "", hasOneTimeCode: false };
    await createPerson(account, NOW);
  }
  colleague = { ...tutor, actor: { id: "colleague", name: "Name of colleague", role: "tutor", hasOneTimeCode: false } };
  await createClass({ id: "spring", name: "Spring", notes: "" }, "tutor", NOW);
  await createClass({ id: "autumn", name: "Autumn", notes: "" }, "tutor", NOW);
  await createClass({ id: "theirs", name: "Theirs", notes: "" }, "colleague", NOW);
  await enrol({ groupId: "spring", accounts: [], learnerIds: ["learner"] }, NOW);
  await enrol({ groupId: "theirs", accounts: [], learnerIds: ["far"] }, NOW);
});

const membersOf = async (id: string) =>
  (await listMembers(id)).filter(({ leftAt }) => leftAt === null).map(({ person }) => person.signInName);

describe("a class", () => {
  test("is made with its first tutor, and others are added; the last one stays", async () => {
    const made = await makeClass(tutor, { name: "  Winter ", notes: "Bay 2" });
    if (!made.ok) throw new Error(made.code);
    expect(await readClass(tutor, made.id)).toMatchObject({
      group: { name: "Winter", notes: "Bay 2", joinCode: null, tutors: [{ id: "tutor" }], memberCount: 0 },
      otherTutors: [{ id: "colleague" }],
    });
    expect(await readClass(colleague, made.id)).toEqual({ ok: false, code: "no-such-class" });
    expect(await removeClassTutor(tutor, made.id, "tutor")).toEqual({ ok: false, code: "last-tutor" });
    expect(await addClassTutor(tutor, made.id, "learner")).toEqual({ ok: false, code: "no-such-tutor" });
    for (let twice = 0; twice < 2; twice++) {
      expect(await addClassTutor(at(tutor, 1), made.id, "colleague")).toEqual({ ok: true });
    }
    expect(await readClass(colleague, made.id)).toMatchObject({
      group: { tutors: [{ id: "tutor" }, { id: "colleague" }] },
    });
    expect(await removeClassTutor(colleague, made.id, "tutor")).toEqual({ ok: true });
    expect(await readClass(tutor, made.id)).toEqual({ ok: false, code: "no-such-class" });
  });

  test.each([
    ["name", { name: " ", notes: "" }],
    ["name", { name: "x".repeat(61), notes: "" }],
    ["notes", { name: "Winter", notes: "x".repeat(2001) }],
  ])("is not made or changed with a bad %s", async (field, input) => {
    const problem = { ok: false, code: "invalid-input", fields: { [field]: expect.any(String) } };
    expect(await makeClass(tutor, input)).toMatchObject(problem);
    expect(await changeClass(tutor, "spring", input)).toMatchObject(problem);
    expect(await readClass(tutor, "spring")).toMatchObject({ group: { name: "Spring" } });
  });

  test("that is archived is read as it was, changed by nobody and taken back", async () => {
    await changeJoinCode(tutor, "spring", true);
    await setTimeFactor(tutor, "spring", "learner", 1.5);
    expect(await archiveClass(at(tutor, 9), "spring", true)).toEqual({ ok: true });
    expect(await readClass(tutor, "spring")).toMatchObject({
      group: { archivedAt: later(9), joinCode: null },
      members: [{ person: { id: "learner" }, timeFactor: 1.5 }],
    });
    const refused = { ok: false, code: "class-archived" };
    for (const use of [
      changeClass(tutor, "spring", { name: "Other", notes: "" }),
      changeJoinCode(tutor, "spring", true),
      removeMember(tutor, "spring", "learner"),
      moveMember(tutor, "spring", "learner", "autumn"),
      moveMember(tutor, "autumn", "learner", "spring"),
      setTimeFactor(tutor, "spring", "learner", 2),
      previewList(tutor, "spring", "Tomo Reyes"),
      enrolList(tutor, "spring", "Tomo Reyes", []),
      addClassTutor(tutor, "spring", "colleague"),
      removeClassTutor(tutor, "spring", "tutor"),
    ]) {
      expect(await use).toEqual(refused);
    }
    expect(await listClasses(tutor)).toMatchObject({ inUse: [{ id: "autumn" }], archived: [{ id: "spring" }] });
    // the second time changes nothing, not even since when
    await archiveClass(at(tutor, 99), "spring", true);
    expect(await readClass(tutor, "spring")).toMatchObject({ group: { archivedAt: later(9) } });
    await archiveClass(tutor, "spring", false);
    expect(await setTimeFactor(tutor, "spring", "learner", 2)).toEqual({ ok: true });
  });
});

describe("a member", () => {
  test("is moved with the time factor, and only into a class of the same tutor", async () => {
    await setTimeFactor(tutor, "spring", "learner", 1.25);
    expect(await moveMember(tutor, "spring", "learner", "theirs")).toEqual({ ok: false, code: "no-such-class" });
    expect(await moveMember(tutor, "spring", "far", "autumn")).toEqual({ ok: false, code: "no-such-learner" });
    expect(await moveMember(tutor, "spring", "learner", "spring")).toEqual({ ok: false, code: "no-such-learner" });
    expect(await membersOf("spring")).toEqual(["learner"]);
    expect(await moveMember(at(tutor, 5), "spring", "learner", "autumn")).toEqual({ ok: true, into: "Autumn" });
    expect(await membersOf("spring")).toEqual([]);
    expect(await listMembers("autumn")).toMatchObject([
      { person: { id: "learner" }, timeFactor: 1.25, joinedAt: later(5), leftAt: null },
    ]);
    expect(await readClass(tutor, "spring")).toMatchObject({ left: [{ id: "learner", leftAt: later(5) }] });
  });

  test("who is taken out keeps the account, and is a member again when added again", async () => {
    expect(await removeMember(at(tutor, 5), "spring", "learner")).toEqual({ ok: true });
    expect(await removeMember(tutor, "spring", "learner")).toEqual({ ok: false, code: "no-such-learner" });
    expect(await database().user.count({ where: { id: "learner" } })).toBe(1);
    await enrol({ groupId: "spring", accounts: [], learnerIds: ["learner"] }, later(7));
    expect(await listMembers("spring")).toMatchObject([{ joinedAt: later(7), leftAt: null }]);
    await enrol({ groupId: "spring", accounts: [], learnerIds: ["learner"] }, later(8));
    expect(await listMembers("spring"), "a member stays as they are").toMatchObject([{ joinedAt: later(7) }]);
  });

  test.each([0.5, 6, 1.255, Number.NaN, "1.5", undefined])("gets no time factor %s", async (factor) => {
    expect(await setTimeFactor(tutor, "spring", "learner", factor)).toMatchObject({
      code: "invalid-input",
      fields: { timeFactor: expect.stringMatching(/1 to 5/) },
    });
    expect(await listMembers("spring")).toMatchObject([{ timeFactor: 1 }]);
  });
});

describe("a list", () => {
  const LIST = "Name;Sign-in name\nTomo Reyes\nName of other\nName of learner;learner\nIntruder;far\nNo;x";

  test("is previewed without doing anything, then done as it was shown", async () => {
    const before = await database().user.count();
    const preview = await previewList(tutor, "spring", LIST);
    if (!preview.ok) throw new Error(preview.code);
    expect(preview.rows.map(({ outcome, signInName }) => [outcome, signInName])).toEqual([
      ["new", "tomo.reyes"],
      ["added", "other"],
      ["member", "learner"],
      ["invalid", "far"],
      ["invalid", "x"],
    ]);
    expect(await database().user.count()).toBe(before);
    const done = await enrolList(tutor, "spring", LIST, preview.rows);
    if (!done.ok) throw new Error(done.code);
    expect(done).toMatchObject({ added: 1, slips: [{ name: "Tomo Reyes", signInName: "tomo.reyes" }] });
    expect((await membersOf("spring")).sort()).toEqual(["learner", "other", "tomo.reyes"]);
    const made = await database().user.findUniqueOrThrow({ where: { username: "tomo.reyes" } });
    expect(made).toMatchObject({ role: "learner", hasOneTimeCode: true });
    expect(await isPassword((await readPasswordHash(made.id)) ?? "", done.slips[0].code)).toBe(true);
    // the very same once more finds another state and does nothing
    expect(await enrolList(tutor, "spring", LIST, preview.rows)).toMatchObject({ code: "list-changed" });
    expect(await database().user.count()).toBe(before + 1);
  });

  test("does nothing at all where one row comes out otherwise than it was shown", async () => {
    const list = "Tomo Reyes;tomo\nKim Duarte;kim";
    const preview = await previewList(tutor, "spring", list);
    if (!preview.ok) throw new Error(preview.code);
    await addLearner(colleague, { name: "Kim Abara", signInName: "kim" });
    const refused = await enrolList(tutor, "spring", list, preview.rows);
    expect(refused).toMatchObject({
      code: "list-changed",
      rows: [{ outcome: "new" }, { outcome: "invalid", field: "signInName" }],
    });
    expect(await membersOf("spring")).toEqual(["learner"]);
    expect(await database().user.count({ where: { username: "tomo" } })).toBe(0);
  });

  test("makes no account where the database refuses one of them", async () => {
    const account = (id: string, signInName: string) =>
      ({ id, signInName, name: id, role: "learner", passwordHash: "", hasOneTimeCode: true }) as const;
    const accounts = [account("one", "one"), account("two", "far")];
    expect(await enrol({ groupId: "spring", accounts, learnerIds: ["other"] }, NOW)).toBe(false);
    expect(await membersOf("spring")).toEqual(["learner"]);
    expect(await database().user.count({ where: { id: "one" } })).toBe(0);
  });

  test.each([
    ["", /no name/],
    ["Name\n", /no name/],
    ["x\n".repeat(201), /at most 200/],
    ["x".repeat(100_001), /too long/],
    [undefined, /./],
  ])("that is unusable is refused at its field (%#)", async (list, problem) => {
    const refused = await previewList(tutor, "spring", list);
    expect(refused).toMatchObject({ code: "invalid-input", fields: { list: expect.stringMatching(problem) } });
  });
});

describe("a join code", () => {
  const newcomer = { name: "Kim Duarte", signInName: "kim", password: "welding rod", confirmation: "welding rod" };
  const codeOf = async (id: string) =>
    (await database().classGroup.findUniqueOrThrow({ where: { id } })).joinCode ?? "";

  test("lets a learner in, however it is typed, until it is renewed or switched off", async () => {
    await changeJoinCode(tutor, "autumn", true);
    const first = await codeOf("autumn");
    expect(await joinClass(learner, ` ${first.toLowerCase().slice(0, 3)}-${first.slice(3)}`)).toEqual({
      ok: true,
      name: "Autumn",
    });
    expect(await membersOf("autumn")).toEqual(["learner"]);
    expect(await membersOf("spring"), "and stays in the other class").toEqual(["learner"]);
    await changeJoinCode(tutor, "autumn", true);
    expect(await codeOf("autumn")).not.toBe(first);
    expect(await joinClass(learner, first)).toEqual({ ok: false, code: "no-such-join-code" });
    await changeJoinCode(tutor, "autumn", false);
    expect(await codeOf("autumn")).toBe("");
    expect(await joinClass(learner, "KMT4R")).toMatchObject({
      code: "invalid-input",
      fields: { joinCode: expect.any(String) },
    });
  });

  test("never belongs to two classes", async () => {
    expect(await setJoinCode("spring", "KMT4RW")).toBe(true);
    expect(await setJoinCode("autumn", "KMT4RW")).toBe(false);
  });

  test("makes an account and a member together, also where accounts of one's own are switched off", async () => {
    await updateWorkshop({ ...(await readWorkshop())!, allowsOwnAccounts: false });
    const { clock } = tutor;
    expect(await joinWorkshop({ clock }, newcomer)).toEqual({ ok: false, code: "own-accounts-off" });
    expect(await joinWorkshop({ clock }, { ...newcomer, joinCode: "KMT4RW" })).toEqual({
      ok: false,
      code: "no-such-join-code",
    });
    expect(await database().user.count({ where: { username: "kim" } })).toBe(0);
    await setJoinCode("autumn", "KMT4RW");
    expect(await joinWorkshop({ clock }, { ...newcomer, joinCode: "kmt 4rw" })).toEqual({
      ok: true,
      signInName: "kim",
    });
    expect(await membersOf("autumn")).toEqual(["kim"]);
    const taken = { ...newcomer, signInName: "far", joinCode: "KMT4RW" };
    expect(await joinWorkshop({ clock }, taken)).toEqual({ ok: false, code: "sign-in-name-taken" });
    expect(await membersOf("autumn")).toEqual(["kim"]);
  });

  test("is not guessed: wrong ones are counted by address for a minute, right ones are not", async () => {
    await setJoinCode("autumn", "KMT4RW");
    const from = (address: string, seconds = 0): Caller => ({ ...at(learner, seconds), address });
    for (let n = 0; n < JOIN_CODE_TRIES + 5; n++) {
      expect(await joinClass(from("10.0.0.1"), "KMT4RW"), "a class behind one address").toMatchObject({ ok: true });
    }
    for (let n = 0; n < JOIN_CODE_TRIES; n++) {
      expect(await joinClass(from("10.0.0.1"), "KMT4RX")).toEqual({ ok: false, code: "no-such-join-code" });
    }
    const { clock } = tutor;
    expect(await joinClass(from("10.0.0.1", 1), "KMT4RW")).toEqual({ ok: false, code: "too-many-codes" });
    expect(await joinWorkshop({ clock, address: "10.0.0.1" }, { ...newcomer, joinCode: "KMT4RW" })).toEqual({
      ok: false,
      code: "too-many-codes",
    });
    expect(await joinClass(from("10.0.0.2", 1), "KMT4RW")).toMatchObject({ ok: true });
    expect(await joinClass(from("10.0.0.1", 62), "KMT4RW")).toMatchObject({ ok: true });
  });
});

describe("one-time codes", () => {
  test("replace passwords and end sessions, for all that are chosen or for none", async () => {
    const expiresAt = later(9999);
    for (const userId of ["learner", "other"]) {
      await database().session.create({ data: { id: `s-${userId}`, token: `t-${userId}`, userId, expiresAt } });
    }
    expect(await makeCodes(tutor, ["learner", "far"])).toEqual({ ok: false, code: "no-such-learner" });
    expect(await database().session.count()).toBe(2);
    expect(await isPassword((await readPasswordHash("learner")) ?? "", "long enough 1")).toBe(true);

    const made = await makeCodes(tutor, ["learner", "learner"]);
    if (!made.ok) throw new Error(made.code);
    expect(made.slips).toMatchObject([{ name: "Name of learner", signInName: "learner" }]);
    const stored = (await readPasswordHash("learner")) ?? "";
    expect(await isPassword(stored, made.slips[0].code)).toBe(true);
    expect(await isPassword(stored, "long enough 1")).toBe(false);
    expect(await database().session.findMany({ select: { userId: true } })).toEqual([{ userId: "other" }]);
    expect(await database().user.count({ where: { hasOneTimeCode: true } })).toBe(1);
    // nothing that is stored anywhere has the code in clear text
    const everything = JSON.stringify([await database().user.findMany(), await database().account.findMany()]);
    expect(everything).not.toContain(made.slips[0].code);
  });

  test.each([[[]], [undefined], ["learner"], [[1]], [Array(201).fill("learner")]])(
    "are not made for %j",
    async (learners) => {
      expect(await makeCodes(tutor, learners)).toMatchObject({ code: "invalid-input" });
    },
  );

  test("are how another tutor comes in, too", async () => {
    const made = await addTutor(tutor, { name: "Ada Brandt", signInName: "ada" });
    expect(made).toMatchObject({
      ok: true,
      slip: { signInName: "ada", code: expect.stringMatching(/^\w{4}-\w{4}-\w{4}$/) },
    });
    const row = await database().user.findUniqueOrThrow({ where: { username: "ada" } });
    expect(row).toMatchObject({ role: "tutor", hasOneTimeCode: true });
  });
});

test("the desk shows a tutor the learners of their classes and those of none, and no others", async () => {
  const desk = await readDesk(tutor);
  expect(desk.ok && desk.learners.map(({ person }) => person.id)).toEqual(["learner", "other"]);
  expect(desk.ok && desk.withoutClass.map(({ person }) => person.id)).toEqual(["other"]);
  const other = await readDesk(colleague);
  expect(other.ok && other.learners.map(({ person }) => person.id)).toEqual(["far", "other"]);
  expect(other.ok && other.classes.map(({ id }) => id)).toEqual(["theirs"]);
});
