import { beforeEach, expect, test, vi } from "vitest";
import { openDemoWorkshop } from "@/app/_server/use-cases/open-demo-workshop";
import { readClassCourses } from "@/app/_server/use-cases/read-class-courses";
import { database } from "@/prisma/client";
import { listClassesOf } from "@/prisma/stores/classes";
import { readDemoHistory, readHeldSitting } from "@/prisma/stores/demo-history";
import { listSittingsOf, listSittingsToSweep, type StoredSitting } from "@/prisma/stores/sittings";
import { DEMO_CLASSES, type DemoClasses } from "@/seed/demo/classes";
import { openPieces } from "@/seed/demo/pieces";
import { writeHistory } from "@/seed/demo/write-history";
import { callerAt, personOf } from "@/seed/demo/writing";
import { freshDatabaseForEachTest } from "../../support/database";
import { drawnPieces } from "../../support/demo-pieces";
import { testSource } from "../server/workshop";

/** After so many reports the next one cannot be closed, as where the database is gone for a moment. */
let closingFailsAt = -1;
vi.mock("@/app/_server/use-cases/close-report", async (original) => {
  const real = await original<typeof import("@/app/_server/use-cases/close-report")>();
  return {
    ...real,
    closeReport: (...given: Parameters<typeof real.closeReport>) => {
      if (closingFailsAt-- === 0) throw new Error("the database is gone");
      return real.closeReport(...given);
    },
  };
});

freshDatabaseForEachTest();
let specimens: ReturnType<typeof testSource>;
beforeEach(() => {
  closingFailsAt = -1;
  specimens = testSource();
});

/** A Wednesday. */
const OPENED = new Date("2026-06-17T11:20:00.000Z");
const CAST = new Set(["bruno", "joost", "sana", "stellan"]);
const few = (demoClass: DemoClasses[number]) => ({
  ...demoClass,
  learners: demoClass.learners.filter(({ signInName }) => CAST.has(signInName)),
});
const FEW: DemoClasses = [few(DEMO_CLASSES[0]), few(DEMO_CLASSES[1])];

/** The sitting that is held whenever an entry is about to be tried again. */
const heldMeanwhile: (string | null)[] = [];

class PowerCut extends Error {}

/** Writes the past from where it stands, until the power goes after so many entries; what went wrong. */
async function write(entries = Number.POSITIVE_INFINITY): Promise<readonly string[]> {
  const problems: string[] = [];
  let rests = 0;
  const options = {
    classes: FEW,
    now: () => OPENED,
    rest: async () => {
      if (++rests >= entries) throw new PowerCut();
    },
    pause: async () => {
      heldMeanwhile.push(await readHeldSitting());
    },
    report: (_what: string, error: unknown) => problems.push(String(error)),
  };
  const piece = openPieces(drawnPieces(), async () => undefined);
  try {
    await writeHistory({ piece, specimens }, options);
  } catch (error) {
    if (!(error instanceof PowerCut)) throw error;
  }
  return problems;
}

const open = () => openDemoWorkshop({ clock: () => OPENED }, { withPast: true });

/** Everything that was marked: who, what, when, how. */
async function marksWritten() {
  const rows = await database().attempt.findMany({
    select: {
      section: true,
      markThousandths: true,
      handedInAt: true,
      practice: { select: { specimenId: true, sequence: true, user: { select: { username: true } } } },
    },
  });
  return rows
    .map(({ section, markThousandths, handedInAt, practice: { specimenId, sequence, user } }) =>
      [user.username, handedInAt.toISOString(), section, specimenId, sequence, markThousandths].join(" "),
    )
    .sort();
}

async function sittingsOf(className: string): Promise<readonly StoredSitting[]> {
  const maren = await personOf("maren");
  const group = (await listClassesOf(maren.id)).find(({ name }) => name === className);
  return group ? (await listSittingsOf(group.id)).toReversed() : [];
}

/** Sections of a sitting as "name section", by whether they have passed. */
const sat = ({ runs }: StoredSitting, isAsked: (run: StoredSitting["runs"][number]) => boolean) =>
  runs
    .filter(isAsked)
    .map(({ run, learnerName }) => `${learnerName} ${run.section}`)
    .sort();

