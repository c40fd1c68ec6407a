import { expect, test } from "vitest";
import { markAgain, previewMarkAgain } from "@/app/_server/use-cases/mark-again";
import { overruleLine } from "@/app/_server/use-cases/overrule-line";
import { readReview } from "@/app/_server/use-cases/read-review";
import { RULE_VERSION, type SectionResult } from "@/lib/results";
import { reviewed } from "@/lib/review";
import { listAudit } from "@/prisma/stores/audit";
import { freshDatabaseForEachTest } from "../../support/database";
import { changeResult, closedSitting, firstOf, missOf, why } from "./review-room";
import { must } from "./sitting-room";

freshDatabaseForEachTest();

/** As a rule would mark that gave nothing for indications. */
function nothingEarned(result: SectionResult) {
  const lines = result.indications.lines.map((line) => ({ ...line, earned: 0, parts: [], cost: 0, back: 0 }));
  return { ...result, mark: 0, shown: 0, passed: false, indications: { ...result.indications, earned: 0, lines } };
}

test("marked under an older rule: both marks are kept with their versions, and the tutor says which counts", async () => {
  const { room, ola } = await closedSitting();
  const { result: asMarked, markThousandths } = await firstOf(ola.practiceId);
  // the same by an older rule: nothing would differ
  await changeResult(ola.practiceId, (result) => ({ ...result, ruleVersion: "2.9" }));
  expect(await must(previewMarkAgain(room.tutor, ola.runId))).toMatchObject({
    lines: [],
    again: { mark: markThousandths },
  });
  const same = { first: markThousandths, again: markThousandths };
  expect(await markAgain(room.tutor, ola.runId, { counts: true, seen: same, reason: why })).toMatchObject({
    code: "nothing-differs",
  });
  // by one that gave nothing for what was found in the right place
  await changeResult(ola.practiceId, nothingEarned);
  const preview = await must(previewMarkAgain(room.tutor, ola.runId));
  expect(preview).toMatchObject({
    first: { ruleVersion: "2.9", shown: 0, waiting: [] },
    again: { ruleVersion: RULE_VERSION, mark: asMarked.mark, waiting: [] },
  });
  expect(preview.lines.length).toBeGreaterThan(0);
  const seen = { first: preview.first.mark, again: preview.again.mark };
  for (const other of [
    { ...seen, first: 1 },
    { ...seen, again: 1 },
  ]) {
    expect(await markAgain(room.tutor, ola.runId, { counts: true, seen: other, reason: why })).toMatchObject({
      code: "review-changed",
    });
  }
  await must(markAgain(room.tutor, ola.runId, { counts: false, seen, reason: "the class sat by 2.9" }));
  expect((await firstOf(ola.practiceId)).reviewed).toMatchObject({ markThousandths: 0 });
  await must(markAgain(room.tutor, ola.runId, { counts: true, seen, reason: why }));
  const after = await firstOf(ola.practiceId);
  expect(after.reviewed?.markThousandths).toBe(preview.again.mark);
  expect([after.result.ruleVersion, after.result.mark]).toEqual(["2.9", 0]);
  const { sheet } = await must(readReview(room.tutor, ola.runId));
  expect(sheet.review?.markedAgain).toMatchObject({
    first: { ruleVersion: "2.9", shown: 0 },
    again: { ruleVersion: RULE_VERSION },
    counts: "again",
  });
  expect(sheet.sections[0].ruleVersion).toBe(RULE_VERSION);
  expect((await listAudit([ola.runId])).map(({ act, reason }) => [act, reason])).toEqual([
    ["mark-again", "the class sat by 2.9"],
    ["mark-again", why],
  ]);
});

test("before it is marked again each choice says what would count and what would wait; back and forth nothing is lost", async () => {
  const { room, ola } = await closedSitting();
  await changeResult(ola.practiceId, (result) => ({ ...nothingEarned(result), ruleVersion: "2.9" }));
  const { worth, id: line } = await missOf(ola.practiceId);
  const overrule = (marks: number) =>
    must(overruleLine(room.tutor, ola.runId, { line, marks: marks / 1000, reason: why }));
  const preview = () => must(previewMarkAgain(room.tutor, ola.runId));
  const again = async (counts: boolean) => {
    const shown = await preview();
    const seen = { first: shown.first.mark, again: shown.again.mark };
    await must(markAgain(room.tutor, ola.runId, { counts, seen, reason: why }));
    const { reviewed: stored, result, acts } = await firstOf(ola.practiceId);
    // it came to what was shown, and that is what stands beside it
    expect(stored?.markThousandths).toBe(counts ? seen.again : seen.first);
    expect(reviewed(result, acts).mark).toBe(stored?.markThousandths);
    return stored?.markThousandths;
  };
  const marksOf = (waiting: readonly { readonly marks: number; readonly ruleVersion: string }[]) =>
    waiting.map(({ marks, ruleVersion }) => [marks, ruleVersion]);

  await overrule(worth);
  const ofFirst = await preview();
  expect(ofFirst.first).toMatchObject({ computed: 0, mark: worth, waiting: [] });
  expect(marksOf(ofFirst.again.waiting)).toEqual([[worth, "2.9"]]);
  expect(ofFirst.again.waiting[0].line).toContain("Root concavity");
  const computed = ofFirst.again.mark;
  expect(await again(true)).toBe(computed);

  await overrule(worth - 1_000);
  const ofBoth = await preview();
  expect([ofBoth.first.mark, ofBoth.again.mark]).toEqual([worth, computed + worth - 1_000]);
  expect(marksOf(ofBoth.first.waiting)).toEqual([[worth - 1_000, RULE_VERSION]]);
  expect(marksOf(ofBoth.again.waiting)).toEqual([[worth, "2.9"]]);
  expect(await again(false)).toBe(worth);
  expect(await again(true)).toBe(computed + worth - 1_000);
});
