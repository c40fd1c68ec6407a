import { describe, expect, test } from "vitest";
import type { Caller } from "@/app/_server/caller";
import { addLearner } from "@/app/_server/use-cases/add-person";
import { changeWorkshopSettings } from "@/app/_server/use-cases/change-workshop-settings";
import { followProgress } from "@/app/_server/use-cases/follow-progress";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { keepDrillRound } from "@/app/_server/use-cases/keep-drill-round";
import { keepViewTrail } from "@/app/_server/use-cases/keep-view-trail";
import { listOwnPractices } from "@/app/_server/use-cases/list-own-practices";
import { makeCodes } from "@/app/_server/use-cases/make-codes";
import { openBench } from "@/app/_server/use-cases/open-bench";
import { readDesk } from "@/app/_server/use-cases/read-desk";
import { readDrills } from "@/app/_server/use-cases/read-drills";
import { readEnds } from "@/app/_server/use-cases/read-ends";
import { readLearner } from "@/app/_server/use-cases/read-learner";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { readSurface } from "@/app/_server/use-cases/read-surface";
import { readToday } from "@/app/_server/use-cases/read-today";
import { renewSpecimen } from "@/app/_server/use-cases/renew-specimen";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { startPractice } from "@/app/_server/use-cases/start-practice";
import { freshDatabaseForEachTest } from "../../support/database";
import { CAP_ONLY, openPractice, openTestWorkshop, testSource, visitor } from "./workshop";

freshDatabaseForEachTest();

const source = testSource();

type Use = (caller: Caller, practice: string) => Promise<{ readonly ok: boolean; readonly code?: string }>;

const OWNERS_ONLY: Readonly<Record<string, Use>> = {
  "follow progress": (caller, id) => followProgress(caller, id, source),
  "open bench": (caller, id) => openBench(caller, id, source),
  "read a surface": (caller, id) => readSurface(caller, id, "cap"),
  "read the ends": (caller, id) => readEnds(caller, id),
  "save a report": (caller, id) => saveReport(caller, id, { sequence: 1, report: CAP_ONLY }),
  "keep a view trail": (caller, id) =>
    keepViewTrail(caller, id, { windowId: "firstwindow", number: 1, trail: { version: 1, views: {} } }),
  "hand in": (caller, id) => handIn(caller, id, { sequence: 1, report: CAP_ONLY }),
  "renew a specimen": (caller, id) => renewSpecimen(caller, id, source),
};
const SIGNED_IN: Readonly<Record<string, Use>> = {
  "start a practice": (caller) => startPractice(caller, {}, source),
  "list own practices": (caller) => listOwnPractices(caller),
  "read today": (caller) => readToday(caller),
  "read drills": (caller) => readDrills(caller),
  "keep a drill round": (caller) =>
    keepDrillRound(caller, {
      drill: "find-largest",
      gauges: ["depth-gauge"],
      asked: 3,
      right: 1,
      medianError: 0.2,
      seconds: 60,
    }),
};
const TUTORS_ONLY: Readonly<Record<string, Use>> = {
  "read the desk": (caller) => readDesk(caller),
  "read a learner": (caller) => readLearner(caller, "learner"),
  "change settings": (caller) =>
    changeWorkshopSettings(caller, { name: "New", allowsOwnAccounts: false, passMarks: { plate: 1, fillet: 2 } }),
  "add a learner": (caller) => addLearner(caller, { name: "New One", signInName: "new-one" }),
  "make codes": (caller) => makeCodes(caller, ["learner"]),
};

describe.each(Object.entries({ ...OWNERS_ONLY, ...SIGNED_IN, ...TUTORS_ONLY, "read a mark sheet": readMarkSheet }))(
  "%s",
  (_name, use) => {
    test("is not for somebody who is not signed in", async () => {
      const { learner } = await openTestWorkshop();
      expect(await use(visitor, await openPractice(learner))).toEqual({ ok: false, code: "not-signed-in" });
    });
  },
);

describe.each(Object.entries(OWNERS_ONLY))("%s", (_name, use) => {
  test.each(["other", "tutor"] as const)("on another's practice answers %s as if it did not exist", async (who) => {
    const people = await openTestWorkshop();
    const id = await openPractice(people.learner);
    const refused = await use(people[who], id);
    expect(refused).toEqual({ ok: false, code: "no-such-practice" });
    expect(refused).toEqual(await use(people[who], "no-such-id"));
  });
});

describe.each(Object.entries(SIGNED_IN))("%s", (_name, use) => {
  test("is for learners and tutors", async () => {
    const { learner, tutor } = await openTestWorkshop();
    for (const caller of [learner, tutor]) expect(await use(caller, "")).toMatchObject({ ok: true });
  });
});

describe.each(Object.entries(TUTORS_ONLY))("%s", (_name, use) => {
  test("is for a tutor only", async () => {
    const { learner, other, tutor } = await openTestWorkshop();
    for (const caller of [learner, other]) {
      expect(await use(caller, "")).toEqual({ ok: false, code: "not-permitted" });
    }
    expect(await use(tutor, "")).toMatchObject({ ok: true });
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
