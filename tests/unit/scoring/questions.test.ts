import { expect, test } from "vitest";
import { drawQuestions } from "../../../lib/questions";
import { randomStream } from "../../../lib/random";
import type { ChosenOptions } from "../../../lib/report";
import { markQuestions } from "../../../lib/scoring";
import { drawMaterial } from "../../support/question-material";

const questions = drawQuestions(drawMaterial(randomStream("marked")), 7, randomStream("marked"));
const right = Object.fromEntries(questions.map(({ id, key }) => [id, key]));

// 10,000 / 7 = 1,428 and 4 left over, which go to the first four; worked by hand
const WORTHS = [1429, 1429, 1429, 1429, 1428, 1428, 1428];

test("all right earns the whole, shared out to the thousandth", () => {
  const marked = markQuestions(questions, right, 10_000);
  expect(marked.lines.map(({ worth }) => worth)).toEqual(WORTHS);
  expect([marked.part, marked.worth, marked.earned]).toEqual(["questions", 10_000, 10_000]);
});

test("a wrong option, none and one of no question earn nothing and cost nothing", () => {
  const answers: ChosenOptions = { ...right, q1: (questions[0].key + 1) % 4, q9: 1 };
  const { q2: _, q7: __, ...rest } = answers;
  const marked = markQuestions(questions, rest, 10_000);
  expect(marked.lines.map(({ earned }) => earned)).toEqual([0, 0, 1429, 1429, 1428, 1428, 0]);
  expect(marked.lines.map(({ written }) => written).slice(0, 2)).toEqual([answers.q1, null]);
  expect(marked.lines[6].written).toBeNull();
  expect(marked.earned).toBe(2 * 1429 + 2 * 1428);
});

test("a line carries what the mark sheet shows", () => {
  const [line] = markQuestions(questions, right, 10_000).lines;
  const { kind, stem, options, key, explanation, place } = questions[0];
  expect(line).toMatchObject({ question: "q1", kind, stem, options, key, explanation, place });
});

test("no questions are worth nothing", () => {
  expect(markQuestions([], {}, 0)).toEqual({ part: "questions", worth: 0, earned: 0, lines: [] });
});
