import { describe, expect, test, vi } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { chooseNextPiece } from "@/app/_server/next/choose-next-piece";
import { keepNextReady } from "@/app/_server/next/keep-next-ready";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { openBench } from "@/app/_server/use-cases/open-bench";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { readToday } from "@/app/_server/use-cases/read-today";
import { renewSpecimen } from "@/app/_server/use-cases/renew-specimen";
import { startPractice } from "@/app/_server/use-cases/start-practice";
import { imperfection } from "@/lib/imperfections";
import { randomStream } from "@/lib/random";
import { EMPTY_REPORT } from "@/lib/report";
import { database } from "@/prisma/client";
import { askedPieceColumn } from "@/prisma/columns";
import { freeForgotten } from "@/prisma/stores/next-pieces";
import { readPractice } from "@/prisma/stores/practices";
import { isInSitting } from "@/prisma/stores/sittings";
import {
  countStock,
  failSpecimen,
  finishSpecimen,
  orderSpecimen,
  takeOrder,
  takeReadySpecimen,
} from "@/prisma/stores/specimens";
import { freshDatabaseForEachTest } from "../../support/database";
import { begunSitting, must, openRoom } from "./sitting-room";
import {
  clock,
  ENDS,
  FILLET_SURFACES,
  FILLET_TRUTH,
  makeSpecimen,
  openPractice,
  openTestWorkshop,
  testSource,
} from "./workshop";

freshDatabaseForEachTest();

const FILLET = { truth: FILLET_TRUTH, generatorVersion: "test-generator", surfaces: FILLET_SURFACES, ends: ENDS };
/** A miss of all there is. */
const NOTHING = { sequence: 1, report: EMPTY_REPORT };

/** Chooses a fillet weld, which is drawn in a tenth of the time of a plate, for a learner; always the same by the name. */
async function choose(userId: string, name: string, source = testSource(name)): Promise<string | null> {
  const random = randomStream(name);
  const chance = { draw: () => random.uniform(0, 1), seed: () => `secret ${name} ` };
  await chooseNextPiece(userId, "fillet", { source, clock, chance });
  return (await database().nextPiece.findFirst({ where: { userId, waits: true } }))?.specimenId ?? null;
}

async function makeOrdered(): Promise<void> {
  for (let order = await takeOrder(); order; order = await takeOrder()) await finishSpecimen(order.id, FILLET);
}

/** Hands one in that was not chosen. */
const handInFillet = async (learner: Caller, id: string) =>
  must(handIn(learner, await openPractice(learner, id, "fillet"), NOTHING));

const orderOf = (id: string | null) => database().specimen.findUniqueOrThrow({ where: { id: id ?? "none" } });
const stateOf = async (id: string | null) => (await orderOf(id)).state;

