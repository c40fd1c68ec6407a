import { expect, test } from "vitest";
import type { QuestionLine, SectionResult } from "../../../lib/results";
import { canBeTakenBack, differences, linesOf, marksWithin, reviewed } from "../../../lib/review";
import { markQuestions } from "../../../lib/scoring";
import { act, careless } from "../../support/review-cases";

/** A section with so many thousandths for its questions; those answered by their keys are told. */
function withQuestions(worth: number, right: readonly boolean[]): SectionResult {
  const base = careless("four questions", "plate", 4);
  if (!base.questions) throw new Error("nothing asked");
  const asked = base.questions.lines
    .slice(0, right.length)
    .map((line: QuestionLine) => ({ ...line, id: line.question }));
  const answers = Object.fromEntries(asked.map(({ id, key }, n) => [id, right[n] ? key : (key + 1) % 4]));
  // lib/scoring is the outside check here: it marks questions that were asked, and knows nothing of annulments
  const questions = markQuestions(
    asked.map(({ id, kind, stem, options, key, explanation, place }) => ({
      id,
      kind,
      source: "trade",
      stem,
      options: options as [string, string, string, string],
      key,
      explanation,
      place,
    })),
    answers,
    worth,
  );
  return { ...base, questions, mark: base.mark - base.questions.earned + questions.earned };
}

const annul = (id: number, question: string) => act(id, { kind: "annul", question, batch: "b" });
const ofQuestions = (result: SectionResult, acts: Parameters<typeof reviewed>[1]) =>
  reviewed(result, acts)
    .lines.filter(({ list }) => list === "questions")
    .map((line) => [line.reviewed.worth, line.reviewed.earned, line.annulled]);

test("annulled, answered wrongly: as if it had not been asked", () => {
  // 16,000 for four, two right: 8,000. The third out: 16,000 for three, 5,334 + 5,333 + 5,333, of which two are right
  const result = withQuestions(16_000, [true, true, false, false]);
  expect(result.questions?.earned).toBe(8_000);
  expect(ofQuestions(result, [annul(1, "q3")])).toEqual([
    [5_334, 5_334, null],
    [5_333, 5_333, null],
    [0, 0, "shared-out"],
    [5_333, 0, null],
  ]);
  // the same as if it had never been asked
  const without = withQuestions(16_000, [true, true, false]);
  expect(reviewed(result, [annul(1, "q3")]).parts.questions?.earned).toBe(without.questions?.earned);
});

test("annulled, answered by its key: it keeps its marks", () => {
  const result = withQuestions(16_000, [true, true, false, false]);
  expect(ofQuestions(result, [annul(1, "q1")])).toEqual([
    [4_000, 4_000, "kept"],
    [4_000, 4_000, null],
    [4_000, 0, null],
    [4_000, 0, null],
  ]);
  // both wrong ones out: what is left is right, so all of it is earned
  expect(reviewed(result, [annul(1, "q3"), annul(2, "q4")]).parts.questions?.earned).toBe(16_000);
});

test("where no question is left its marks are given in full", () => {
  const result = withQuestions(10_001, [false, false]);
  expect(ofQuestions(result, [annul(1, "q1"), annul(2, "q2")])).toEqual([
    [5_001, 5_001, "shared-out"],
    [5_000, 5_000, "shared-out"],
  ]);
  expect(ofQuestions(withQuestions(9_000, [false]), [annul(1, "q1")])).toEqual([[9_000, 9_000, "shared-out"]]);
});

test("a question overruled before another is annulled keeps its part of what it is worth", () => {
  // half of 4,000 given; the others' shares grow to 16,000 / 3
  const result = withQuestions(16_000, [false, true, false, false]);
  const half = act(1, { kind: "overrule", base: null, line: "questions 0", marks: 2_000 });
  expect(ofQuestions(result, [half])[0]).toEqual([4_000, 2_000, null]);
  expect(ofQuestions(result, [half, annul(2, "q4")])[0]).toEqual([5_334, 2_667, null]);
});

