import { expect, test } from "vitest";
import { DEFAULT_CRITERIA } from "../../../lib/criteria";
import { drawQuestions } from "../../../lib/questions";
import { randomStream } from "../../../lib/random";
import { type ChosenOptions, EMPTY_REPORT, type Report } from "../../../lib/report";
import { DEFAULT_PAPER, sectionResultSchema } from "../../../lib/results";
import { DEFAULT_SETTINGS, markQuestions, markSection } from "../../../lib/scoring";
import { statedSchema } from "../../../lib/weld";
import { drawMaterial } from "../../support/question-material";
import { syntheticFillet, syntheticPlate } from "../../support/synthetic-truths";

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

test.each(["plate", "fillet"] as const)(
  "an exact %s with every answer right is worth all, and each wrong one costs its own marks",
  (section) => {
    const truth = section === "plate" ? syntheticPlate(randomStream("whole")) : syntheticFillet(randomStream("whole"));
    const asked = drawQuestions(
      { section, truth, criteria: DEFAULT_CRITERIA },
      DEFAULT_PAPER[section].questions,
      randomStream("x"),
    );
    const exact: Report = {
      ...EMPTY_REPORT,
      calls: truth.items
        .filter(({ neutral }) => !neutral)
        .map(({ id, face, type, start, end, across, size }) => ({
          id: id.toLowerCase(),
          face,
          type,
          start,
          end,
          across,
          size,
          sentence: null,
        })),
      measures: truth.dimensions.map(({ dimension, station, value, at }) => ({ dimension, station, value, at })),
      statements: truth.statements.map(({ statement, right: [answer] }) => statedSchema.parse({ statement, answer })),
      answers: Object.fromEntries(asked.map(({ id, key }) => [id, key])),
    };
    const marked = (report: Report) => markSection(section, truth, report, DEFAULT_SETTINGS[section], asked);
    const whole = marked(exact);
    // nothing is sentenced here: 15 of 85 parts of a plate and 20 of 90 of a fillet go to the questions
    expect([whole.mark, whole.questions?.worth]).toEqual([100_000, section === "plate" ? 17_647 : 22_222]);
    expect(sectionResultSchema.parse(JSON.parse(JSON.stringify(whole)))).toEqual(whole);
    for (const { id, key } of asked) {
      const wrong = marked({ ...exact, answers: { ...exact.answers, [id]: (key + 3) % 4 } });
      expect(whole.mark - wrong.mark).toBe(whole.questions?.lines.find(({ question }) => question === id)?.worth);
    }
  },
);
