import { expect, test } from "vitest";
import { closeReport } from "@/app/_server/use-cases/close-report";
import { enterSitting } from "@/app/_server/use-cases/enter-sitting";
import { beginSitting, closeSitting, openSitting, releaseSitting } from "@/app/_server/use-cases/govern-sitting";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { listOwnSittings } from "@/app/_server/use-cases/list-own-sittings";
import { openBench } from "@/app/_server/use-cases/open-bench";
import { readMarkSheet } from "@/app/_server/use-cases/read-mark-sheet";
import { readOwnCourse } from "@/app/_server/use-cases/read-own-course";
import { readPieceSheet } from "@/app/_server/use-cases/read-piece-sheet";
import { readSittingsDesk } from "@/app/_server/use-cases/read-sittings-desk";
import { readSurface } from "@/app/_server/use-cases/read-surface";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { readClock, startSection } from "@/app/_server/use-cases/start-section";
import { writePracticeFile } from "@/app/_server/use-cases/write-practice-file";
import { freshDatabaseForEachTest } from "../../support/database";
import { begunSitting, makeAll, openRoom, plannedSitting, runOf, save, WINDOW } from "./sitting-room";

freshDatabaseForEachTest();

const window = { windowId: WINDOW };
const last = { window: { id: WINDOW, base: 0 } };

test("before its clock goes nothing of a piece can be seen, and after it is closed nothing until the marks may be known", async () => {
  const room = await openRoom();
  const id = await plannedSitting(room);
  const { run, practiceId } = await runOf(id, room.kim);
  expect(await readSurface(room.kim, practiceId, "cap")).toMatchObject({ code: "not-started" });
  expect(await openBench(room.kim, practiceId, room.source)).toMatchObject({ code: "not-started" });
  await openSitting(room.tutor, id);
  await beginSitting(room.tutor, id);
  expect(await readSurface(room.kim, practiceId, "cap")).toMatchObject({ code: "not-started" });
  await startSection(room.kim, run.id, window);
  expect(await readSurface(room.kim, practiceId, "cap")).toMatchObject({ ok: true });
  expect(await openBench(room.kim, practiceId, room.source)).toMatchObject({
    ok: true,
    questions: null,
    run: { state: "running", liveWindowId: WINDOW, questionCount: 10, aids: { asksReading: false } },
  });
  await handIn(room.kim, practiceId, last);
  expect(await readSurface(room.kim, practiceId, "cap")).toMatchObject({ code: "handed-in" });
  await closeSitting(room.tutor, id);
  await releaseSitting(room.tutor, id);
  expect(await readSurface(room.kim, practiceId, "cap")).toMatchObject({ ok: true });
  expect(await readPieceSheet(room.kim, practiceId)).toMatchObject({ ok: true });
  expect(await writePracticeFile(room.kim, practiceId, "sections")).toMatchObject({ ok: true });
});

test("until marks are released, no answer to a learner says anything of marks, truth, seed or keys", async () => {
  const room = await openRoom();
  const id = await begunSitting(room);
  const { run, practiceId } = await runOf(id, room.kim);
  await startSection(room.kim, run.id, window);
  await saveReport(room.kim, practiceId, save(1, room.now()));
  const told: unknown[] = [await openBench(room.kim, practiceId, room.source)];
  told.push(await closeReport(room.kim, practiceId, { window: { id: WINDOW, base: 1 } }));
  told.push(await openBench(room.kim, practiceId, room.source));
  told.push(await handIn(room.kim, practiceId, { window: { id: WINDOW, base: 1 } }));
  await closeSitting(room.tutor, id);
  told.push(
    await readMarkSheet(room.kim, practiceId),
    await readClock(room.kim, run.id),
    await listOwnSittings(room.kim),
    await enterSitting(room.kim, id, room.source),
    await readOwnCourse(room.kim, "class", "paper"),
    await saveReport(room.kim, practiceId, save(2, room.now())),
  );
  const text = JSON.stringify(told);
  for (const secret of ["secret-seed", "markThousandths", '"key"', "explanation", "cap-1", "root-1"]) {
    expect(text.includes(secret), secret).toBe(false);
  }
  // and that these words would be found: the tutor is told
  expect(JSON.stringify(await readMarkSheet(room.tutor, practiceId))).toContain("cap-1");
});

test("pieces are ordered for a sitting as its paper asks for them, and nobody else gets one", async () => {
  const room = await openRoom();
  await plannedSitting(room);
  expect(await makeAll()).toBe(0);
  const sittings = await readSittingsDesk(room.tutor);
  expect(sittings).toMatchObject({ ok: true, sittings: [{ learners: 2, sections: 4, closed: 0, state: "planned" }] });
});
