import { afterEach, describe, expect, test, vi } from "vitest";
import { buildAllTallies, noteEverybody } from "@/app/_server/progress/build";
import { settleSitting } from "@/app/_server/sittings/settle";
import { findPieceToShow } from "@/app/_server/use-cases/find-piece-to-show";
import { voidRun } from "@/app/_server/use-cases/govern-run";
import { closeSitting, releaseSitting, voidSitting } from "@/app/_server/use-cases/govern-sitting";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { readClassProgress } from "@/app/_server/use-cases/read-class-progress";
import { readLearnerProgress } from "@/app/_server/use-cases/read-learner-progress";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { readOwnProgress } from "@/app/_server/use-cases/read-own-progress";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { afterSection, EMPTY_LEARNER_TALLY, NEW_IN_ORDER, NEW_LEARNER } from "@/lib/progress";
import { EMPTY_REPORT, type Report } from "@/lib/report";
import { database } from "@/prisma/client";
import { enrol } from "@/prisma/stores/classes";
import {
  beginBuilding,
  listLatestObservations,
  readLearnerModel,
  readTallyState,
  storeBuilt,
} from "@/prisma/stores/progress";
import { storeChange } from "@/prisma/stores/sitting-changes";
import { readSitting } from "@/prisma/stores/sittings";
import { freshDatabaseForEachTest } from "../../support/database";
import { begunSitting, must, openRoom, type Room, save, started } from "./sitting-room";
import { CAP_ONLY, NOW, openPractice, openTestWorkshop } from "./workshop";

freshDatabaseForEachTest();
afterEach(() => vi.restoreAllMocks());

/** Reports the hollow in the root, named as something else and 0.3 mm too deep, with a call where nothing is. */
const ROOT_ONLY: Report = {
  ...EMPTY_REPORT,
  calls: [
    { id: "a", face: "root", type: "sagging", start: 52, end: 79, across: 0, size: 1.1, sentence: null },
    { id: "b", face: "cap", type: "spatter", start: 250, end: 260, across: 40, size: null, sentence: null },
  ],
};

const NOTHING = {
  tally: EMPTY_LEARNER_TALLY,
  bySize: { size: {}, length: {}, width: {} },
  history: [],
  latest: [],
};
const known = async (learner: Room["kim"]) => (await must(readOwnProgress(learner))).progress;
const handInNew = async (learner: Room["kim"], id: string, report: Report = CAP_ONLY) =>
  must(handIn(learner, await openPractice(learner, id), { sequence: 1, report }));

describe("practice", () => {
  test("counts with its hand-in: what was found, missed, called for nothing and measured", async () => {
    const { learner } = await openTestWorkshop();
    await handInNew(learner, "first");
    await handInNew(learner, "second", ROOT_ONLY);
    const { tally, history, latest } = await known(learner);
    expect(Object.keys(tally.types).sort()).toEqual(["root-concavity", "surface-pore"]);
    expect(tally.types["surface-pore"]).toMatchObject({ total: 2, found: 1, namedRight: 1 });
    expect(tally.types["root-concavity"]).toMatchObject({
      total: 2,
      found: 1,
      namedRight: 0,
      calledAs: { sagging: 1 },
      size: { n: 1, sum: 300, sumOfSquares: 90_000 },
    });
    // both faces of two plates of 300 mm
    expect(tally.sections).toMatchObject({ plate: { pieces: 2, weldLength: 1_200_000, falseCalls: 1, timed: 2 } });
    expect(history).toMatchObject([
      { kind: "practice", section: "plate", passMark: 60.5, at: NOW, round: null, repeats: null },
      { kind: "practice", section: "plate" },
    ]);
    expect(latest.flatMap(({ truths }) => truths.filter(({ found }) => found).map(({ truthId }) => truthId))).toEqual(
      expect.arrayContaining(["cap-1", "root-1"]),
    );
  });

  test("that is open tells nothing, and its truth is nowhere in what is read", async () => {
    const { learner } = await openTestWorkshop();
    await openPractice(learner);
    const progress = await known(learner);
    expect(progress).toEqual(NOTHING);
  });

  test("handed in twice at once counts twice, and the same one twice counts once", async () => {
    const { learner } = await openTestWorkshop();
    const [one, two] = [await openPractice(learner, "one"), await openPractice(learner, "two")];
    const last = { sequence: 1, report: CAP_ONLY };
    const answers = await Promise.all([
      handIn(learner, one, last),
      handIn(learner, two, last),
      handIn(learner, one, last),
    ]);
    expect(answers.filter(({ ok }) => ok)).toHaveLength(2);
    expect((await known(learner)).tally.types["surface-pore"]).toMatchObject({ total: 2, found: 2 });
  });

  test("of somebody else is not in it", async () => {
    const { learner, other } = await openTestWorkshop();
    await handInNew(learner, "mine");
    expect((await known(other)).tally).toEqual(EMPTY_LEARNER_TALLY);
  });

  test("left lying over a night has no time", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    const nextDay = { ...learner, clock: () => new Date(NOW.getTime() + 14 * 3_600_000) };
    await must(handIn(nextDay, id, { sequence: 1, report: CAP_ONLY }));
    expect((await known(learner)).tally.sections.plate).toMatchObject({ pieces: 1, timed: 0, seconds: 0 });
  });
});

