import { describe, expect, test } from "vitest";
import { criteriaById } from "@/app/_server/use-cases/criteria-by-id";
import { listCriteria } from "@/app/_server/use-cases/list-criteria";
import { BUILT_IN_CRITERIA, type Criteria, iso5817, mergeCriteria } from "@/lib/criteria";
import {
  archiveCriteriaSet,
  createCriteriaSet,
  listCriteriaSets,
  readCriteriaSet,
  updateCriteriaSet,
} from "@/prisma/stores/criteria-sets";
import { freshDatabaseForEachTest } from "../../support/database";
import { NOW, openTestWorkshop, visitor } from "./workshop";

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
    expect(await listCriteria(visitor)).toMatchObject({ ok: false, code: "not-signed-in" });
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
