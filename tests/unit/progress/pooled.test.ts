import { expect, test } from "vitest";
import { addPooledQuestions, analyseItems, itemsOf, pooledQuestions } from "../../../lib/progress";
import { withPooled } from "../../../lib/progress/questions/pooled";
import type { QuestionLine } from "../../../lib/results";

const line = (stem: string, written: number | null): QuestionLine => ({
  question: "q1",
  kind: "k",
  stem,
  options: ["d", "c", "b", "a"],
  key: 3,
  written,
  explanation: "",
  place: null,
  worth: 1,
  earned: 0,
});

test("answers that are kept of nobody count for how hard a question is, and say nothing of who answers it well", () => {
  const here = itemsOf([
    [line("one", 3), line("two", 3)],
    [line("one", 0), line("two", 0)],
  ]);
  const gone = pooledQuestions([[line("one", 3), line("two", null)], [line("one", 3)]]);
  const [one] = gone.values();
  expect(one).toMatchObject({ texts: ["a", "b", "c", "d"], key: 0, chosen: [2, 0, 0, 0], blank: 0 });
  const plain = analyseItems(here);
  const [first, second] = analyseItems(withPooled(here, gone));
  expect(first).toMatchObject({ asked: 4, right: 3, facility: 0.75, discrimination: plain[0].discrimination });
  expect(second).toMatchObject({ asked: 3, right: 1, blank: 1, discrimination: plain[1].discrimination });
  expect(plain[0].discrimination).toBe(1);
  expect(addPooledQuestions(one, one)).toMatchObject({ chosen: [4, 0, 0, 0] });
});