/** A sitting in which kim has handed in her plate, closed and marked. */
async function marked(room: Room): Promise<{ id: string; runId: string }> {
  const id = await begunSitting(room);
  const { runId, practiceId } = await started(id, room.kim);
  room.at("10:40");
  await must(handIn(room.kim, practiceId, save(1, room.now())));
  room.at("11:00");
  await must(closeSitting(room.tutor, id));
  room.at("11:01");
  await settleSitting(id, room.now(), room.source);
  return { id, runId };
}

describe("a sitting", () => {
  test("counts with its release and not before, for nobody", async () => {
    const room = await openRoom();
    const { id } = await marked(room);
    expect(await known(room.kim)).toEqual(NOTHING);
    expect((await must(readLearnerProgress(room.tutor, "kim"))).progress).toEqual(NOTHING);
    const before = (await must(readClassProgress(room.tutor, "class"))).learners;
    expect(before.map(({ overview, marks }) => [overview, marks.plate])).toEqual([
      [{ sections: {}, types: {} }, []],
      [{ sections: {}, types: {} }, []],
    ]);

    await must(releaseSitting(room.tutor, id));
    const { tally, history } = await known(room.kim);
    expect(tally.types["surface-pore"]).toMatchObject({ total: 1, found: 1 });
    // 40 minutes by the clock of the section
    expect(tally.sections.plate).toMatchObject({ pieces: 1, seconds: 2400, timed: 1 });
    expect(history).toMatchObject([{ kind: "first", round: 1, repeats: null, section: "plate" }]);
    const { learners, beingBuilt } = await must(readClassProgress(room.tutor, "class"));
    expect(beingBuilt).toBe(0);
    expect(learners.map(({ person, overview }) => [person.id, overview.types])).toMatchObject([
      ["kim", { "root-concavity": { total: 1, found: 0 }, "surface-pore": { total: 1, found: 1, namedRight: 1 } }],
      ["ola", {}],
    ]);
    const counted = await database().attempt.findMany({ where: { practice: { userId: "kim" } } });
    expect(learners.map(({ marks }) => marks.plate)).toEqual([[counted[0].markThousandths], []]);
    await must(releaseSitting(room.tutor, id));
    expect((await known(room.kim)).tally).toEqual(tally);
  });

  test("counts once where it is marked while its release is being decided", async () => {
    const room = await openRoom();
    // with tallies of her own nothing is built anew
    await handInNew(room.kim, "alone");
    const id = await begunSitting(room);
    const { practiceId } = await started(id, room.kim);
    room.at("10:40");
    await must(saveReport(room.kim, practiceId, save(1, room.now())));
    room.at("11:00");
    await must(closeSitting(room.tutor, id));
    const before = await readSitting(id);
    if (!before) throw new Error("the sitting is gone");
    expect(before.runs.some(({ isMarked }) => isMarked)).toBe(false);
    room.at("11:01");
    await settleSitting(id, room.now(), room.source);
    const next = {
      sitting: { ...before.sitting, state: "released" as const },
      runs: before.runs.map(({ run }) => run),
    };
    const nothingElse = { newRuns: [], audit: null, questions: [], concernsOthers: false };
    expect(await storeChange({ before, next, ...nothingElse })).toBe(true);
    expect((await known(room.kim)).tally.sections.plate).toMatchObject({ pieces: 2 });
  });

  test("shows its piece to its own tutors alone, also where the learner is in another class too", async () => {
    const room = await openRoom();
    const { id } = await marked(room);
    await enrol({ groupId: "other-class", accounts: [], learnerIds: ["kim"] }, room.now());
    await must(releaseSitting(room.tutor, id));
    const [own, other] = [
      await must(findPieceToShow(room.tutor, "class", "root-concavity")),
      await must(findPieceToShow(room.stranger, "other-class", "root-concavity")),
    ];
    expect(other.practiceId).toBeNull();
    expect(await readMarkSheet(room.tutor, own.practiceId ?? "none")).toMatchObject({ ok: true });
  });

  test("released even where marks were shown at once", async () => {
    const room = await openRoom({ feedback: "at-once" });
    await marked(room);
    expect((await known(room.kim)).tally).toEqual(EMPTY_LEARNER_TALLY);
  });

  test.each([
    ["the whole", (room: Room, { id }: { id: string }) => voidSitting(room.tutor, id, { reason: "a fire alarm" })],
    [
      "the section",
      (room: Room, { runId }: { runId: string }) => voidRun(room.tutor, runId, { reason: "a fire alarm" }),
    ],
  ])("made void after its release counts no longer: %s", async (_, makeVoid) => {
    const room = await openRoom();
    await handInNew(room.kim, "alone");
    const before = (await known(room.kim)).tally;
    const sat = await marked(room);
    await must(releaseSitting(room.tutor, sat.id));
    expect((await known(room.kim)).tally.sections.plate?.pieces).toBe(2);

    await must<{ readonly ok: boolean }>(makeVoid(room, sat));
    const { learners, beingBuilt } = await must(readClassProgress(room.tutor, "class"));
    expect(beingBuilt).toBe(1);
    expect(learners.find(({ person }) => person.id === "kim")).toMatchObject({
      isCurrent: false,
      overview: { sections: {}, types: {} },
    });
    await buildAllTallies();
    expect((await must(readClassProgress(room.tutor, "class"))).beingBuilt).toBe(0);
    const after = await known(room.kim);
    expect(after.tally).toEqual(before);
    expect(after.history).toHaveLength(1);
    expect(after.latest).toHaveLength(1);
  });
});

