import { expect, test } from "vitest";
import { buildAllTallies } from "@/app/_server/progress/build";
import { annulQuestion, previewAnnulment } from "@/app/_server/use-cases/annul-question";
import { eraseLearner, previewErasure } from "@/app/_server/use-cases/erase-learner";
import { releaseSitting } from "@/app/_server/use-cases/govern-sitting";
import { overruleLine } from "@/app/_server/use-cases/overrule-line";
import { readClassProgress } from "@/app/_server/use-cases/read-class-progress";
import { readOwnProgress } from "@/app/_server/use-cases/read-own-progress";
import { takeBackReview } from "@/app/_server/use-cases/take-back-review";
import { database } from "@/prisma/client";
import { readPooledAnswers } from "@/prisma/stores/erasure";
import { listUnobserved, readLearnerModel, readObservations, storeObservations } from "@/prisma/stores/progress";
import { freshDatabaseForEachTest } from "../../support/database";
import { closedSitting, firstOf, missOf, sittingWithQuestions, why } from "./review-room";
import { must, type Room } from "./sitting-room";

freshDatabaseForEachTest();

const tallyOf = async (learner: Room["kim"]) => (await must(readOwnProgress(learner))).progress.tally;

test("a miss that is overruled is no miss of the learner or the class any more, and is one again when that is taken back", async () => {
  const { room, id, ola } = await closedSitting();
  await must(releaseSitting(room.tutor, id));
  const [computed, model] = [await tallyOf(room.ola), await readLearnerModel("ola")];
  expect(computed.types["root-concavity"]).toMatchObject({ total: 1, found: 0 });
  const ofClass = async () => {
    await buildAllTallies();
    const { learners } = await must(readClassProgress(room.tutor, "class"));
    return learners.find(({ person }) => person.id === "ola")?.overview.types["root-concavity"];
  };
  expect(await ofClass()).toMatchObject({ total: 1, found: 0 });

  const miss = await missOf(ola.practiceId);
  await must(overruleLine(room.tutor, ola.runId, { line: miss.id, marks: miss.worth / 1000, reason: why }));
  expect(await ofClass()).toMatchObject({ total: 1, found: 1, namedRight: 1 });
  const after = await tallyOf(room.ola);
  expect(after.types["root-concavity"]).toMatchObject({ total: 1, found: 1 });
  expect(after.sections.plate).toMatchObject({ pieces: 1, passed: 1 });
  const better = await readLearnerModel("ola");
  expect(better?.found.general.value).toBeGreaterThan(model?.found.general.value ?? 0);

  const [act] = (await firstOf(ola.practiceId)).acts;
  await must(takeBackReview(room.tutor, ola.runId, { act: act.id, reason: "the wrong line" }));
  expect(await ofClass()).toMatchObject({ total: 1, found: 0 });
  expect(await tallyOf(room.ola)).toEqual(computed);
  expect(await readLearnerModel("ola")).toEqual(model);
});

test("what is overruled before the release counts so with it", async () => {
  const { room, id, ola } = await closedSitting();
  const miss = await missOf(ola.practiceId);
  await must(overruleLine(room.tutor, ola.runId, { line: miss.id, marks: miss.worth / 1000, reason: why }));
  expect((await tallyOf(room.ola)).types).toEqual({});
  await must(releaseSitting(room.tutor, id));
  expect((await tallyOf(room.ola)).types["root-concavity"]).toMatchObject({ total: 1, found: 1 });
});

test("what was observed before an act that came in meanwhile is not kept", async () => {
  const { room, ola } = await closedSitting();
  const { id } = await database().attempt.findFirstOrThrow({ where: { practiceId: ola.practiceId } });
  const [{ observations }] = await readObservations([id]);
  await database().attemptObservations.deleteMany({ where: { attemptId: id } });
  const [unobserved] = await listUnobserved("ola");
  const miss = await missOf(ola.practiceId);
  await must(overruleLine(room.tutor, ola.runId, { line: miss.id, marks: 0, reason: why }));
  await storeObservations(unobserved, observations);
  expect(await readObservations([id])).toEqual([]);
  const [again] = await listUnobserved("ola");
  await storeObservations(again, observations);
  expect(await readObservations([id])).toHaveLength(1);
});

test("an annulled question is in nobody's progress, until it is taken back", async () => {
  const { room, id, ola } = await sittingWithQuestions();
  await must(releaseSitting(room.tutor, id));
  const answered = async () => {
    const { questions = {} } = (await tallyOf(room.ola)).sections.plate ?? {};
    return Object.values(questions).reduce((sum, { total }) => sum + total, 0);
  };
  expect(await answered()).toBe(3);
  const annul = async () => {
    const { marks, verdicts } = await must(previewAnnulment(room.tutor, ola.runId, { question: "q1" }));
    await must(annulQuestion(room.tutor, ola.runId, { question: "q1", reason: why, seen: { marks, verdicts } }));
  };
  await annul();
  expect(await answered()).toBe(2);
  const [act] = (await firstOf(ola.practiceId)).acts;
  await must(takeBackReview(room.tutor, ola.runId, { act: act.id, reason: why }));
  expect(await answered()).toBe(3);

  // nor is it kept of somebody who is erased
  await annul();
  expect((await must(previewErasure(room.tutor, "ola"))).stays.answers).toBe(2);
  await must(eraseLearner(room.tutor, "ola", { signInName: "ola" }));
  const kept = [...(await readPooledAnswers()).values()];
  expect(kept.flatMap(({ chosen, blank }) => [...chosen, blank]).reduce((sum, times) => sum + times, 0)).toBe(2);
});
