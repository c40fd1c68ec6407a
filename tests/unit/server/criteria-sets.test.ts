import { describe, expect, test } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { addCriteria } from "@/app/_server/use-cases/add-criteria";
import { archiveCriteria } from "@/app/_server/use-cases/archive-criteria";
import { changeCriteria } from "@/app/_server/use-cases/change-criteria";
import { criteriaById } from "@/app/_server/use-cases/criteria-by-id";
import { listCriteria } from "@/app/_server/use-cases/list-criteria";
import { readOwnCriteria } from "@/app/_server/use-cases/read-criteria-sets";
import { readInHouseCriteria } from "@/app/_server/use-cases/read-in-house-criteria";
import { BUILT_IN_CRITERIA, type Criteria, iso5817, mergeCriteria } from "@/lib/criteria";
import {
  archiveCriteriaSet,
  createCriteriaSet,
  listCriteriaSets,
  readCriteriaSet,
  updateCriteriaSet,
} from "@/prisma/stores/criteria-sets";
import { createPerson } from "@/prisma/stores/people";
import { freshDatabaseForEachTest } from "../../support/database";
import { NOW, openTestWorkshop } from "./workshop";

freshDatabaseForEachTest();

const BASE = "iso-5817-2014-c";
const OWN: Criteria = {
  version: 1,
  id: "in-house-1",
  name: "Deck plates",
  edition: "Workshop sheet 4",
  notes: "",
  rows: [
    {
      id: "own-1",
      clause: "1",
      name: "Undercut",
      types: ["continuous-undercut", "intermittent-undercut"],
      faces: ["cap"],
      ranges: [],
      limit: { kind: "at-most", quantity: "depth", formula: { constant: 0.3 } },
      sums: [],
      evidence: "own",
      notes: "",
    },
  ],
  sections: [],
};
const minutesLater = (minutes: number) => new Date(NOW.getTime() + minutes * 60_000);

/** A workshop in which the tutor has made that set. */
async function withSet() {
  const people = await openTestWorkshop();
  await createCriteriaSet({ basedOn: BASE, own: OWN, ownerId: "tutor", createdAt: NOW });
  return people;
}

describe("criteria that are kept", () => {
  test("come back as they were, with who made them", async () => {
    await withSet();
    expect(await readCriteriaSet("in-house-1")).toEqual({
      id: "in-house-1",
      basedOn: BASE,
      own: OWN,
      madeBy: "Name of tutor",
      createdAt: NOW,
      updatedAt: NOW,
      archivedAt: null,
    });
    expect(await readCriteriaSet("in-house-2")).toBeNull();
  });

  test("an edit is stored only on top of the version that it has seen", async () => {
    await withSet();
    const edit = (name: string, seen: Date, updatedAt: Date) =>
      updateCriteriaSet({ basedOn: null, own: { ...OWN, name }, seen, updatedAt });
    expect(await edit("First", NOW, minutesLater(1))).toBe(true);
    expect(await edit("Second", NOW, minutesLater(2))).toBe(false);
    expect(await readCriteriaSet("in-house-1")).toMatchObject({
      own: { name: "First" },
      basedOn: null,
      updatedAt: minutesLater(1),
    });
    expect(await edit("Second", minutesLater(1), minutesLater(2))).toBe(true);
    expect(await listCriteriaSets()).toMatchObject([{ own: { name: "Second" } }]);
  });

  test("are put away and taken back without another change", async () => {
    await withSet();
    expect(await archiveCriteriaSet("in-house-1", minutesLater(5))).toBe(true);
    expect(await readCriteriaSet("in-house-1")).toMatchObject({
      archivedAt: minutesLater(5),
      updatedAt: NOW,
      own: OWN,
    });
    expect(await archiveCriteriaSet("in-house-1", null)).toBe(true);
    expect(await readCriteriaSet("in-house-1")).toMatchObject({ archivedAt: null });
    expect(await archiveCriteriaSet("in-house-2", NOW)).toBe(false);
  });
});

