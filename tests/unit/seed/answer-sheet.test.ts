import { describe, expect, it } from "vitest";
import { CLUTTER } from "@/lib/imperfections";
import type { ClutterItem, TruthItem } from "@/lib/specimen";
import { answerTable } from "@/seed/commands/specimen-pictures/answer-table";
import { clutterHeight, clutterList } from "@/seed/commands/specimen-pictures/clutter-list";

const item = (n: number): TruthItem => ({
  id: `cap-${n}`,
  face: "cap",
  type: "root-penetration",
  start: 100 + n,
  end: 120 + n,
  across: -4.26,
  size: 1,
  width: 1,
  worst: [110, 0],
  outline: [],
  neutral: true,
});
const clutter = CLUTTER.map(
  (kind, n): ClutterItem => ({ id: kind, face: "root", kind, start: 20 + n, end: 31 + n, across: 8.04, outline: [] }),
);
const wordsOf = (svg: string) => [...svg.matchAll(/>([^<]+)<\/text>/g)].map(([, words]) => words);
const heightsOf = (svg: string) => [...svg.matchAll(/<text x="[\d.]+" y="([\d.]+)"/g)].map(([, y]) => Number(y));

describe("answer sheet", () => {
  it("keeps every row of a full plate between its two heights", () => {
    for (const count of [1, 2, 19, 30, 44]) {
      const svg = answerTable(
        Array.from({ length: count }, (_, n) => item(n)),
        2336,
        2700,
      );
      expect(Math.max(...heightsOf(svg))).toBeLessThanOrEqual(2700);
      for (let n = 0; n < count; n++) expect(wordsOf(svg)).toContain(`${100 + n} to ${120 + n} mm`);
      expect(wordsOf(svg).filter((words) => words === "B 4.3").length).toBe(count);
    }
    expect(wordsOf(answerTable([], 2336, 2700))).toEqual(["Nothing to find."]);
  });

  it("lists what is harmless with its kind and place, and nothing where there is none", () => {
    const svg = clutterList(clutter, 2700);
    expect(wordsOf(svg)[0]).toBe("Harmless, but tempting");
    expect(wordsOf(svg)).toContain("root: a chalk mark, 20 to 31 mm, A 8.0");
    expect(wordsOf(svg).length).toBe(1 + CLUTTER.length);
    expect(Math.max(...heightsOf(svg))).toBeLessThanOrEqual(2700 + clutterHeight(clutter.length));
    expect(clutterList([], 2700)).toBe("");
  });
});
