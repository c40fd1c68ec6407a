import { expect, test } from "vitest";
import { sweepSittings } from "@/app/_server/sittings/sweep";
import { closeReport } from "@/app/_server/use-cases/close-report";
import { voidRun } from "@/app/_server/use-cases/govern-run";
import { closeSitting } from "@/app/_server/use-cases/govern-sitting";
import { planSitting } from "@/app/_server/use-cases/plan-sitting";
import { readBoard } from "@/app/_server/use-cases/read-board";
import { readClassCourses } from "@/app/_server/use-cases/read-class-courses";
import { readPlanChoices } from "@/app/_server/use-cases/read-plan-choices";
import { readSittingsDesk } from "@/app/_server/use-cases/read-sittings-desk";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { EMPTY_REPORT } from "@/lib/report";
import { defaultPaper } from "@/lib/sittings";
import { readSitting } from "@/prisma/stores/sittings";
import { freshDatabaseForEachTest } from "../../support/database";
import { begunSitting, must, openRoom, plannedSitting, type Room, runOf, save, started, WINDOW } from "./sitting-room";
import { CAP_ONLY } from "./workshop";

freshDatabaseForEachTest();

const boardOf = async ({ tutor }: Room, id: string) => (await must(readBoard(tutor, id))).board;
const plateOf = async (room: Room, id: string, userId: string) => {
  const learner = (await boardOf(room, id)).learners.find((one) => one.userId === userId);
  const run = learner?.runs.find(({ section }) => section === "plate");
  if (!learner || !run) throw new Error(`${userId} has no plate`);
  return { learner, run };
};

/** Ola starts her plate and saves nothing; the sitting is closed, and everything in it marked: she has failed it. */
async function olaFails(room: Room, hour = 10): Promise<string> {
  const id = await begunSitting(room);
  await started(id, room.ola);
  room.at(`${hour}:30`);
  await must(closeSitting(room.tutor, id));
  room.at(`${hour}:31`);
  await sweepSittings(room.now(), room.source);
  return id;
}

test("the board counts indications and answers as they are saved, and says nothing of what they are", async () => {
  const room = await openRoom();
  const id = await begunSitting(room);
  const { practiceId } = await started(id, room.ola);
  expect((await plateOf(room, id, "ola")).run.written).toEqual({ indications: 0, answers: 0 });
  const [call] = CAP_ONLY.calls;
  const calls = ["a", "b", "c"].map((name) => ({ ...call, id: name }));
  await must(saveReport(room.ola, practiceId, save(1, room.now(), WINDOW, { ...CAP_ONLY, calls })));
  expect((await plateOf(room, id, "ola")).run.written).toEqual({ indications: 3, answers: 0 });
  expect((await plateOf(room, id, "kim")).run.written).toEqual({ indications: 0, answers: 0 });
  expect(JSON.stringify(await boardOf(room, id))).not.toContain("surface-pore");
  // taken out again is counted as well
  await must(saveReport(room.ola, practiceId, save(2, room.now(), WINDOW, EMPTY_REPORT)));
  expect((await plateOf(room, id, "ola")).run.written.indications).toBe(0);
  const closed = await must(closeReport(room.ola, practiceId, save(3, room.now(), WINDOW, EMPTY_REPORT)));
  const answers = Object.fromEntries(closed.questions.slice(0, 2).map((question) => [question.id, 1]));
  expect(Object.keys(answers)).toHaveLength(2);
  await must(saveReport(room.ola, practiceId, save(4, room.now(), WINDOW, { ...EMPTY_REPORT, answers })));
  expect((await plateOf(room, id, "ola")).run.written).toEqual({ indications: 0, answers: 2 });
});

test("sections stand in the order of the paper", async () => {
  const room = await openRoom();
  const id = await plannedSitting(room);
  for (const { runs } of (await boardOf(room, id)).learners) {
    expect(runs.map(({ section }) => section)).toEqual(["plate", "fillet"]);
  }
});

