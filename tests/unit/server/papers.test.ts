import { describe, expect, test } from "vitest";
import { archivePaper } from "@/app/_server/use-cases/archive-paper";
import { beginPaper } from "@/app/_server/use-cases/begin-paper";
import { copyPaper } from "@/app/_server/use-cases/copy-paper";
import { listPapers } from "@/app/_server/use-cases/list-papers";
import { readPaper } from "@/app/_server/use-cases/read-paper";
import { savePaper } from "@/app/_server/use-cases/save-paper";
import { setClassPaper } from "@/app/_server/use-cases/set-class-paper";
import { type Criteria, iso5817, mergeCriteria } from "@/lib/criteria";
import { IMPERFECTION_TYPES } from "@/lib/imperfections";
import { defaultPaper, type Paper } from "@/lib/sittings";
import { createClass } from "@/prisma/stores/classes";
import { archiveCriteriaSet, createCriteriaSet, updateCriteriaSet } from "@/prisma/stores/criteria-sets";
import { readPaperVersion, takePaperVersion } from "@/prisma/stores/papers";
import { updateWorkshop } from "@/prisma/stores/workshops";
import { freshDatabaseForEachTest } from "../../support/database";
import { NOW, openTestWorkshop } from "./workshop";

freshDatabaseForEachTest();

const paper = defaultPaper();
const named = (name: string): Paper => ({ ...paper, name });
const withMinutes = (minutes: unknown) => ({
  ...paper,
  sections: paper.sections.map((section, n) => (n === 0 ? { ...section, minutes } : section)),
});

/** A workshop with one paper, and what a tutor does with it. */
async function withPaper() {
  const people = await openTestWorkshop();
  const { tutor } = people;
  const made = await savePaper(tutor, null, { paper, seen: null });
  if (!made.ok) throw new Error("the default paper was refused");
  const read = async () => {
    const found = await readPaper(tutor, made.id);
    if (!found.ok) throw new Error("the paper is gone");
    return found.kept;
  };
  const save = async (changed: unknown) =>
    savePaper(tutor, made.id, { paper: changed, seen: (await read()).updatedAt.toISOString() });
  return { ...people, id: made.id, read, save };
}

describe("a paper that is saved", () => {
  test("comes back as it was, with who made it, as version 1", async () => {
    const { tutor, id, read } = await withPaper();
    const kept = await read();
    expect(kept).toMatchObject({
      id,
      madeBy: "Name of tutor",
      createdAt: NOW,
      updatedAt: NOW,
      archivedAt: null,
      current: { number: 1, paper, savedAt: NOW, usedAt: null },
    });
    expect(await listPapers(tutor)).toEqual({ ok: true, papers: [kept] });
  });

  test("keeps the criteria of its sections whole, as they stood", async () => {
    const { tutor } = await withPaper();
    const base = iso5817({ level: "C", edition: 2014 });
    const rows = base.rows.filter(({ types }) => types.includes("continuous-undercut"));
    const own: Criteria = { ...base, id: "in-house-1", name: "Deck plates", rows, sections: [] };
    const other: Criteria = { ...own, rows: rows.slice(0, 1) };
    await createCriteriaSet({ basedOn: null, own, ownerId: "tutor", createdAt: NOW });
    const [plate, fillet] = paper.sections;
    const ours = { ...paper, sections: [{ ...plate, criteriaId: "in-house-1" }, fillet] };
    const made = await savePaper(tutor, null, { paper: ours, seen: null });
    const kept = made.ok ? await readPaper(tutor, made.id) : made;
    if (!kept.ok) throw new Error(kept.code);
    await updateCriteriaSet({ basedOn: "iso-5817-2014-c", own: other, seen: NOW, updatedAt: new Date(1 + +NOW) });
    const version = await readPaperVersion(kept.kept.current.id);
    expect(version?.criteria).toEqual({ plate: own, fillet: base });
    // a later save takes them as they stand then
    await savePaper(tutor, kept.kept.id, { paper: ours, seen: NOW.toISOString() });
    const later = await readPaperVersion(kept.kept.current.id);
    expect(later?.criteria.plate).toEqual(mergeCriteria(base, other));
  });

  test.each<[string, unknown, string, RegExp]>([
    ["minutes that are none", withMinutes(4), "sections[0].minutes", /^minutes: a whole number from 5 to 480$/],
    ["nothing for minutes", withMinutes(null), "sections[0].minutes", /^minutes: a whole number from 5 to 480$/],
    [
      "criteria that there are none of",
      { ...paper, sections: [{ ...paper.sections[0], criteriaId: "nothing" }] },
      "sections[0].criteriaId",
      /^criteriaId: .* none has the id nothing$/,
    ],
    ["no name", named(" "), "name", /^name: 1 to 80 characters$/],
  ])("is refused with %s, at the field, and nothing is changed", async (_what, wrong, field, message) => {
    const { read, save } = await withPaper();
    const refused = await save(wrong);
    expect(refused).toMatchObject({ ok: false, code: "invalid-input" });
    const fields = "fields" in refused ? (refused.fields as Record<string, string>) : {};
    expect(Object.keys(fields)).toEqual([field]);
    expect(fields[field]).toMatch(message);
    expect((await read()).current.paper).toEqual(paper);
  });

  test("has to have seen the one before it", async () => {
    const { tutor, id, read } = await withPaper();
    const seen = NOW.toISOString();
    expect(await savePaper(tutor, id, { paper: named("First"), seen })).toMatchObject({ ok: true });
    const first = (await read()).updatedAt;
    expect(first.getTime()).toBeGreaterThan(NOW.getTime());
    expect(await savePaper(tutor, id, { paper: named("Second"), seen })).toEqual({
      ok: false,
      code: "newer-paper",
      updatedAt: first,
    });
    expect(await savePaper(tutor, id, { paper: named("Second"), seen: null })).toMatchObject({ code: "newer-paper" });
    expect((await read()).current.paper.name).toBe("First");
    expect(await savePaper(tutor, id, { paper, seen: "yesterday" })).toMatchObject({
      code: "invalid-input",
      fields: { seen: expect.stringContaining("seen:") },
    });
    expect(await savePaper(tutor, id, { paper: named("Second"), seen: first.toISOString() })).toMatchObject({
      ok: true,
    });
  });
});