describe("criteria to choose from", () => {
  test("are for everybody who is signed in", async () => {
    const { learner, tutor } = await withSet();
    const list = await listCriteria(learner);
    expect(list).toEqual(await listCriteria(tutor));
    expect(list.ok && list.groups[0]).toEqual({
      title: "In-house",
      sets: [{ id: "in-house-1", name: "Deck plates", edition: "Workshop sheet 4", origin: "in-house" }],
    });
  });

  test("have every built-in set once, under names that differ", async () => {
    const { learner } = await openTestWorkshop();
    const list = await listCriteria(learner);
    const sets = list.ok ? list.groups.flatMap((group) => group.sets) : [];
    expect(sets.map(({ id }) => id).sort()).toEqual(BUILT_IN_CRITERIA.map(({ id }) => id).sort());
    expect(sets.every(({ origin }) => origin === "built-in")).toBe(true);
    expect(new Set(sets.map(({ name, edition }) => `${name} ${edition}`)).size).toBe(sets.length);
  });

  test("do not show what is put away, which is still found by its id", async () => {
    const { learner } = await withSet();
    await archiveCriteriaSet("in-house-1", NOW);
    const list = await listCriteria(learner);
    expect(list.ok && list.groups.map(({ title }) => title)).not.toContain("In-house");
    expect((await criteriaById("in-house-1"))?.name).toBe("Deck plates");
  });

  test("are whole by their id: own rows first, and the rest of the set that they build on", async () => {
    await withSet();
    const base = iso5817({ level: "C", edition: 2014 });
    expect(await criteriaById(BASE)).toEqual(base);
    const whole = await criteriaById("in-house-1");
    expect(whole).toEqual(mergeCriteria(base, OWN));
    expect(whole?.id).toBe("in-house-1");
    expect(await criteriaById("nothing")).toBeNull();
  });
});

