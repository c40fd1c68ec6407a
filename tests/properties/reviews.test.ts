import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isPass, shownMark } from "../../lib/results";
import { linesOf, type ReviewAct, type ReviewedSection, reviewed } from "../../lib/review";
import { act, contentsFor, markedSections, reviewCases } from "../support/review-cases";

const RUNS = { numRuns: 2_000, seed: 20261129 };

const together = ({ lines, floor }: ReviewedSection): number =>
  lines.reduce((sum, line) => sum + line.reviewed.earned, floor);
const takenBack = (acts: readonly ReviewAct[]): readonly ReviewAct[] => [
  ...acts,
  ...acts.map(({ id }, n) => act(1000 + n, { kind: "take-back", of: id })),
];

describe("tutors' acts on a mark, on random reports", () => {
  it("lines add up to the mark and to their parts exactly, between 0 and 100, and the shown mark decides", () => {
    fc.assert(
      fc.property(reviewCases, ({ result, acts }) => {
        const after = reviewed(result, acts);
        expect(together(after)).toBe(after.mark);
        expect(Object.values(after.parts).reduce((sum, { earned }) => sum + earned, 0)).toBe(after.mark);
        for (const { worth, earned } of Object.values(after.parts)) expect(earned).toBeLessThanOrEqual(worth);
        expect(after.mark).toBeGreaterThanOrEqual(0);
        expect(after.mark).toBeLessThanOrEqual(100_000);
        expect(after.passed).toBe(isPass(shownMark(after.mark), result.passMark));
        for (const { list, reviewed: now } of after.lines) {
          if (list !== "indications") expect(now.earned).toBeLessThanOrEqual(now.worth);
        }
        const questions = after.lines.filter(({ list }) => list === "questions");
        const worth = questions.reduce((sum, line) => sum + line.reviewed.worth, 0);
        expect(worth).toBe(result.questions?.worth ?? 0);
      }),
      RUNS,
    );
  });

  it("the computed mark stays beside it", () => {
    fc.assert(
      fc.property(reviewCases, ({ result, acts }) => {
        const before = JSON.stringify(result);
        const after = reviewed(result, acts);
        expect(JSON.stringify(result)).toBe(before);
        expect(after.first).toBe(result);
        expect(after.lines.map(({ worth, earned }) => [worth, earned])).toEqual(
          linesOf(result).map(({ worth, earned }) => [worth, earned]),
        );
      }),
      { ...RUNS, numRuns: 300 },
    );
  });

  it("taking everything back gives the computed mark, line by line", () => {
    fc.assert(
      fc.property(reviewCases, ({ result, acts }) => {
        const after = reviewed(result, takenBack(acts));
        expect([after.mark, after.shown, after.passed, after.floor]).toEqual([
          result.mark,
          result.shown,
          result.passed,
          0,
        ]);
        for (const line of after.lines) expect(line.reviewed).toEqual({ worth: line.worth, earned: line.earned });
      }),
      RUNS,
    );
  });

  it("the order of acts on different things does not matter", () => {
    const cases = markedSections.chain((result) =>
      fc
        .uniqueArray(contentsFor(result), {
          maxLength: 8,
          selector: (what) => (what.kind === "overrule" ? what.line : JSON.stringify(what)),
        })
        .chain((contents) =>
          fc.record({
            result: fc.constant(result),
            one: fc.constant(contents),
            other: fc.shuffledSubarray(contents, { minLength: contents.length, maxLength: contents.length }),
          }),
        ),
    );
    fc.assert(
      fc.property(cases, ({ result, one, other }) => {
        const marksOf = (contents: typeof one) =>
          reviewed(
            result,
            contents.map((what, n) => act(n + 1, what)),
          ).lines.map((line) => line.reviewed);
        expect(marksOf(other)).toEqual(marksOf(one));
      }),
      RUNS,
    );
  });

  it("acts come to the same in whatever order they are read", () => {
    fc.assert(
      fc.property(reviewCases, fc.infiniteStream(fc.nat()), ({ result, acts }, keys) => {
        const shuffled = acts.map((one) => ({ one, key: keys.next().value })).sort((a, b) => a.key - b.key);
        expect(
          reviewed(
            result,
            shuffled.map(({ one }) => one),
          ).mark,
        ).toBe(reviewed(result, acts).mark);
      }),
      { ...RUNS, numRuns: 500 },
    );
  });

  it("annulling one more question never lowers a mark", () => {
    fc.assert(
      fc.property(reviewCases, fc.nat(), ({ result, acts }, at) => {
        const asked = result.questions?.lines ?? [];
        if (asked.length === 0) return;
        const { question } = asked[at % asked.length];
        const before = reviewed(result, acts).mark;
        const after = reviewed(result, [...acts, act(5_000, { kind: "annul", question, batch: "b" })]).mark;
        expect(after).toBeGreaterThanOrEqual(before);
      }),
      RUNS,
    );
  });

  it("with every question annulled all that they are worth is given", () => {
    fc.assert(
      fc.property(reviewCases, ({ result, acts }) => {
        const asked = result.questions?.lines ?? [];
        if (asked.length === 0) return;
        const all = asked.map(({ question }, n) => act(6_000 + n, { kind: "annul", question, batch: "b" }));
        const onlyAnnulled = reviewed(result, [...acts.filter(({ what }) => what.kind === "annul"), ...all]);
        expect(onlyAnnulled.parts.questions?.earned).toBe(result.questions?.worth);
      }),
      RUNS,
    );
  });
});