describe("a paper of what a class misses", () => {
  const types = ["surface-pore", "excessive-throat", "root-fusion"];
  const made = async (input: unknown) => {
    const { tutor } = await openTestWorkshop();
    await createClass({ id: "class", name: "Monday class", notes: "" }, "tutor", NOW);
    return { tutor, answer: await setClassPaper(tutor, "class", input) };
  };

  test("has them on its pieces, each where it comes, and the class and the day in its name", async () => {
    const { tutor, answer } = await made({ types });
    if (!answer.ok) throw new Error(answer.code);
    const read = await readPaper(tutor, answer.id);
    if (!read.ok) throw new Error(read.code);
    const { paper: kept, number, usedAt } = read.kept.current;
    expect([kept.name, number, usedAt]).toEqual(["Monday class, 2 March 2026", 1, null]);
    expect(kept.sections.map(({ section, piece }) => [section, piece.blueprint, piece.types])).toEqual([
      ["plate", "practice", { includes: ["surface-pore", "root-fusion"], among: "any" }],
      ["fillet", "practice", { includes: ["excessive-throat"], among: "any" }],
    ]);
    // everything else is as in a new paper
    const begun = await beginPaper(tutor);
    const [plate] = begun.ok ? begun.paper.sections : [];
    expect(kept.sections[0]).toEqual({ ...plate, piece: { ...plate.piece, ...kept.sections[0].piece } });
  });

  test("has only the sections that something comes in", async () => {
    const { tutor, answer } = await made({ types: ["root-fusion"] });
    const read = answer.ok ? await readPaper(tutor, answer.id) : answer;
    expect(read.ok && read.kept.current.paper.sections.map(({ section }) => section)).toEqual(["plate"]);
  });

  test.each<[string, unknown]>([
    ["no type", { types: [] }],
    ["a type of no catalogue", { types: ["hole"] }],
    ["thirteen types", { types: IMPERFECTION_TYPES.slice(0, 13) }],
    ["no list", { types: "overlap" }],
    ["one type twice", { types: ["overlap", "overlap"] }],
  ])("is refused with %s, by field, and nothing is made", async (_what, input) => {
    const { tutor, answer } = await made(input);
    expect(answer).toMatchObject({ ok: false, code: "invalid-input" });
    expect(JSON.stringify(answer)).toMatch(/types: 1 to 12 types of the catalogue|includes: each once; overlap/);
    expect(await listPapers(tutor)).toEqual({ ok: true, papers: [] });
  });
});