describe("criteria that tutors write", () => {
  const sent = { basedOn: BASE, own: OWN };

  /** A second tutor of the workshop, some minutes later. */
  async function addOtherTutor(minutes: number): Promise<Caller> {
    const person = { id: "tutor-2", name: "Other tutor", role: "tutor", hasOneTimeCode: false } as const;
    await createPerson({ ...person, signInName: "tutor-2", passwordHash: "none" }, NOW);
    return { actor: person, clock: () => minutesLater(minutes) };
  }

  test("get an id of their own, whatever was sent, and belong to who made them", async () => {
    const { tutor } = await openTestWorkshop();
    const added = await addCriteria(tutor, { ...sent, own: { ...OWN, id: BASE } });
    expect(added).toMatchObject({ ok: true, id: expect.stringMatching(/^in-house-[0-9a-f]{16}$/), updatedAt: NOW });
    const id = added.ok ? added.id : "";
    expect(await readOwnCriteria(tutor, id)).toMatchObject({
      ok: true,
      set: { basedOn: BASE, madeBy: "Name of tutor", own: { ...OWN, id } },
    });
    expect((await criteriaById(BASE))?.name).toBe("ISO 5817, quality level C");
  });

  test.each<[string, unknown, string, RegExp]>([
    ["nothing", undefined, "", /an object with basedOn and own/],
    ["a set to build on that is none", { ...sent, basedOn: "in-house-1" }, "basedOn", /id of a built-in set, or null/],
    ["no name", { ...sent, own: { ...OWN, name: "" } }, "name", /a text of 1 to 120/],
    ["no rows", { ...sent, own: { ...OWN, rows: [] } }, "rows", /at least one/],
    [
      "a limit that is no number",
      {
        ...sent,
        own: {
          ...OWN,
          rows: [{ ...OWN.rows[0], limit: { kind: "at-most", quantity: "depth", formula: { constant: "deep" } } }],
        },
      },
      "rows 1, limit, formula, constant",
      /a number of 0 or more/,
    ],
    [
      "more rows than a whole set may have",
      { ...sent, own: { ...OWN, rows: Array.from({ length: 299 }, (_, n) => ({ ...OWN.rows[0], id: `own-${n}` })) } },
      "rows",
      /at most 300/,
    ],
  ])("%s: the field is named, what would be right is said, and nothing is stored", async (_, input, field, problem) => {
    const { tutor } = await openTestWorkshop();
    expect(await addCriteria(tutor, input)).toMatchObject({
      ok: false,
      code: "malformed-criteria",
      problems: expect.arrayContaining([{ field, problem: expect.stringMatching(problem) }]),
    });
    expect(await listCriteriaSets()).toEqual([]);
  });

  test("may be changed by every tutor, but not over a version that was not seen", async () => {
    const { tutor } = await withSet();
    const other = await addOtherTutor(3);
    const change = (caller: Caller, notes: string, seen: Date) =>
      changeCriteria(caller, OWN.id, { basedOn: BASE, own: { ...OWN, notes }, seen: seen.toISOString() });
    expect(await change(other, "from the other", NOW)).toEqual({ ok: true, updatedAt: minutesLater(3) });
    expect(await change(tutor, "from the first", NOW)).toEqual({
      ok: false,
      code: "newer-criteria",
      updatedAt: minutesLater(3),
    });
    expect(await readCriteriaSet(OWN.id)).toMatchObject({ own: { notes: "from the other" }, madeBy: "Name of tutor" });
    // the clock of the first stands before that of the other: the version still moves on
    const again = await change(tutor, "from the first", minutesLater(3));
    expect(again).toEqual({ ok: true, updatedAt: new Date(minutesLater(3).getTime() + 1) });
    expect(await readCriteriaSet(OWN.id)).toMatchObject({ own: { notes: "from the first" } });
  });

  test("an edit that does not say what it has seen, or is of no set, changes nothing", async () => {
    const { tutor } = await withSet();
    expect(await changeCriteria(tutor, OWN.id, sent)).toMatchObject({ problems: [{ field: "seen" }] });
    expect(await changeCriteria(tutor, "in-house-2", sent)).toEqual({ ok: false, code: "no-such-criteria" });
    expect(await archiveCriteria(tutor, "in-house-2", true)).toEqual({ ok: false, code: "no-such-criteria" });
    expect(await readCriteriaSet(OWN.id)).toMatchObject({ own: OWN, updatedAt: NOW });
  });

  test("a value taken before an edit stays as it was", async () => {
    const { tutor } = await withSet();
    const taken = structuredClone(await criteriaById(OWN.id));
    const held = await criteriaById(OWN.id);
    await changeCriteria(tutor, OWN.id, { basedOn: null, own: { ...OWN, name: "Other" }, seen: NOW.toISOString() });
    expect(held).toEqual(taken);
    expect((await criteriaById(OWN.id))?.rows).toEqual(OWN.rows);
  });

  test("stand whole on the page of limits for everybody while they are in use", async () => {
    const { tutor, learner } = await withSet();
    expect(await readInHouseCriteria(learner)).toEqual({ ok: true, criteria: [await criteriaById(OWN.id)] });
    await archiveCriteria(tutor, OWN.id, true);
    expect(await readInHouseCriteria(learner)).toEqual({ ok: true, criteria: [] });
    await archiveCriteria(tutor, OWN.id, false);
    expect(await readInHouseCriteria(learner)).toMatchObject({ criteria: [{ id: OWN.id }] });
  });
});

test("the ids that sets may build on are those of the first release: none may go", () => {
  const ids = BUILT_IN_CRITERIA.map(({ id }) => id);
  const levels = ["b", "c", "d"].flatMap((level) =>
    ["2014", "2023"].flatMap((edition) => [`iso-5817-${edition}-${level}`, `iso-5817-${edition}-${level}-several`]),
  );
  const others = [
    "iso-5817-2023-c-lowered",
    "iso-5817-2023-c-lowered-several",
    ...[1, 2, 3, 4].map((n) => `en-1090-2-exc${n}`),
    ...["static", "cyclic"].flatMap((loading) => [`aws-d1.1-${loading}-across`, `aws-d1.1-${loading}-other`]),
    "asme-b31.3-normal-girth",
    "asme-b31.3-normal-longitudinal",
    "api-1104",
  ];
  expect(ids).toEqual(expect.arrayContaining([...levels, ...others]));
});