test("the past is whole, and the same wherever it was cut short", { timeout: 480_000 }, async () => {
  await open();
  expect(await write()).toEqual([]);
  expect(await readDemoHistory()).toMatchObject({ finishedAt: OPENED });
  expect(await readHeldSitting()).toBeNull();

  const morning = await sittingsOf("Morning inspectors");
  const [first, second] = morning;
  const paused = morning[morning.length - 1];
  expect(morning.length).toBeGreaterThanOrEqual(4);
  for (const { sitting } of morning) expect(sitting.state).toBe(sitting === paused.sitting ? "paused" : "released");
  const evening = await sittingsOf("Evening course");
  // the last one is planned for whoever has something due, and for nobody if there is none
  const isDue = evening[1].runs.some(({ marks: [mark] }) => !mark?.isPassed);
  expect(evening.map(({ sitting }) => sitting.state)).toEqual([
    "released",
    "released",
    "void",
    "closed",
    ...(isDue ? ["planned"] : []),
  ]);
  expect(evening[2].runs.every(({ run }) => run.state === "void")).toBe(true);
  expect(evening[2].sitting.voided?.reason).toContain("hung on the wall");

  // who had to come again is worked out from the marks alone: failed, void, or never sat
  for (const [before, after] of [
    [first, second],
    [evening[0], evening[1]],
  ]) {
    const due = sat(before, ({ run, marks: [mark] }) => run.state === "void" || !mark?.isPassed);
    expect(due.length).toBeGreaterThan(0);
    expect(sat(after, () => true)).toEqual(due);
  }
  expect(sat(first, ({ run }) => run.state === "void")).toEqual(["Joost Palmero fillet"]);
  expect(sat(evening[0], ({ run }) => run.state === "expired")).toEqual(["Stellan Okoro plate"]);

  // nothing of what is over is left open or unmarked, and nothing lies ahead but what is planned
  for (const { sitting, runs } of [...morning, ...evening]) {
    if (sitting.state === "paused" || sitting.state === "planned") continue;
    for (const { run, isMarked } of runs) {
      expect(["waiting", "handed-in", "expired", "void"]).toContain(run.state);
      if (run.state === "handed-in" || run.state === "expired") expect(isMarked).toBe(true);
      for (const at of [run.startedAt, run.savedAt, run.closedAt]) expect(Number(at)).toBeLessThan(Number(OPENED));
    }
  }
  const practices = await database().practice.findMany({ where: { run: { is: null } }, include: { attempts: true } });
  expect(practices.filter(({ state }) => state === "open")).toHaveLength(2);
  expect(practices.filter(({ state }) => state === "handedIn")).toHaveLength(6 * CAST.size);
  for (const { state, attempts } of practices) expect(attempts).toHaveLength(state === "handedIn" ? 1 : 0);
  expect(await database().drillRound.count()).toBeGreaterThan(2 * CAST.size);
  // only the sitting that is paused is the clock's to look at
  expect(await listSittingsToSweep()).toEqual([paused.sitting.id]);

  const maren = await personOf("maren");
  const kinds: string[] = [];
  for (const group of await listClassesOf(maren.id)) {
    const read = await readClassCourses(callerAt(maren, OPENED), group.id);
    if (!read.ok) throw new Error(read.code);
    const monthly = read.papers.find(({ paperName }) => paperName.startsWith("Monthly"));
    expect(monthly?.members).toHaveLength(2);
    const rounds = monthly?.members.flatMap((member) => member.rounds) ?? [];
    kinds.push(...rounds.flatMap(({ attempts }) => attempts.map(({ kind }) => kind)));
  }
  expect([...new Set(kinds)].sort()).toEqual(expect.arrayContaining(["first", "re-sit", "void"]));

  // the power goes before it is noted that the sitting is paused
  const whole = await marksWritten();
  const { total } = await database().demoHistory.findFirstOrThrow();
  await database().demoHistory.updateMany({ data: { done: total - 2, finishedAt: null } });
  expect(await write()).toEqual([]);
  expect(await marksWritten()).toEqual(whole);

  // once more, cut short again and again
  await database().$transaction([
    database().sitting.deleteMany(),
    database().practice.deleteMany(),
    database().drillRound.deleteMany(),
    database().classGroup.deleteMany(),
    database().demoHistory.updateMany({ data: { done: 0, total: 0, finishedAt: null } }),
  ]);
  await write(5);
  // in the middle of a sitting, of a practice, and of whatever comes then
  const problems: string[] = [];
  for (const reports of [4, 9, 2, 7, 30]) {
    closingFailsAt = reports;
    problems.push(...(await write(9)));
  }
  closingFailsAt = -1;
  expect(await write()).toEqual([]);
  expect(problems).toEqual(problems.map(() => "Error: the database is gone"));
  expect(problems.length).toBeGreaterThan(1);
  expect(heldMeanwhile).toHaveLength(problems.length);
  // what failed in a sitting is tried again while today's clock leaves that sitting alone
  expect(heldMeanwhile.some((id) => id !== null)).toBe(true);
  expect(await marksWritten()).toEqual(whole);
});