describe("a paper that is begun", () => {
  test("is the default one with the workshop's pass marks, and stores nothing", async () => {
    const { tutor } = await openTestWorkshop();
    await updateWorkshop({ name: "Test shop", allowsOwnAccounts: true, passMarks: { plate: 65, fillet: 72.5 } });
    const begun = await beginPaper(tutor);
    if (!begun.ok) throw new Error(begun.code);
    expect(begun.paper.sections.map(({ passMark }) => passMark)).toEqual([65, 72.5]);
    expect({ ...begun.paper, sections: [] }).toEqual({ ...paper, sections: [] });
    expect(await listPapers(tutor)).toEqual({ ok: true, papers: [] });
  });

  test("is offered criteria that are put away only where it has them", async () => {
    const { tutor } = await openTestWorkshop();
    const base = iso5817({ level: "C", edition: 2014 });
    const rows = base.rows.filter(({ types }) => types.includes("continuous-undercut"));
    const own: Criteria = { ...base, id: "in-house-1", name: "Deck plates", rows, sections: [] };
    await createCriteriaSet({ basedOn: null, own, ownerId: "tutor", createdAt: NOW });
    const sections = paper.sections.map((section) => ({ ...section, criteriaId: "in-house-1" }));
    const made = await savePaper(tutor, null, { paper: { ...paper, sections }, seen: null });
    if (!made.ok) throw new Error(made.code);
    await archiveCriteriaSet("in-house-1", NOW);
    const titles = (read: { readonly criteria: readonly { readonly title: string }[] }) =>
      read.criteria.map(({ title }) => title);
    const begun = await beginPaper(tutor);
    const read = await readPaper(tutor, made.id);
    if (!begun.ok || !read.ok) throw new Error("refused");
    expect(titles(begun)).not.toContain("Put away");
    expect(titles(read)).toEqual([...titles(begun), "Put away"]);
    expect(read.criteria.at(-1)?.sets.map(({ id }) => id)).toEqual(["in-house-1"]);
  });
});

describe("versions", () => {
  test("one that nobody uses is written over", async () => {
    const { read, save } = await withPaper();
    const before = await read();
    expect(await save(named("Other"))).toMatchObject({ ok: true, number: 1 });
    expect((await read()).current).toMatchObject({ id: before.current.id, number: 1, paper: named("Other") });
  });

  test("one that a sitting uses is never changed: a save makes the next", async () => {
    const { id, read, save } = await withPaper();
    const taken = await takePaperVersion(id, NOW);
    expect(taken).toMatchObject({ paperId: id, number: 1, paper, usedAt: NOW });
    expect(await save(named("Second"))).toMatchObject({ ok: true, number: 2 });
    expect(await save(named("Second, better"))).toMatchObject({ ok: true, number: 2 });
    expect((await read()).current).toMatchObject({ number: 2, paper: named("Second, better"), usedAt: null });
    expect(await readPaperVersion(taken?.id ?? "")).toEqual(taken);
    // the next sitting takes the new one, and its use is told from its own first sitting on
    const later = new Date(NOW.getTime() + 60_000);
    expect(await takePaperVersion(id, later)).toMatchObject({ number: 2, usedAt: later });
    expect(await takePaperVersion(id, new Date(later.getTime() + 1))).toMatchObject({ number: 2, usedAt: later });
    expect(await save(named("Third"))).toMatchObject({ ok: true, number: 3 });
  });

  test("a save that changes nothing makes none", async () => {
    const { id, read, save } = await withPaper();
    await takePaperVersion(id, NOW);
    expect(await save(paper)).toMatchObject({ ok: true, number: 1 });
    expect((await read()).current).toMatchObject({ number: 1, usedAt: NOW, savedAt: NOW });
  });

  test("there is none to take of a paper that there is not", async () => {
    await openTestWorkshop();
    expect(await takePaperVersion("nothing", NOW)).toBeNull();
    expect(await readPaperVersion("nothing")).toBeNull();
  });
});

describe("put away and copied", () => {
  test("a paper that is put away is not saved until it is taken back, and says what it said", async () => {
    const { tutor, id, read, save } = await withPaper();
    expect(await archivePaper(tutor, id, true)).toEqual({ ok: true });
    expect(await read()).toMatchObject({ archivedAt: NOW, current: { paper } });
    expect(await save(named("Other"))).toEqual({ ok: false, code: "paper-put-away" });
    expect(await archivePaper(tutor, id, false)).toEqual({ ok: true });
    expect(await save(named("Other"))).toMatchObject({ ok: true });
    expect(await archivePaper(tutor, "nothing", true)).toEqual({ ok: false, code: "no-such-paper" });
  });

  test("a copy is a paper of its own, version 1, with a name that fits", async () => {
    const { tutor, id, read, save } = await withPaper();
    await save(named("x".repeat(80)));
    await takePaperVersion(id, NOW);
    const copied = await copyPaper(tutor, id);
    const copy = copied.ok ? await readPaper(tutor, copied.id) : copied;
    expect(copy).toMatchObject({
      kept: { current: { number: 1, usedAt: null, paper: { ...paper, name: `Copy of ${"x".repeat(72)}` } } },
    });
    expect((await read()).current.paper.name).toBe("x".repeat(80));
    expect(await copyPaper(tutor, "nothing")).toEqual({ ok: false, code: "no-such-paper" });
  });
});
