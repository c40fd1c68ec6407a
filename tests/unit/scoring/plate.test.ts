import { describe, expect, it } from "vitest";
import { EMPTY_REPORT } from "../../../lib/report";
import { DEFAULT_TOLERANCES, sectionResultSchema } from "../../../lib/results";
import { DEFAULT_SETTINGS, markIndications, markSection } from "../../../lib/scoring";
import type { DimensionTruth } from "../../../lib/specimen";
import { BUTT_JOINT, call, clutterItem, truthItem } from "../../support/marking-cases";

// All arithmetic below was done by hand from the text of the rule; all worked examples are the project's own.
const items = [
  truthItem({ id: "a", type: "slag-residue", start: 20, end: 40, across: 6 }),
  truthItem({ id: "b", type: "slag-residue", start: 100, end: 130, across: 6 }),
  truthItem({ id: "c", face: "root", type: "spatter", start: 20, end: 40, across: 6 }),
  truthItem({ id: "d", face: "root", type: "spatter", start: 200, end: 240, across: -9 }),
];
const exact = (id: string) => {
  const item = items.find((one) => one.id === id)!;
  return call({ ...item, id: `on-${id}` });
};

/** Highest cap 2.6 mm at 102 mm; what it is every 100 mm. */
const height: DimensionTruth = {
  dimension: "cap-height",
  station: null,
  value: 2.6,
  at: 102,
  along: { from: 2, step: 100, values: [1.4, 2.6, null] },
};
const step: DimensionTruth = { dimension: "linear-misalignment", station: null, value: 0.3, at: 40, along: null };

describe("both faces of a plate together", () => {
  it("share out one whole: four indications of one weight are worth a quarter each, whichever face they lie on", () => {
    const { lines, earned } = markIndications(
      ["cap", "root"],
      { items, clutter: [] },
      [exact("a"), exact("d")],
      DEFAULT_TOLERANCES,
    );
    expect(lines.map(({ kind, worth, truthIds }) => [kind, worth, truthIds[0]])).toEqual([
      ["found", 25_000, "a"],
      ["missed", 25_000, "b"],
      ["missed", 25_000, "c"],
      ["found", 25_000, "d"],
    ]);
    expect(earned).toBe(50_000);
  });

  it("never let a call on one face stand for what lies on the other, and charge it half a quarter", () => {
    const wrongFace = { ...exact("a"), face: "root" as const };
    const { lines, earned } = markIndications(
      ["cap", "root"],
      { items: items.filter(({ id }) => id !== "c"), clutter: [] },
      [wrongFace, exact("b"), exact("d")],
      DEFAULT_TOLERANCES,
    );
    // three indications: 33,333 and 33,334 of 100,000; a call costs half of a third, 16,667
    expect(lines.map(({ kind, earned: marks }) => [kind, marks])).toEqual([
      ["missed", 0],
      ["found", 33_333],
      ["false-call", -16_667],
      ["found", 33_333],
    ]);
    expect(earned).toBe(49_999);
  });

  it("name clutter of the face that was called, not of the other", () => {
    const chalk = { kind: "chalk-mark", start: 60, end: 70, across: 6 } as const;
    const clutter = [
      clutterItem({ id: "cap-chalk", ...chalk }, 2),
      { ...clutterItem({ id: "root-chalk", ...chalk }, 2), face: "root" as const },
    ];
    const calls = [call({ id: "x", face: "root", start: 62, end: 68, across: 6 })];
    const { lines } = markIndications(["cap", "root"], { items, clutter }, calls, DEFAULT_TOLERANCES);
    expect(lines.find(({ kind }) => kind === "false-call")?.clutter?.id).toBe("root-chalk");
  });

  it("lift the sum to 0, not each face: a good face pays for the other's false calls", () => {
    const stray = [1, 2, 3].map((n) => call({ id: `s${n}`, face: "root", start: 60 + 30 * n, across: 30 }));
    const { earned } = markIndications(
      ["cap", "root"],
      { items, clutter: [] },
      [exact("a"), exact("b"), ...stray],
      DEFAULT_TOLERANCES,
    );
    // 2 x 25,000 - 3 x 12,500
    expect(earned).toBe(12_500);
  });
});

describe("a section of a plate", () => {
  const truth = { items, clutter: [], dimensions: [height, step], statements: [], joint: BUTT_JOINT };
  const calls = items.map(({ id }) => exact(id));
  const marked = (measures: Parameters<typeof markSection>[2]["measures"]) =>
    markSection("plate", truth, { ...EMPTY_REPORT, calls, measures }, DEFAULT_SETTINGS.plate);

  it("gives indications 60 and dimensions 10 parts of 70, all lines adding up to the mark", () => {
    const result = marked([
      { dimension: "cap-height", station: null, value: 2.6, at: 102 },
      { dimension: "linear-misalignment", station: null, value: 0.3, at: null },
    ]);
    // 100,000 x 60 / 70 = 85,714.3 and 14,285.7: the unit left over goes to the larger remainder
    expect([result.indications.worth, result.dimensions?.worth]).toEqual([85_714, 14_286]);
    expect([result.mark, result.shown, result.passed]).toEqual([100_000, 100, true]);
    expect(sectionResultSchema.parse(JSON.parse(JSON.stringify(result)))).toEqual(result);
  });

  it.each([
    // Tolerance 0.5 mm, nothing from 1 mm on.
    { value: 2.1, share: 1 },
    { value: 3.1, share: 1 },
    { value: 3.35, share: 0.5 },
    { value: 3.6, share: 0 },
    { value: 9, share: 0 },
    { value: null, share: 0 },
  ])("a height of $value where 2.6 is true earns $share of its half", ({ value, share }) => {
    const line = marked([{ dimension: "cap-height", station: null, value, at: 102 }]).dimensions!.lines[0];
    expect(line.worth).toBe(7_143);
    expect(line.earned).toBe(Math.round(7_143 * share));
  });

  it("says what it is where it was measured, and nothing where that is not known", () => {
    const there = (at: number | null) =>
      marked([{ dimension: "cap-height", station: null, value: 1.4, at }]).dimensions!.lines[0].actualThere;
    expect([there(0), there(49), there(55), there(202), there(300), there(null)]).toEqual([
      1.4,
      1.4,
      2.6,
      null,
      null,
      null,
    ]);
  });

  it("leaves everything to the indications where a specimen has no dimensions", () => {
    const result = markSection(
      "plate",
      { items, clutter: [], dimensions: [], statements: [], joint: BUTT_JOINT },
      { ...EMPTY_REPORT, calls },
      DEFAULT_SETTINGS.plate,
    );
    expect([result.indications.worth, result.dimensions, result.mark]).toEqual([100_000, null, 100_000]);
  });

  it("a blank report is 0", () => {
    expect(markSection("plate", truth, EMPTY_REPORT, DEFAULT_SETTINGS.plate).mark).toBe(0);
  });
});