test("an overruled line changes the mark by just what it changes, and the verdict with it", () => {
  const result = careless("one line");
  const line = linesOf(result).find(({ range, earned, worth }) => range !== null && worth > 0 && earned < worth);
  if (!line) throw new Error("nothing lost");
  const after = reviewed(result, [act(1, { kind: "overrule", base: null, line: line.id, marks: line.worth })]);
  expect(after.mark - result.mark).toBe(line.worth - line.earned);
  // the pass mark just between the two shown marks: not passed before, passed after
  const between: SectionResult = { ...result, passMark: after.shown, passed: false };
  expect(reviewed(between, []).passed).toBe(false);
  expect(reviewed(between, [act(1, { kind: "overrule", base: null, line: line.id, marks: line.worth })]).passed).toBe(
    true,
  );
});

test("the price of a false call can be taken back and nothing more; what was never judged cannot be overruled", () => {
  const result = careless("reviewed 0");
  const kinds = result.indications.lines.map(({ kind }) => kind);
  expect(kinds).toContain("false-call");
  const lines = linesOf(result);
  for (const [at, kind] of kinds.entries()) {
    if (kind === "false-call") expect(lines[at].range).toEqual({ least: 0, most: 0 });
    if (kind === "neutral-left" || kind === "floor" || kind === "not-counted") expect(lines[at].range).toBeNull();
  }
});

test("where false calls ate everything, a price that is taken back first fills up what was below 0", () => {
  const base = careless("floor");
  const call = (cost: number) => ({
    ...base.indications.lines[0],
    kind: "false-call" as const,
    worth: 0,
    earned: cost,
    cost,
    back: 0,
    parts: [],
  });
  const floor = { ...call(0), kind: "floor" as const, earned: 30_000 };
  // 20,000 earned, 50,000 in prices: lifted by 30,000 to 0
  const lines = [{ ...base.indications.lines[0], worth: 60_000, earned: 20_000 }, call(-25_000), call(-25_000), floor];
  const result: SectionResult = {
    ...base,
    mark: base.mark - base.indications.earned,
    indications: { ...base.indications, earned: 0, lines },
  };
  const back = (id: number, at: number) =>
    act(id, { kind: "overrule", base: null, line: `indications ${at}`, marks: 0 });
  expect(reviewed(result, [back(1, 1)]).parts.indications?.earned).toBe(0);
  expect(reviewed(result, [back(1, 1), back(2, 2)]).parts.indications?.earned).toBe(20_000);
  // and a find that is taken away where there was no floor before
  const { lines: _, ...without } = result.indications;
  const noFloor: SectionResult = {
    ...result,
    indications: { ...without, lines: lines.slice(0, 1).concat(call(-5_000)) },
  };
  const taken = reviewed(noFloor, [back(1, 0)]);
  expect([taken.parts.indications?.earned, taken.floor]).toEqual([0, 5_000]);
});

test("the last overruling of a line counts; taken back, the computed mark does", () => {
  const result = careless("twice");
  const [line] = linesOf(result).filter(({ range }) => range !== null && range.most > 2_000);
  const say = (id: number, marks: number) => act(id, { kind: "overrule", base: null, line: line.id, marks });
  const earnedAfter = (acts: Parameters<typeof reviewed>[1]) =>
    reviewed(result, acts).lines.find(({ id }) => id === line.id)?.reviewed.earned;
  const acts = [say(1, 1_000), say(2, 2_000)];
  expect(earnedAfter(acts)).toBe(2_000);
  expect([canBeTakenBack(acts, 1), canBeTakenBack(acts, 2)]).toEqual([false, true]);
  const back = [...acts, act(3, { kind: "take-back", of: 2 })];
  expect(earnedAfter(back)).toBe(line.earned);
  expect(canBeTakenBack(back, 2)).toBe(false);
  expect(earnedAfter([...back, say(4, 0)])).toBe(0);
});

