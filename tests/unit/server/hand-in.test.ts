import { describe, expect, test } from "vitest";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { listOwnPractices } from "@/app/_server/use-cases/list-own-practices";
import { readDesk } from "@/app/_server/use-cases/read-desk";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { iso5817 } from "@/lib/criteria";
import { EMPTY_REPORT, type Report } from "@/lib/report";
import { RULE_VERSION } from "@/lib/results";
import { database } from "@/prisma/client";
import { createPractice, readPractice } from "@/prisma/stores/practices";
import { finishSpecimen, orderSpecimen } from "@/prisma/stores/specimens";
import { freshDatabaseForEachTest } from "../../support/database";
import { CAP_ONLY, makeSpecimen, NOW, openPractice, openTestWorkshop, SURFACES, TRUTH } from "./workshop";

freshDatabaseForEachTest();

describe("hand in", () => {
  test("marks both faces and the dimensions together against the pass mark: half a plate does not pass", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    expect(await handIn(learner, id, { sequence: 1, report: CAP_ONLY })).toEqual({ ok: true });
    expect(await readPractice(id)).toMatchObject({
      state: "handed-in",
      handedInAt: NOW,
      marks: [
        // indications weigh 60 and dimensions 10: 85,714 and 14,286; one of two indications is half of the first
        { section: "plate", passMark: 60.5, markThousandths: 57_143, isPassed: false, ruleVersion: RULE_VERSION },
      ],
    });
  });

  test("sentences by the criteria that the practice was begun with", async () => {
    const { learner } = await openTestWorkshop();
    const specimenId = await makeSpecimen("sentenced");
    const practice = { id: "sentenced", userId: "learner", specimenId, section: "plate", passMark: 70 } as const;
    const criteria = iso5817({ level: "C", edition: 2014 });
    await createPractice({ ...practice, criteria, book: "closed", startedAt: NOW });
    const [pore] = CAP_ONLY.calls;
    const report: Report = { ...CAP_ONLY, calls: [{ ...pore, sentence: "accept" }], pieceSentence: "reject" };
    expect(await handIn(learner, "sentenced", { sequence: 1, report })).toEqual({ ok: true });
    // 15 parts of 100, one share an imperfection and two for the piece;
    // 1.3 permits a pore of 1.5 mm (0.2 x 10 = 2 mm) and 1.17 a hollow of 0.5 mm at most: the missed hollow is 0.8 mm deep
    const read = await readMarkSheet(learner, "sentenced");
    expect(read).toMatchObject({
      ok: true,
      sheet: {
        sections: [
          {
            result: {
              sentences: {
                criteria: { id: "iso-5817-2014-c" },
                lines: [
                  { truthId: "cap-1", written: "accept", right: ["accept"], earned: 3_750 },
                  { truthId: "root-1", callIds: [], earned: 0 },
                ],
                piece: { truthId: "root-1", right: ["reject"], earned: 7_500 },
              },
            },
          },
        ],
      },
    });
  });

  test("without a body hands in what was saved last", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    await saveReport(learner, id, { sequence: 3, report: CAP_ONLY });
    expect(await handIn(learner, id, undefined)).toEqual({ ok: true });
    expect(await readPractice(id)).toMatchObject({ report: CAP_ONLY, sequence: 3 });
  });

  test("accepts a report on which nothing was ever written", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    expect(await handIn(learner, id, { sequence: 0, report: EMPTY_REPORT })).toEqual({ ok: true });
  });

  test("happens once: a second one is refused and the marks stay", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    await handIn(learner, id, { sequence: 1, report: CAP_ONLY });
    const before = await readMarkSheet(learner, id);
    expect(await handIn(learner, id, { sequence: 2, report: EMPTY_REPORT })).toEqual({
      ok: false,
      code: "already-handed-in",
    });
    expect(await readMarkSheet(learner, id)).toEqual(before);
  });

  test("of two at once exactly one counts, and there is one attempt a section", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    await saveReport(learner, id, { sequence: 1, report: CAP_ONLY });
    const answers = await Promise.all([handIn(learner, id, undefined), handIn(learner, id, undefined)]);
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1);
    expect(answers.find(({ ok }) => !ok)).toEqual({ ok: false, code: "already-handed-in" });
    expect(await database().attempt.count()).toBe(1);
  });

  test("of a stale version is refused with the newer one, and the practice stays open", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    await saveReport(learner, id, { sequence: 5, report: CAP_ONLY });
    expect(await handIn(learner, id, { sequence: 4, report: EMPTY_REPORT })).toMatchObject({
      code: "stale-save",
      sequence: 5,
      report: CAP_ONLY,
    });
    expect(await readPractice(id)).toMatchObject({ state: "open" });
  });

  test("is refused while the plate is not made, and keeps the report", async () => {
    const { learner } = await openTestWorkshop();
    await orderSpecimen({ id: "unmade", kind: "butt", seed: "secret", asked: null }, "awaited", NOW);
    const practice = { id: "early", userId: "learner", specimenId: "unmade", section: "plate", passMark: 70 } as const;
    await createPractice({ ...practice, criteria: null, book: "open", startedAt: NOW });
    expect(await handIn(learner, "early", { sequence: 1, report: CAP_ONLY })).toEqual({
      ok: false,
      code: "specimen-not-made",
    });
    expect(await readPractice("early")).toMatchObject({ state: "open", report: CAP_ONLY });
  });
});