describe("the next piece", () => {
  test("is chosen, taken, handed in and only then explained, and the next one follows", async () => {
    const { learner, other } = await openTestWorkshop();
    const source = testSource("first");
    const chosen = await choose("learner", "first", source);
    const order = await orderOf(chosen);
    const includes = askedPieceColumn.read(order.asked).types?.includes ?? [];
    expect(includes).toHaveLength(2);
    expect(order).toMatchObject({ kind: "fillet", isReserved: true, state: "waiting" });

    const today = await must(readToday(learner));
    expect(today.next).toEqual({
      chosen: ["fillet"],
      aims: { weak: [], due: [], observations: 0 },
      notChosen: null,
    });
    expect((await must(readToday(other))).next.chosen).toEqual([]);

    const { id } = await must(startPractice(learner, { section: "fillet" }, source));
    expect(await readPractice(id)).toMatchObject({ specimenId: chosen, section: "fillet" });
    expect((await must(readToday(learner))).next.chosen).toEqual([]);
    // somebody waits for it now
    expect(await orderOf(chosen)).toMatchObject({ isAwaited: true });
    await makeOrdered();

    const bench = await must(openBench(learner, id, source));
    const before = [
      // criteria name every type there is
      { ...bench, practice: { ...bench.practice, criteria: null } },
      await must(readToday(learner)),
      await readMarkSheet(learner, id),
    ];
    const told = JSON.stringify(before);
    for (const secret of [order.seed, "reason", "warm-up", '"types"', '"includes"', '"sections"'])
      expect(told).not.toContain(secret);
    for (const type of includes) {
      expect(told).not.toContain(type);
      expect(told).not.toContain(imperfection(type).name);
    }
    expect(before[2]).toMatchObject({ ok: false, code: "not-handed-in" });

    await must(handIn(learner, id, NOTHING));
    expect((await must(readMarkSheet(learner, id))).reason).toEqual({ kind: "warm-up" });

    // the crack is known from one piece now, and has not been missed often enough to be weak
    await choose("learner", "second");
    const second = await must(startPractice(learner, { section: "fillet" }, source));
    await makeOrdered();
    await must(handIn(learner, second.id, NOTHING));
    expect((await must(readMarkSheet(learner, second.id))).reason).toEqual({
      kind: "uncertain",
      type: "longitudinal-crack",
    });
  });

  test("is the same for the same learner and the same chance", async () => {
    await openTestWorkshop();
    const one = await orderOf(await choose("learner", "same"));
    await database().nextPiece.deleteMany();
    await database().specimen.deleteMany();
    const again = await orderOf(await choose("learner", "same"));
    expect([again.seed, again.asked]).toEqual([one.seed, one.asked]);
  });

  test("is nobody else's, and taken once by whoever starts twice at a time", async () => {
    const { learner, other } = await openTestWorkshop();
    const source = testSource();
    const chosen = await choose("learner", "own");
    // two who choose for the same learner at once leave one piece waiting
    await Promise.all([choose("other", "a"), choose("other", "b")]);
    expect(await database().nextPiece.count({ where: { userId: "other", waits: true } })).toBe(1);
    await database().nextPiece.deleteMany({ where: { userId: "other" } });

    const strange = await must(startPractice(other, { section: "fillet" }, source));
    expect((await readPractice(strange.id))?.specimenId).not.toBe(chosen);
    const started = await Promise.all([1, 2].map(() => must(startPractice(learner, { section: "fillet" }, source))));
    const pieces = await Promise.all(started.map(async ({ id }) => (await readPractice(id))?.specimenId));
    expect(pieces.filter((piece) => piece === chosen)).toHaveLength(1);
  });

  test("stays where any piece is wanted, or one of the other section", async () => {
    const { learner } = await openTestWorkshop();
    const chosen = await choose("learner", "stays");
    for (const wanted of [{ section: "fillet", piece: "any" }, { section: "plate" }]) {
      const { id } = await must(startPractice(learner, wanted, testSource(wanted.section)));
      expect((await readPractice(id))?.specimenId).not.toBe(chosen);
    }
    expect((await must(readToday(learner))).next.chosen).toEqual(["fillet"]);
    expect(await startPractice(learner, { piece: "best" }, testSource())).toMatchObject({ code: "invalid-input" });
  });

  test("goes to the stock once the learner has moved on, made or still to be made", async () => {
    const { learner } = await openTestWorkshop();
    const handInSome = async (name: string) => {
      for (let n = 0; n < 3; n++) await handInFillet(learner, `${name} ${n}`);
    };
    const made = await choose("learner", "made");
    await makeOrdered();
    expect(await choose("learner", "too early")).toBe(made);
    await handInSome("one");
    const next = await choose("learner", "later");
    expect(next).not.toBe(made);
    expect(await takeReadySpecimen("fillet")).toBe(made);

    await takeOrder();
    await handInSome("two");
    expect(await choose("learner", "latest")).not.toBe(next);
    expect(await takeReadySpecimen("fillet")).toBeNull();
    await finishSpecimen(next ?? "none", FILLET);
    expect(await takeReadySpecimen("fillet")).toBe(next);
  });

  test("stays whatever is handed in of the other kind", async () => {
    const { learner } = await openTestWorkshop();
    const chosen = await choose("learner", "kept");
    for (let n = 0; n < 3; n++) await must(handIn(learner, await openPractice(learner, `plate ${n}`), NOTHING));
    expect(await choose("learner", "after plates")).toBe(chosen);
    for (let n = 0; n < 2; n++) await handInFillet(learner, `fillet ${n}`);
    expect(await choose("learner", "after two of its kind")).toBe(chosen);
    await handInFillet(learner, "third");
    expect(await choose("learner", "after three")).not.toBe(chosen);
  });

  test("is deleted once the learner has moved on where the stock has enough, and stays theirs where they took it", async () => {
    const { learner } = await openTestWorkshop();
    const old = await choose("learner", "old");
    await makeSpecimen("on-the-shelf", false, "fillet");
    for (let n = 0; n < 3; n++) await handInFillet(learner, `piece ${n}`);
    const next = await choose("learner", "later");
    expect(await database().specimen.findUnique({ where: { id: old ?? "none" } })).toBeNull();
    expect(await countStock("fillet")).toBe(1);

    // taken while another one is drawn
    for (let n = 3; n < 6; n++) await handInFillet(learner, `piece ${n}`);
    const source = testSource("while drawn");
    const begin = () => must(startPractice(learner, { section: "fillet" }, testSource("begun")));
    let begun: Promise<unknown> | null = null;
    await choose("learner", "too late", {
      ...source,
      async drawAhead(order) {
        begun ??= begin();
        await begun;
        return source.drawAhead(order);
      },
    });
    expect(await database().nextPiece.count({ where: { userId: "learner", waits: true } })).toBe(0);
    expect(await database().specimen.count({ where: { isReserved: true, practices: { none: {} } } })).toBe(0);
    expect(await stateOf(next)).toBe("waiting");
  });

  test("is freed at the next start where the server stopped before it was kept, and nothing else is", async () => {
    await openTestWorkshop();
    const kept = await choose("learner", "kept");
    const order = (id: string, seed: string, orderedFor: "ahead" | "drills") =>
      orderSpecimen({ id, kind: "fillet", seed, asked: null }, orderedFor, new Date(0));
    await order("lost", "a", "ahead");
    await order("named", "named/1", "ahead");
    await order("drilled", "b", "drills");
    await freeForgotten();
    const free = await database().specimen.findMany({ where: { isReserved: false }, select: { id: true } });
    expect(free).toEqual([{ id: "lost" }]);
    expect(await orderOf(kept)).toMatchObject({ isReserved: true });
  });

  test("that could not be made is passed over, and another one chosen", async () => {
    const { learner } = await openTestWorkshop();
    const broken = await choose("learner", "broken");
    await failSpecimen(broken ?? "none");
    expect((await must(readToday(learner))).next.chosen).toEqual([]);
    await makeSpecimen("on-the-shelf", false, "fillet");
    const { id } = await must(startPractice(learner, { section: "fillet" }, testSource("shelf")));
    expect((await readPractice(id))?.specimenId).toBe("on-the-shelf");
    expect(await choose("learner", "too early"), "what comes of the one on the bench has its say").toBe(broken);
    await must(handIn(learner, id, NOTHING));
    const other = await choose("learner", "better");
    expect(other).not.toBe(broken);
    expect([await stateOf(broken), await stateOf(other)]).toEqual(["failed", "waiting"]);
  });

  test("that fails on the bench gives way to any, of which nothing is explained", async () => {
    const { learner } = await openTestWorkshop();
    const chosen = await choose("learner", "fails");
    const { id } = await must(startPractice(learner, { section: "fillet" }, testSource("start")));
    await failSpecimen(chosen ?? "none");
    await must(renewSpecimen(learner, id, testSource("renewed")));
    await makeOrdered();
    await must(handIn(learner, id, NOTHING));
    expect((await must(readMarkSheet(learner, id))).reason).toBeNull();
  });
});