test("where learners stand is on the board from closing on, and what is due again on the desk", async () => {
  const room = await openRoom();
  const id = await begunSitting(room);
  await started(id, room.ola);
  expect((await plateOf(room, id, "ola")).learner.standing).toBeNull();
  expect((await must(readSittingsDesk(room.tutor))).dues).toEqual([]);
  room.at("10:30");
  await must(closeSitting(room.tutor, id));
  room.at("10:31");
  await sweepSittings(room.now(), room.source);

  const { learner, run } = await plateOf(room, id, "ola");
  expect(run.mark).toMatchObject({ isPassed: false, passMark: 70 });
  expect(run.placed).toMatchObject({ kind: "first", outcome: "failed" });
  expect(learner.standing).toEqual({
    isPassed: false,
    round: 1,
    due: [
      { section: "plate", why: "re-sit" },
      { section: "fillet", why: "first" },
    ],
  });
  const desk = await must(readSittingsDesk(room.tutor));
  expect(desk.sittings.map((one) => [one.id, one.state, one.className])).toEqual([[id, "closed", "Monday class"]]);
  // kim has sat nothing: nothing is due *again* from her
  expect(desk.dues.map(({ classId, paperId, learners }) => ({ classId, paperId, learners }))).toEqual([
    {
      classId: "class",
      paperId: "paper",
      learners: [
        {
          id: "ola",
          name: "Name of ola",
          sections: [
            { section: "plate", why: "re-sit" },
            { section: "fillet", why: "not-sat" },
          ],
        },
      ],
    },
  ]);
  expect((await must(readPlanChoices(room.tutor))).dues).toEqual(desk.dues);
  const courses = await must(readClassCourses(room.tutor, "class"));
  const ola = courses.papers[0].members.find(({ person }) => person.id === "ola");
  expect(ola?.rounds.map(({ attempts }) => attempts.map(({ attempt }) => attempt.id))).toEqual([[run.runId]]);
  expect(courses.practiceOf.get(run.runId)).toBe((await runOf(id, room.ola)).practiceId);

  // another class's tutor sees none of it
  expect(await must(readSittingsDesk(room.stranger))).toMatchObject({ sittings: [], dues: [] });
});

test("the board of a closed sitting keeps up with what is changed in another one of its course", async () => {
  const room = await openRoom();
  const first = await olaFails(room);
  const second = await olaFails(room, 11);
  const again = (await plateOf(room, second, "ola")).run;
  expect(again.placed).toMatchObject({ kind: "re-sit", outcome: "failed" });
  expect((await plateOf(room, second, "ola")).learner.standing).toMatchObject({ round: 2 });
  await must(voidRun(room.tutor, (await runOf(first, room.ola)).run.id, { reason: "a lamp was out" }));
  expect((await plateOf(room, second, "ola")).run.placed).toMatchObject({ kind: "first", outcome: "failed" });
  expect((await plateOf(room, second, "ola")).learner.standing).toMatchObject({ round: 1 });
});

test("a re-sit is planned for chosen learners and one section, and is due no more on the desk", async () => {
  const room = await openRoom();
  await olaFails(room);
  const input = { classId: "class", paperId: "paper", plannedAt: "2026-03-03T10:00:00Z", who: "due" };
  const planned = await must(
    planSitting(room.tutor, { ...input, learnerIds: ["ola"], sections: ["plate"] }, room.source),
  );
  const resit = await readSitting(planned.id);
  expect(resit?.runs.map(({ run }) => [run.userId, run.section])).toEqual([["ola", "plate"]]);
  // whoever joins the class later has no business in it
  expect(resit?.isForWholeClass).toBe(false);
  expect((await must(readSittingsDesk(room.tutor))).dues).toEqual([]);
});

test("a whole class may sit one section alone; none, or one that is none, is refused by name", async () => {
  const room = await openRoom();
  const input = { classId: "class", paperId: "paper", plannedAt: "2026-03-03T10:00:00Z", who: "class" };
  const planned = await must(planSitting(room.tutor, { ...input, sections: ["fillet"] }, room.source));
  const stored = await readSitting(planned.id);
  expect(stored?.runs.map(({ run }) => [run.userId, run.section])).toEqual([
    ["kim", "fillet"],
    ["ola", "fillet"],
  ]);
  expect(await planSitting(room.tutor, { ...input, sections: [] }, room.source)).toMatchObject({
    code: "invalid-input",
    fields: { sections: "sections: at least one" },
  });
  expect(await planSitting(room.tutor, { ...input, sections: ["cap"] }, room.source)).toMatchObject({
    code: "invalid-input",
  });
});

test("a paper whose piece can never be made as it asks is not planned, and the reason names the section", async () => {
  const [plate, fillet] = defaultPaper().sections;
  const piece = { ...plate.piece, blueprint: "assessment", types: { includes: ["spatter"], among: "any" } } as const;
  const room = await openRoom({ sections: [{ ...plate, piece }, fillet] });
  const input = { classId: "class", paperId: "paper", plannedAt: "2026-03-03T10:00:00Z", who: "class" };
  const refusal = "eight plates in a row had no room";
  const hopeless = { ...room.source, foresee: async () => ({ refusal, unmet: null, fewer: 0, forecast: null }) };
  expect(await planSitting(room.tutor, input, hopeless)).toEqual({
    ok: false,
    code: "invalid-input",
    fields: { paperId: expect.stringMatching(/^paperId: .* The plate of .* cannot: eight .+ Change in the paper/) },
  });
  expect((await must(readSittingsDesk(room.tutor))).sittings).toEqual([]);
  // the other section asks for nothing special
  await must(planSitting(room.tutor, { ...input, sections: ["fillet"] }, room.source));
});