describe("what is kept", () => {
  test("a later generator changes neither truth nor mark", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    await handIn(learner, id, { sequence: 1, report: CAP_ONLY });
    const before = await readMarkSheet(learner, id);
    await finishSpecimen(`specimen-of-${id}`, {
      truth: { ...TRUTH, generator: "later", items: [] },
      generatorVersion: "later",
      surfaces: SURFACES,
      ends: null,
    });
    expect(await readMarkSheet(learner, id)).toEqual(before);
    expect(before).toMatchObject({ ok: true, sheet: { truth: TRUTH, generatorVersion: "test-generator" } });
  });

  test("if the marks cannot be stored, nothing is handed in", async () => {
    const { learner } = await openTestWorkshop();
    const id = await openPractice(learner);
    await database().attempt.create({
      data: {
        id: "in the way",
        practiceId: id,
        section: "plate",
        passMark: 70,
        markThousandths: 0,
        isPassed: false,
        ruleVersion: "x",
        result: {},
        handedInAt: NOW,
      },
    });
    await expect(handIn(learner, id, { sequence: 1, report: CAP_ONLY })).rejects.toThrow();
    expect(await readPractice(id)).toMatchObject({ state: "open", handedInAt: null });
    expect(await database().attempt.count()).toBe(1);
  });
});

describe("the mark sheet", () => {
  test("is for its owner and for a tutor; for anybody else it does not exist", async () => {
    const { learner, other, tutor } = await openTestWorkshop();
    const id = await openPractice(learner);
    await handIn(learner, id, { sequence: 1, report: CAP_ONLY });
    expect(await readMarkSheet(learner, id)).toMatchObject({ ok: true, isOwn: true });
    expect(await readMarkSheet(tutor, id)).toMatchObject({ ok: true, isOwn: false, learner: { id: "learner" } });
    expect(await readMarkSheet(other, id)).toEqual(await readMarkSheet(other, "no-such-id"));
  });

  test("shows nothing before handing in, not even to a tutor", async () => {
    const { learner, tutor } = await openTestWorkshop();
    const id = await openPractice(learner);
    for (const caller of [learner, tutor]) {
      expect(await readMarkSheet(caller, id)).toEqual({ ok: false, code: "not-handed-in" });
    }
  });
});

test("history and desk list what is handed in, with what is unfinished beside it", async () => {
  const { learner, tutor } = await openTestWorkshop();
  await handIn(learner, await openPractice(learner, "first"), { sequence: 1, report: CAP_ONLY });
  await openPractice(learner, "second");
  const own = await listOwnPractices(learner);
  expect(own).toMatchObject({ open: [{ id: "second" }], handedIn: [{ id: "first" }] });
  const desk = await readDesk(tutor);
  if (!desk.ok) throw new Error(desk.code);
  expect(desk.learners).toMatchObject([
    {
      person: { id: "learner" },
      openCount: 1,
      handedIn: [{ id: "first", marks: [{ section: "plate", isPassed: false }] }],
    },
    { person: { id: "other" }, openCount: 0, handedIn: [] },
  ]);
});
