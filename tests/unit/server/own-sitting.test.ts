import { expect, test } from "vitest";
import { enterSitting } from "@/app/_server/use-cases/enter-sitting";
import {
  beginSitting,
  closeSitting,
  openSitting,
  releaseSitting,
  voidSitting,
} from "@/app/_server/use-cases/govern-sitting";
import { handIn } from "@/app/_server/use-cases/hand-in";
import { listOwnAttempts } from "@/app/_server/use-cases/list-own-attempts";
import { listOwnSittings } from "@/app/_server/use-cases/list-own-sittings";
import { openBench } from "@/app/_server/use-cases/open-bench";
import { readOwnSitting } from "@/app/_server/use-cases/read-own-sitting";
import { readPaper } from "@/app/_server/use-cases/read-paper";
import { saveReport } from "@/app/_server/use-cases/save-report";
import { defaultPaper, type PaperPiece } from "@/lib/sittings";
import { freshDatabaseForEachTest } from "../../support/database";
import { begunSitting, makeAll, must, openRoom, plannedSitting, runOf, save, started, WINDOW } from "./sitting-room";

freshDatabaseForEachTest();

test("it tells the paper, the learner's own time, and whether they have come in", async () => {
  const room = await openRoom();
  const id = await plannedSitting(room);
  const before = await must(readOwnSitting(room.kim, id));
  expect(before.isIn).toBe(false);
  expect(before.paper.sections.map(({ section }) => section)).toEqual(["plate", "fillet"]);
  expect(Object.keys(before.criteriaNames)).toEqual(["plate", "fillet"]);
  // 120 and 30 minutes, times 1.5
  expect(before.sitting.sections.map(({ factor, clock }) => [factor, clock.remaining])).toEqual([
    [1.5, 180 * 60_000],
    [1.5, 45 * 60_000],
  ]);
  await must(openSitting(room.tutor, id));
  await must(enterSitting(room.kim, id, room.source));
  expect((await must(readOwnSitting(room.kim, id))).isIn).toBe(true);
  expect((await must(readOwnSitting(room.ola, id))).isIn).toBe(false);
});

test("nothing of the types that its pieces are asked to have goes to a learner", async () => {
  const sections = defaultPaper().sections.map((section) => ({
    ...section,
    piece: { ...section.piece, types: { includes: ["overlap"] as const, among: "any" as const } },
  }));
  const room = await openRoom({ sections });
  const asked: (PaperPiece | undefined)[] = [];
  const orderAhead: typeof room.source.orderAhead = (kind, piece) => {
    asked.push(piece);
    return room.source.orderAhead(kind, piece);
  };
  const id = await plannedSitting({ ...room, source: { ...room.source, orderAhead } });
  // the pieces are ordered so, and the tutor reads it
  expect(asked.map((piece) => piece?.types?.includes)).toContainEqual(["overlap"]);
  expect(JSON.stringify(await must(readPaper(room.tutor, "paper")))).toContain('"among"');
  await must(openSitting(room.tutor, id));
  const before = await must(readOwnSitting(room.kim, id));
  expect(before.paper.sections.map(({ piece }) => piece)).toEqual(defaultPaper().sections.map(({ piece }) => piece));
  await must(enterSitting(room.kim, id, room.source));
  await must(beginSitting(room.tutor, id));
  const { practiceId } = await started(id, room.kim);
  const told = [
    before,
    await must(listOwnSittings(room.kim)),
    await must(readOwnSitting(room.kim, id)),
    await must(openBench(room.kim, practiceId, room.source)),
  ];
  for (const one of told) expect(JSON.stringify(one)).not.toMatch(/"includes"|"among"/);
});

test("the bench of a section that is not open names the sitting, whose page says why", async () => {
  const room = await openRoom();
  const id = await plannedSitting(room);
  const { practiceId } = await runOf(id, room.kim);
  expect(await openBench(room.kim, practiceId, room.source)).toEqual({ ok: false, code: "not-started", sittingId: id });
  await must(openSitting(room.tutor, id));
  await must(beginSitting(room.tutor, id));
  await makeAll();
  await started(id, room.kim);
  expect(await openBench(room.kim, practiceId, room.source)).toMatchObject({ ok: true, run: { sittingId: id } });
  // another learner is told no more than of one that does not exist
  expect(await openBench(room.ola, practiceId, room.source)).toEqual({ ok: false, code: "no-such-practice" });
});

test("no mark before the release; then marks, where the learner stands, and the attempts with their places", async () => {
  const room = await openRoom();
  const id = await begunSitting(room);
  const { practiceId } = await started(id, room.ola);
  room.at("10:20");
  await must(saveReport(room.ola, practiceId, save(1, room.now())));
  await must(handIn(room.ola, practiceId, { window: { id: WINDOW, base: 1 } }));
  const hidden = await must(readOwnSitting(room.ola, id));
  expect(hidden.sitting.sections.map(({ mark, mayKnowMarks }) => [mark, mayKnowMarks])).toEqual([
    [null, false],
    [null, false],
  ]);
  expect(hidden.standing).toBeNull();
  expect((await must(listOwnAttempts(room.ola))).attempts).toEqual([]);
  for (const told of [hidden, await must(listOwnSittings(room.ola))]) {
    expect(JSON.stringify(told)).not.toMatch(/markThousandths|isPassed|"truth"|"key"|"seed"/);
  }

  await must(closeSitting(room.tutor, id));
  await must(releaseSitting(room.tutor, id));
  const told = await must(readOwnSitting(room.ola, id));
  const plate = told.sitting.sections.find(({ section }) => section === "plate");
  expect(plate?.mark).toMatchObject({ section: "plate", passMark: 70 });
  // the paper allows one re-sit: a failed plate is due again alone, the fillet was never sat
  expect(plate?.mark?.isPassed).toBe(false);
  expect(told.standing).toBe("Sit the butt plate again on a fresh piece. Sit the fillet weld.");
  const { attempts } = await must(listOwnAttempts(room.ola));
  expect(attempts.map(({ sittingId, placed }) => [sittingId, placed?.kind, placed?.round])).toEqual([[id, "first", 1]]);
  expect((await must(listOwnAttempts(room.kim))).attempts).toEqual([]);
});

test("a void sitting says why, and shows no marks", async () => {
  const room = await openRoom();
  const id = await begunSitting(room);
  await started(id, room.ola);
  await must(voidSitting(room.tutor, id, { reason: "the power was cut" }));
  const { sitting } = await must(readOwnSitting(room.ola, id));
  expect([sitting.state, sitting.voidReason]).toEqual(["void", "the power was cut"]);
  expect(sitting.sections.every(({ mark }) => mark === null)).toBe(true);
});