describe("the learner model", () => {
  /** Everything that counts, taken in from the first on. */
  async function fromTheFirst(userId: string) {
    const observed = (await listLatestObservations(userId, 100)).toReversed();
    return (at: readonly Date[]) =>
      observed.reduce((learner, section, n) => afterSection(learner, section, at[n].getTime()), NEW_LEARNER);
  }

  test("takes a practice in with its hand-in", async () => {
    const { learner } = await openTestWorkshop();
    expect(await readLearnerModel("learner")).toEqual(NEW_LEARNER);
    const later = new Date(NOW.getTime() + 60_000);
    await handInNew(learner, "first", ROOT_ONLY);
    await handInNew({ ...learner, clock: () => later }, "second");
    const model = await readLearnerModel("learner");
    expect(model).toEqual((await fromTheFirst("learner"))([NOW, later]));
    expect(model?.recent).toEqual([
      ["surface-pore", "root-concavity"],
      ["surface-pore", "root-concavity"],
    ]);
  });

  test("is built anew in order where a sitting counts after what was handed in later", async () => {
    const room = await openRoom();
    await handInNew(room.kim, "before");
    const { id } = await marked(room);
    room.at("12:00");
    await handInNew(room.kim, "later", ROOT_ONLY);
    await must(releaseSitting(room.tutor, id));
    expect(await readTallyState("kim")).toMatchObject({ isCurrent: true, isLearnerCurrent: false });
    expect(await readLearnerModel("kim")).toBeNull();
    await buildAllTallies();
    const handedIn = await database().attempt.findMany({ orderBy: { handedInAt: "asc" } });
    const built = (await fromTheFirst("kim"))(handedIn.map(({ handedInAt }) => handedInAt));
    expect(await readLearnerModel("kim")).toEqual(built);
    // what is handed in afterwards goes in at once again
    room.at("12:30");
    await handInNew(room.kim, "last");
    expect((await readLearnerModel("kim"))?.recent).toHaveLength(4);
  });
});