test("marked again, the mark that counts is the one that the tutor chose; overrulings stay with the mark they were said of", () => {
  const first = { ...careless("again"), ruleVersion: "2.0" };
  const again = careless("again, by another rule");
  const [line] = linesOf(first).filter(({ range }) => range !== null && range.most > 0);
  const overruled = act(1, { kind: "overrule", base: null, line: line.id, marks: line.worth });
  const counts = act(2, { kind: "re-mark", result: again, counts: true });
  const after = reviewed(first, [overruled, counts]);
  expect([after.mark, after.base, after.baseId, after.first.ruleVersion]).toEqual([again.mark, again, 2, "2.0"]);
  expect(after.standing.waiting).toEqual([overruled]);
  const onNew = act(3, { kind: "overrule", base: 2, line: linesOf(again)[0].id, marks: 0 });
  expect(
    reviewed(first, [overruled, counts, onNew]).standing.overrulings.get(
      onNew.what.kind === "overrule" ? onNew.what.line : "",
    ),
  ).toBe(onNew);
  // kept beside, but the first one counts, with what was said of it
  const kept = reviewed(first, [overruled, act(2, { kind: "re-mark", result: again, counts: false })]);
  expect([kept.base, kept.mark]).toEqual([first, reviewed(first, [overruled]).mark]);
  expect(kept.standing.remark?.what.result).toBe(again);
  // taken back
  expect(reviewed(first, [overruled, counts, act(4, { kind: "take-back", of: 2 })]).mark).toBe(kept.mark);
});

test("marked again twice with the same outcome: what was overruled of it counts again, and of one line the last", () => {
  const first = { ...careless("again"), ruleVersion: "2.0" };
  const again = careless("again, by another rule");
  const [line] = linesOf(again).filter(({ range }) => range !== null && range.most > 2_000);
  // stored and read each time: equal, and not the same object
  const remark = (id: number, counts: boolean, result = again) =>
    act(id, { kind: "re-mark", result: structuredClone(result), counts });
  const say = (id: number, base: number, marks: number) => act(id, { kind: "overrule", base, line: line.id, marks });
  const markOf = (acts: Parameters<typeof reviewed>[1]) => reviewed(first, acts).mark;
  const overruled = [remark(5, true), say(6, 5, 1_000)];
  const counting = again.mark - line.earned + 1_000;
  expect(markOf(overruled)).toBe(counting);
  expect(markOf([...overruled, remark(7, false)])).toBe(first.mark);
  const back = [...overruled, remark(7, false), remark(9, true)];
  expect(markOf(back)).toBe(counting);
  expect(reviewed(first, back).standing.waiting).toEqual([]);
  // of both said of the one marking the last counts; taken back, none of those before it comes back
  const later = [...back, say(10, 9, 2_000)];
  expect(markOf(later)).toBe(again.mark - line.earned + 2_000);
  expect([canBeTakenBack(later, 6), canBeTakenBack(later, 10)]).toEqual([false, true]);
  expect(markOf([...later, act(11, { kind: "take-back", of: 10 })])).toBe(again.mark);
  // under yet another rule it is another marking, even where it brings the same
  const third = [...overruled, remark(7, true, { ...again, ruleVersion: "9.9" })];
  expect(reviewed(first, third).standing.waiting.map(({ id }) => id)).toEqual([6]);
  expect(markOf(third)).toBe(again.mark);
});

test("two markings differ in the lines that bring other marks", () => {
  const first = careless("same");
  expect(differences(first, careless("same"))).toEqual([]);
  const [line, ...others] = first.dimensions?.lines ?? [];
  const other = line.earned === 0 ? line.worth : 0;
  const again: SectionResult = {
    ...first,
    dimensions: first.dimensions && { ...first.dimensions, lines: [{ ...line, earned: other }, ...others] },
  };
  expect(differences(first, again).map(({ part, before, after }) => [part, before?.earned, after?.earned])).toEqual([
    ["dimensions", line.earned, other],
  ]);
});

test("marks as typed: what a line is worth as it is shown means all of it", () => {
  expect(marksWithin(12.35, { least: 0, most: 12_345 })).toBe(12_345);
  expect(marksWithin(12.3, { least: 0, most: 12_345 })).toBe(12_300);
  expect(marksWithin(12.36, { least: 0, most: 12_345 })).toBeNull();
  expect(marksWithin(0, { least: 0, most: 0 })).toBe(0);
  expect(marksWithin(0.01, { least: 0, most: 0 })).toBeNull();
});
