import { describe, expect, test } from "vitest";
import { rulesOf, tasksOf } from "@/app/_papers/paper-words";
import { draftOf, problemText, readDraft, written } from "@/app/(tutor)/desk/papers/_builder/draft";
import { defaultPaper, type Paper } from "@/lib/sittings";

const paper = defaultPaper();
const draft = draftOf(paper);
const withFirst = (changes: object) => ({
  ...draft,
  sections: draft.sections.map((section, n) => (n === 0 ? { ...section, ...changes } : section)),
});

describe("a paper in its fields", () => {
  test("says what it said", () => {
    expect(written(draft)).toEqual(paper);
    expect(readDraft(draft)).toEqual({ ok: true, paper, problems: {} });
  });

  test.each<[string, object, string, string]>([
    ["nothing", { minutes: " " }, "sections[0].minutes", "a whole number from 5 to 480."],
    ["letters", { minutes: "two hours" }, "sections[0].minutes", "a whole number from 5 to 480."],
    ["half a minute", { minutes: "90.5" }, "sections[0].minutes", "a whole number from 5 to 480."],
    ["nothing", { passMark: "" }, "sections[0].passMark", "0 to 100, at most one decimal, for example 69.5."],
    ["infinity", { questionCount: "1e999" }, "sections[0].questionCount", "a whole number from 0 to 20."],
    [
      "no weight at all",
      { weights: Object.fromEntries(Object.keys(draft.sections[0].weights).map((part) => [part, "0"])) },
      "sections[0].weights",
      "at least one part above 0.",
    ],
    [
      "a thickness of another blueprint",
      { piece: { ...draft.sections[0].piece, blueprint: "final-mock", thickness: 8 } },
      "sections[0].piece.thickness",
      "as it comes, or 12 to 20 mm for this blueprint.",
    ],
  ])("%s (%j) is told at its field", (_what, changes, field, told) => {
    const read = readDraft(withFirst(changes));
    expect(Object.keys(read.problems)).toEqual([field]);
    expect(problemText(read.problems[field])).toBe(told);
  });

  test("takes a comma for a point", () => {
    expect(readDraft(withFirst({ passMark: "69,5" }))).toMatchObject({ paper: { sections: [{ passMark: 69.5 }, {}] } });
  });

  test("says in the page's words that one piece for all and marks at once do not go together", () => {
    const { problems } = readDraft({ ...draft, forms: "same", feedback: "at-once" });
    expect(problemText(problems.feedback)).toMatch(/^when you release the sitting where all sit the same piece/);
  });
});

describe("the rules that a learner reads", () => {
  const rules = (changes: Partial<Paper>) => rulesOf({ ...paper, ...changes }).join(" ");

  test("follow every choice of the paper", () => {
    expect(rules({})).toContain("never averaged");
    expect(rules({ forms: "own" })).toContain("yours alone");
    expect(rules({ forms: "same" })).toContain("the same piece");
    expect(rules({ feedback: "at-once" })).toContain("as soon as it is closed");
    expect(rules({ breakMinutes: 1 })).toContain("up to 1 minute;");
    expect(rules({ breakMinutes: 0 })).not.toContain("rest");
    expect(rules({ resits: 0 })).toContain("not sat again by itself");
    expect(rules({ resits: 1 })).toContain("on a fresh piece, once.");
    expect(rules({ resits: 3 })).toContain("up to 3 times");
    expect(rules({ borderlinePiece: true })).toContain("the mean of both marks decides");
    expect(rules({ borderlinePiece: false })).not.toContain("mean");
  });

  test("of a paper of one section say nothing of others", () => {
    expect(rules({ sections: paper.sections.slice(0, 1) })).not.toMatch(/averaged|Between two/);
  });

  test("ask for nothing that carries no marks", () => {
    const [plate] = paper.sections;
    const onlyDimensions = { ...plate, weights: { ...plate.weights, indications: 0 } };
    expect(tasksOf(plate)[0]).toMatch(/^Inspect both faces/);
    expect(tasksOf(onlyDimensions).join(" ")).not.toContain("Inspect");
  });
});
