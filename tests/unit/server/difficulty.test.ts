import { expect, test } from "vitest";
import { makeCalibration } from "@/app/_server/progress/calibration";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { freshDatabaseForEachTest } from "../../support/database";
import { must } from "./sitting-room";
import { CAP_ONLY, NOW, openPractice, openTestWorkshop } from "./workshop";

freshDatabaseForEachTest();

test("difficulties come from practice handed in, without the first three pieces of each learner", async () => {
  const { learner, other } = await openTestWorkshop();
  expect(await makeCalibration(NOW)).toEqual({ corrections: [], sections: 0, learners: 0, madeAt: NOW });
  const handInOne = async (who: typeof learner, n: number) => {
    const later = { ...who, clock: () => new Date(NOW.getTime() + n * 60_000) };
    await must(handIn(later, await openPractice(who, `${who.actor?.id}-${n}`), { sequence: 1, report: CAP_ONLY }));
  };
  for (let n = 0; n < 5; n++) await handInOne(learner, n);
  for (let n = 0; n < 3; n++) await handInOne(other, n);
  await openPractice(other, "still open");

  const { corrections, sections, learners } = await makeCalibration(NOW);
  expect([sections, learners]).toEqual([8, 2]);
  // a pore of 1.5 mm that is always found and a hollow of 0.8 mm that never is: 2 ln 1.5 and 2 ln 0.8, rounded
  expect(corrections).toMatchObject([
    { type: "surface-pore", step: 1, observations: 2, found: 2 },
    { type: "root-concavity", step: 0, observations: 2, found: 0 },
  ]);
  expect(corrections[0].shift).toBeLessThan(0);
  expect(corrections[1].shift).toBeGreaterThan(0);
});