test("a class that comes at once is served in turn: a plate for each of them before anybody's fillet weld", async () => {
  const { learner, other } = await openTestWorkshop();
  for (const one of [learner, other]) await handInFillet(one, `practised by ${one.actor?.id}`);
  const source = testSource("class");
  const drawn: string[] = [];
  const drawAhead: typeof source.drawAhead = async ({ section, pieces }) => {
    const turn = `${section} ${pieces[0].seed.slice(0, 32)}`;
    if (!drawn.includes(turn)) drawn.push(turn);
    // none can be had, so that none is made
    return pieces.map(() => null);
  };
  vi.useFakeTimers({ toFake: ["setTimeout"] });
  for (const id of ["learner", "other", "learner"]) keepNextReady(id, { ...source, drawAhead }, clock);
  vi.advanceTimersByTime(10_000);
  vi.useRealTimers();
  await vi.waitFor(() => expect(drawn).toHaveLength(4), { timeout: 10_000 });
  expect(drawn.map((turn) => turn.split(" ")[0])).toEqual(["plate", "plate", "fillet", "fillet"]);
});

test("while a sitting goes on nothing is chosen for those in it", async () => {
  const room = await openRoom();
  const now = room.kim.clock();
  expect(await isInSitting("kim", now)).toBe(false);
  await begunSitting(room);
  expect([await isInSitting("kim", now), await isInSitting("tutor", now)]).toEqual([true, false]);
  expect((await must(readToday(room.kim))).next.notChosen).toBe("in-sitting");
  // a tutor who never took a piece needs none
  expect((await must(readToday(room.tutor))).next.notChosen).toBe("no-practice");
  // with all own sections closed practice goes on, whatever the others still do
  await database().sectionRun.updateMany({ where: { userId: "kim" }, data: { state: "handedIn" } });
  expect((await must(readToday(room.kim))).next.notChosen).toBeNull();
});
