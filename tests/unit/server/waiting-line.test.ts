import { describe, expect, test } from "vitest";
import { openLine } from "@/app/_server/generation/waiting-line";

/** Everything that is in the line, in the order in which it comes out, one at a time. */
function emptied(line: ReturnType<typeof openLine<string>>): string[] {
  const out: string[] = [];
  for (let job = line.next(false); job !== null; job = line.next(false)) out.push(job);
  return out;
}

describe("the line of jobs before the threads that make specimens", () => {
  test("lets learners who wait go first, then looks, then what is made ahead, each in the order they came", () => {
    const line = openLine<string>();
    line.add("ahead 1", "ahead");
    line.add("look 1", "look");
    line.add("ahead 2", "ahead");
    line.add("awaited 1", "awaited");
    line.add("look 2", "look");
    line.add("awaited 2", "awaited");
    expect(emptied(line)).toEqual(["awaited 1", "awaited 2", "look 1", "look 2", "ahead 1", "ahead 2"]);
  });

  test("leaves a thread free beside what no learner waits for", () => {
    const line = openLine<string>();
    line.add("ahead", "ahead");
    line.add("look", "look");
    expect(line.next(true)).toBeNull();
    line.add("awaited", "awaited");
    expect([line.next(true), line.next(true)]).toEqual(["awaited", null]);
    expect(line.next(false)).toBe("look");
  });

  test("brings all of a piece forward once somebody waits for it, behind those who came before", () => {
    const line = openLine<string>();
    line.add("other's cap", "ahead", "other");
    line.add("own cap", "ahead", "own");
    line.add("own root", "ahead", "own");
    line.add("earlier", "awaited", "earlier");
    line.hurry("own");
    line.hurry("nobody's");
    expect([1, 2, 3, 4].map(() => line.next(true))).toEqual(["earlier", "own cap", "own root", null]);
    expect(emptied(line)).toEqual(["other's cap"]);
  });

  test("lets go of what is not wanted any more, unless it has begun", () => {
    const line = openLine<string>();
    const leaves = ["begun", "typed over", "kept"].map((job) => line.add(job, "look", job));
    expect(line.next(false)).toBe("begun");
    line.hurry("typed over");
    expect(leaves.slice(0, 2).map((leave) => leave())).toEqual([false, true]);
    expect(emptied(line)).toEqual(["kept"]);
    expect(leaves.map((leave) => leave())).toEqual([false, false, false]);
  });
});
