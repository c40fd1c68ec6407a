import { expect, test } from "vitest";
import { analyseItems, analyseSection, itemsOf, observationsOf, partScores, reliabilityOf } from "@/lib/progress";
import { randomStream } from "@/lib/random";
import { EMPTY_REPORT } from "@/lib/report";
import type { QuestionLine } from "@/lib/results";
import { reviewed } from "@/lib/review";
import { DEFAULT_SETTINGS, markSection } from "@/lib/scoring";
import { seenItems } from "@/lib/specimen";
import { difficultyOf } from "@/lib/specimen/difficulty";
import { act, careless } from "../../support/review-cases";
import { syntheticFillet, syntheticPlate } from "../../support/synthetic-truths";

const line = (options: readonly string[], written: number | null): QuestionLine => ({
  question: "q1",
  kind: "what-number",
  stem: "Which number has undercut?",
  options: [...options],
  key: options.indexOf("501"),
  written,
  explanation: "",
  place: null,
  worth: 100,
  earned: 0,
});

test("the same question in another order of options is one item", () => {
  const items = itemsOf([
    [line(["501", "502", "503", "504"], 0)],
    [line(["504", "503", "501", "502"], 0)],
    [],
    [line(["502", "501", "504", "503"], null), { ...line(["501", "502", "503", "504"], 1), stem: "Another?" }],
  ]);
  expect(items).toMatchObject([
    {
      stem: "Which number has undercut?",
      texts: ["501", "502", "503", "504"],
      key: 0,
      chosen: [0, 3, undefined, null],
    },
    { stem: "Another?", chosen: [undefined, undefined, undefined, 1] },
  ]);
  expect(analyseItems(items)[0]).toMatchObject({ asked: 3, right: 1, blank: 1 });
});

test("the same words with another right answer, as on another piece, are another item", () => {
  const faces = ["On the cap face", "On the root face", "On both", "On neither"];
  const which = (key: number, written: number): QuestionLine => ({ ...line(faces, written), stem: "Which face?", key });
  const items = itemsOf([[which(0, 0)], [which(1, 1)], [which(0, 1)]]);
  expect(items.map(({ texts, key }) => texts[key])).toEqual(["On the cap face", "On the root face"]);
  expect(analyseItems(items)).toMatchObject([
    { asked: 2, right: 1 },
    { asked: 1, right: 1 },
  ]);
});

test("an annulled question is marked as annulled, and counts neither among the rest nor for the reliability", () => {
  const sections = ["one", "two", "three"].map((name) => {
    const result = careless(name, "plate", 3);
    const [first, ...others] = result.questions?.lines ?? [];
    // everybody's first is the same question, so that it is asked often enough
    const shared = { ...first, stem: "Which one?", options: ["a", "b", "c", "d"], key: 1, written: 0, earned: 0 };
    const questions = result.questions && { ...result.questions, lines: [shared, ...others] };
    return { practiceId: name, shown: result.shown, passed: result.passed, result: { ...result, questions } };
  });
  const { question } = sections[0].result.questions!.lines[0];
  const annulled = [act(1, { kind: "annul", question, batch: "b" })];
  const analysis = analyseSection(sections.map((one, n) => ({ ...one, acts: n < 2 ? annulled : [] })));
  expect(analysis.items).toMatchObject([{ item: { stem: "Which one?" }, asked: 3, right: 0, annulled: 2 }]);

  // as suspect as another question, which comes behind it: annulled for two it still counts for the other seven, and for all it does not
  const whole = [...sections, ...sections, ...sections].map(({ result, ...one }) => {
    const [shared, ...others] = result.questions?.lines ?? [];
    const other = { ...shared, stem: "Which other one?", question: "other" };
    const questions = result.questions && { ...result.questions, lines: [shared, other, ...others] };
    return { ...one, result: { ...result, questions } };
  });
  const inOrder = (most: number) =>
    analyseSection(whole.map((one, n) => ({ ...one, acts: n < most ? annulled : [] })))
      .items.slice(0, 2)
      .map(({ item, suspicions }) => [item.stem, suspicions.length]);
  const [first, second] = inOrder(0);
  expect([first[1], second[1]]).toEqual([1, 1]);
  expect(inOrder(2)).toEqual([first, second]);
  expect(inOrder(9)).toEqual([second, first]);

  const parts = sections.map(({ result }, n) => partScores(reviewed(result, n < 2 ? annulled : [])));
  expect(analysis.reliability?.alpha).toBe(reliabilityOf(parts.map((row) => row.map((part) => part ?? 0))).alpha);
  const asked = analyseSection(sections.map((one) => ({ ...one, acts: [] })));
  expect(asked.items[0].annulled).toBe(0);
  expect(asked.reliability?.mean).not.toBe(analysis.reliability?.mean);

  // among the rest: whoever had it annulled is held against the other questions alone
  const items = itemsOf(
    sections.map(({ result }) => result.questions?.lines ?? []),
    [new Set([question]), new Set([question]), new Set()],
  );
  const other = { id: "other", key: 0, options: 2, chosen: [0, 1, 0] };
  const pick = (chosen: readonly (number | null)[], annulledFor: ReadonlySet<number>) => ({
    ...other,
    id: "annulled",
    chosen,
    annulledFor,
  });
  expect(items[0].annulledFor).toEqual(new Set([0, 1]));
  const [counted] = analyseItems([other, pick([0, 1, 0], new Set())]);
  const [left] = analyseItems([other, pick([0, 1, 0], new Set([0, 1, 2]))]);
  expect(counted.discrimination).toBeCloseTo(1, 10);
  expect(left.discrimination).toBeNull();
});