describe("tallies that are missing or of another version", () => {
  const forget = async () => {
    await database().attemptObservations.deleteMany();
    await database().typeTally.deleteMany();
    await database().sectionTally.deleteMany();
    await database().learnerProgress.deleteMany();
  };

  async function threePieces() {
    const { learner } = await openTestWorkshop();
    await handInNew(learner, "first");
    await handInNew(learner, "second", ROOT_ONLY);
    await handInNew(learner, "third");
    return { learner, tally: (await known(learner)).tally, model: await readLearnerModel("learner") };
  }

  test("are built from what is stored, and come to the same", async () => {
    const { learner, tally, model } = await threePieces();
    await forget();
    await noteEverybody();
    await buildAllTallies();
    expect(await readTallyState("learner")).toMatchObject({ isCurrent: true, isLearnerCurrent: true });
    expect((await known(learner)).tally).toEqual(tally);
    expect(await readLearnerModel("learner")).toEqual(model);
  });

  test("are added to by nobody meanwhile, and hold what was handed in meanwhile", async () => {
    const { learner } = await threePieces();
    await forget();
    await handInNew(learner, "fourth");
    expect(await database().typeTally.count()).toBe(0);
    expect((await known(learner)).tally.types["surface-pore"]).toMatchObject({ total: 4, found: 3 });
  });

  test("are not kept where something came in while they were built", async () => {
    const { learner, tally } = await threePieces();
    await forget();
    const revision = await beginBuilding("learner");
    await handInNew(learner, "fourth");
    expect(await storeBuilt("learner", revision, { tally, learner: NEW_IN_ORDER })).toBe(false);
    expect((await known(learner)).tally.sections.plate?.pieces).toBe(4);
  });

  test("go on from where building was broken off", async () => {
    const { learner, tally } = await threePieces();
    const kept = await database().attemptObservations.findFirstOrThrow({ orderBy: { attemptId: "asc" } });
    await forget();
    await database().attemptObservations.create({ data: { ...kept, value: kept.value ?? {} } });
    // it would be in the way if it were observed once more
    const { practiceId } = await database().attempt.findUniqueOrThrow({ where: { id: kept.attemptId } });
    await database().practice.update({ where: { id: practiceId }, data: { truth: {} } });
    const errors = vi.spyOn(console, "error").mockImplementation(() => {});
    expect((await known(learner)).tally).toEqual(tally);
    expect(errors).not.toHaveBeenCalled();
  });

  test("are built once more for another version", async () => {
    const { learner, tally } = await threePieces();
    await database().attemptObservations.updateMany({ data: { version: 0, value: {} } });
    await database().typeTally.updateMany({ data: { value: {} } });
    await database().learnerProgress.updateMany({ data: { version: "0.0" } });
    await buildAllTallies();
    expect((await known(learner)).tally).toEqual(tally);
  });

  test("are built without a piece that cannot be read, which is said", async () => {
    const { learner } = await threePieces();
    await forget();
    await database().practice.update({ where: { id: "second" }, data: { truth: {} } });
    const errors = vi.spyOn(console, "error").mockImplementation(() => {});
    const read = (await known(learner)).tally;
    expect(errors).toHaveBeenCalledOnce();
    expect(read.sections.plate?.pieces).toBe(2);
    expect((await known(learner)).tally).toEqual(read);
    expect(errors).toHaveBeenCalledOnce();
  });
});
