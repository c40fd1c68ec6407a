import { expect, test } from "vitest";
import { annulQuestion, previewAnnulment } from "@/app/_server/use-cases/annul-question";
import { overruleLine } from "@/app/_server/use-cases/overrule-line";
import { takeBackReview } from "@/app/_server/use-cases/take-back-review";
import { shownMark } from "@/lib/results";
import { reviewed } from "@/lib/review";
import { listAudit } from "@/prisma/stores/audit";
import { freshDatabaseForEachTest } from "../../support/database";
import { changeResult, firstOf, sittingWithQuestions, why } from "./review-room";
import { must } from "./sitting-room";

freshDatabaseForEachTest();

test("a question is annulled for everybody who was asked it, after the preview has said whose marks change", async () => {
  const { room, ola, kim } = await sittingWithQuestions();
  const ofOla = (await firstOf(ola.practiceId)).result.questions;
  if (!ofOla) throw new Error("nothing asked");
  // kim was asked ola's first question as her third, with other wrong options, and answered it wrongly
  await changeResult(kim.practiceId, (result) => {
    const [shared] = ofOla.lines;
    const lines = result.questions?.lines.map((line, at) => {
      const { kind, stem, key } = shared;
      const options = shared.options.map((option, n) => (n === key ? option : `none of these ${n}`));
      // nor was it among what she was asked otherwise
      const other = { ...line, stem: `Something else, number ${at}` };
      return at === 2 ? { ...line, kind, stem, options, key, written: (key + 1) % 4 } : other;
    });
    return { ...result, questions: result.questions && { ...result.questions, lines } };
  });
  const before = { ola: await firstOf(ola.practiceId), kim: await firstOf(kim.practiceId) };

  const { ok: _, rows, ...preview } = await must(previewAnnulment(room.tutor, ola.runId, { question: "q1" }));
  // ola has everything for the others that its share goes to; kim had nothing for it, and nothing for the others
  expect(preview).toEqual({ asked: 2, marks: 0, verdicts: 0 });
  expect(rows.map(({ learner }) => learner)).toEqual(["Name of kim", "Name of ola"]);
  const seen = { marks: 0, verdicts: 0 };
  expect(
    await annulQuestion(room.tutor, ola.runId, { question: "q1", reason: why, seen: { marks: 1, verdicts: 0 } }),
  ).toMatchObject({ code: "review-changed" });
  await must(annulQuestion(room.tutor, ola.runId, { question: "q1", reason: why, seen }));
  const annulled = async (practiceId: string) => {
    const { result, acts } = await firstOf(practiceId);
    return reviewed(result, acts)
      .lines.filter(({ list }) => list === "questions")
      .map((line) => line.annulled);
  };
  expect(await annulled(ola.practiceId)).toEqual(["shared-out", null, null]);
  expect(await annulled(kim.practiceId)).toEqual([null, null, "shared-out"]);
  expect((await listAudit([ola.runId, kim.runId])).map(({ act, reason }) => [act, reason])).toEqual([
    ["annul", why],
    ["annul", why],
  ]);
  expect(await previewAnnulment(room.tutor, ola.runId, { question: "q1" })).toMatchObject({ code: "no-such-question" });

  // taken back at one, it comes back for both
  const [act] = (await firstOf(kim.practiceId)).acts;
  await must(takeBackReview(room.tutor, kim.runId, { act: act.id, reason: "it was right" }));
  for (const who of ["ola", "kim"] as const) {
    const after = await firstOf(who === "ola" ? ola.practiceId : kim.practiceId);
    expect(reviewed(after.result, after.acts).mark).toBe(before[who].markThousandths);
  }
});

test("what is asked about a piece is annulled for those on that piece alone, and a mark goes up by it", async () => {
  const { room, ola, kim } = await sittingWithQuestions();
  const { result } = await firstOf(kim.practiceId);
  // kim's first is right after all; her second is annulled: of three worth 50 one was right, of two one
  await changeResult(kim.practiceId, ({ questions, ...rest }) => {
    const lines = questions?.lines.map((line, at) =>
      at === 0
        ? { ...line, kind: "weld-width", stem: "How wide is it?", written: line.key, earned: line.worth }
        : { ...line, kind: "cap-height" },
    );
    const earned = lines?.[0].earned ?? 0;
    return {
      ...rest,
      mark: rest.mark + earned,
      shown: shownMark(rest.mark + earned),
      questions: questions && { ...questions, lines, earned },
    };
  });
  const preview = await must(previewAnnulment(room.tutor, kim.runId, { question: "q2" }));
  expect([preview.asked, preview.marks]).toEqual([1, 1]);
  await must(
    annulQuestion(room.tutor, kim.runId, {
      question: "q2",
      reason: why,
      seen: { marks: preview.marks, verdicts: preview.verdicts },
    }),
  );
  const after = await firstOf(kim.practiceId);
  expect(reviewed(after.result, after.acts).parts.questions?.earned).toBe(25_000);
  expect(result.questions?.worth).toBe(50_000);
  expect((await firstOf(ola.practiceId)).acts).toEqual([]);
});

test("in the log an overruled question is before and after of one worth, also where another was annulled", async () => {
  const { room, kim } = await sittingWithQuestions();
  // kim's second is right; her first is annulled, so that it brings more than it was worth when it was marked
  await changeResult(kim.practiceId, ({ questions, ...rest }) => {
    const lines = questions?.lines.map((line, at) =>
      at === 1 ? { ...line, written: line.key, earned: line.worth } : { ...line, kind: "weld-width" },
    );
    const earned = lines?.[1].earned ?? 0;
    const mark = rest.mark + earned;
    return { ...rest, mark, shown: shownMark(mark), questions: questions && { ...questions, lines, earned } };
  });
  const { marks, verdicts } = await must(previewAnnulment(room.tutor, kim.runId, { question: "q1" }));
  await must(annulQuestion(room.tutor, kim.runId, { question: "q1", reason: why, seen: { marks, verdicts } }));
  const { result, acts } = await firstOf(kim.practiceId);
  const worth = result.questions?.lines[1].worth ?? 0;
  expect(reviewed(result, acts).lines.find(({ id }) => id === "questions 1")?.reviewed.earned).toBeGreaterThan(worth);
  const logged = async (given: number) => {
    await must(overruleLine(room.tutor, kim.runId, { line: "questions 1", marks: given, reason: why }));
    return (await listAudit([kim.runId])).at(-1)?.details;
  };
  expect(await logged(8)).toMatchObject({ lineBefore: worth, lineAfter: 8_000, lineWorth: worth });
  expect(await logged(4)).toMatchObject({ lineBefore: 8_000, lineAfter: 4_000, lineWorth: worth });
});