test("parts of marked sections go into the reliability of their mark", () => {
  const truth = syntheticPlate(randomStream("parts"));
  const results = [0, 3, 6].map((count) => {
    const calls = truth.items.slice(0, count).map((item) => ({
      id: item.id,
      face: item.face,
      type: item.type,
      start: item.start,
      end: item.end,
      across: item.across,
      size: item.size,
      sentence: null,
    }));
    return markSection("plate", truth, { ...EMPTY_REPORT, calls }, DEFAULT_SETTINGS.plate);
  });
  const rows = results.map((result) => partScores(reviewed(result, [])).flatMap((score) => score ?? []));
  expect(rows.map((row) => row.length)).toEqual([2, 2, 2]);
  const { mean } = reliabilityOf(rows);
  expect(mean).toBeCloseTo(results.reduce((sum, { mark }) => sum + mark, 0) / 3000, 6);
});

test("how well imperfections of a finished plate are seen is what its blueprint goes by; a fillet's place is told by its leg", () => {
  const outline = [
    [0, 0],
    [4, 0],
    [4, 3],
  ] as const;
  const plate = syntheticPlate(randomStream("seen"));
  const items = plate.items.map((item) => ({ ...item, outline }));
  for (const seen of seenItems({ ...plate, items })) {
    expect(seen.difficulty).toBe(difficultyOf(seen, seen.face, plate.joint));
    expect(seen.eye.value).toBeGreaterThan(0);
  }
  const fillet = syntheticFillet(randomStream("seen"));
  const pore = {
    ...fillet.items[0],
    type: "surface-pore" as const,
    start: 50,
    end: 50,
    size: 1,
    outline,
  };
  const [bead, plateAway] = seenItems({
    ...fillet,
    items: [pore, pore].map((item, n) => ({ ...item, across: 40 * n })),
  });
  // pores on the bead are seen a little less well than those on the plate by 0.2 logits, in either joint
  expect(bead.difficulty - plateAway.difficulty).toBeCloseTo(0.2, 10);
  const observed = observationsOf({
    result: markSection("fillet", { ...fillet, items: [pore] }, EMPTY_REPORT, DEFAULT_SETTINGS.fillet),
    truths: [bead],
    clutter: [],
    calls: [],
    seconds: 60,
  });
  expect(observed).toMatchObject({ weldLength: 200, section: "fillet", seconds: 60 });
});
