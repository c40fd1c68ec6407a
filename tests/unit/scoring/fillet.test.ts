import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { EMPTY_REPORT, type Report } from "../../../lib/report";
import { sectionResultSchema } from "../../../lib/results";
import { DEFAULT_SETTINGS, markSection } from "../../../lib/scoring";
import type { DimensionTruth, StatementTruth } from "../../../lib/specimen";
import { ASKED_DIMENSIONS, STATEMENT_ANSWERS, STATEMENTS } from "../../../lib/weld";
import { call, FILLET_JOINT, truthItem } from "../../support/marking-cases";

// All arithmetic below was done by hand from the text of the rule; all worked examples are the project's own.
const face = "fillet" as const;
const items = [
  { ...truthItem({ id: "a", type: "slag-residue", start: 20, end: 40, across: 6 }), face },
  { ...truthItem({ id: "b", type: "slag-residue", start: 100, end: 130, across: -6 }), face },
];
const throatAt = (station: number, value: number, at: number): DimensionTruth => ({
  dimension: "throat",
  station,
  value,
  at,
  along: null,
});
/** Smallest leg 5.9 mm at 14 mm; what it is every mm from 12 mm on. */
const smallest: DimensionTruth = {
  dimension: "smallest-leg",
  station: null,
  value: 5.9,
  at: 14,
  along: { from: 12, step: 1, values: [6.4, null, 5.9] },
};
const profile: StatementTruth = { statement: "profile", right: ["mitre", "convex"], value: 0.38, limit: 0.3 };
const size: StatementTruth = { statement: "size", right: ["not-met"], value: 3.61, limit: 4 };
const truth = {
  items,
  clutter: [],
  dimensions: [throatAt(1, 4.6, 41), throatAt(2, 4.9, 103), smallest],
  statements: [profile, size],
  joint: FILLET_JOINT,
};
const exact: Report = {
  version: 1,
  calls: items.map((item) => ({ ...call({ ...item, id: `on-${item.id}` }), face })),
  measures: [
    { dimension: "throat", station: 1, value: 4.6, at: null },
    { dimension: "throat", station: 2, value: 4.9, at: 103 },
    { dimension: "smallest-leg", station: null, value: 5.9, at: 14 },
  ],
  statements: [
    { statement: "profile", answer: "convex" },
    { statement: "size", answer: "not-met" },
  ],
  pieceSentence: null,
  answers: {},
};
/** Weights that give round numbers where nothing is sentenced or asked. */
const SETTINGS = {
  ...DEFAULT_SETTINGS.fillet,
  weights: { indications: 40, dimensions: 60, sentences: 10, questions: 20 },
};
const marked = (report: Report) => markSection("fillet", truth, report, SETTINGS);

describe("a fillet as a section", () => {
  it("gives indications 20 and dimensions with statements 50 parts of 70 where nothing else is asked", () => {
    const { indications, dimensions, sentences, mark } = markSection("fillet", truth, exact, DEFAULT_SETTINGS.fillet);
    // 100,000 x 20 / 70 = 28,571.4 and 71,428.6
    expect([indications.worth, dimensions?.worth, sentences, mark]).toEqual([28_571, 71_429, null, 100_000]);
  });

  it("has lines that add up to the mark", () => {
    const result = marked(exact);
    // 40 and 60 of 100 parts
    expect([result.indications.worth, result.dimensions?.worth]).toEqual([40_000, 60_000]);
    // 60,000 among five
    expect(result.dimensions?.lines.map(({ worth }) => worth)).toEqual([12_000, 12_000, 12_000]);
    expect(result.dimensions?.statements.map(({ worth }) => worth)).toEqual([12_000, 12_000]);
    expect([result.section, result.mark, result.passMark, result.passed]).toEqual(["fillet", 100_000, 70, true]);
    expect(sectionResultSchema.parse(JSON.parse(JSON.stringify(result)))).toEqual(result);
  });

  it("holds a measure against its own station, never against another one", () => {
    const swapped = exact.measures.map((one) => (one.station === null ? one : { ...one, station: 3 - one.station }));
    const lines = marked({ ...exact, measures: swapped }).dimensions!.lines;
    // 0.3 mm off at either station, within 0.5 mm
    expect(lines.map(({ station, written, error, earned }) => [station, written, error, earned])).toEqual([
      [1, 4.9, 0.3, 12_000],
      [2, 4.6, 0.3, 12_000],
      [null, 5.9, 0, 12_000],
    ]);
    const elsewhere = marked({ ...exact, measures: [{ ...exact.measures[0], station: 3 }] }).dimensions!.lines;
    expect(elsewhere.map(({ written }) => written)).toEqual([null, null, null]);
  });

  it.each([
    // tolerance 0.5 mm, nothing from 1 mm on
    { value: 4.1, share: 1 },
    { value: 5.1, share: 1 },
    { value: 5.35, share: 0.5 },
    { value: 3.6, share: 0 },
    { value: null, share: 0 },
  ])("a throat of $value where 4.6 is true earns $share of its line", ({ value, share }) => {
    const measures = [{ dimension: "throat", station: 1, value, at: null } as const];
    expect(marked({ ...exact, measures }).dimensions!.lines[0].earned).toBe(12_000 * share);
  });

  it("says how small a leg is where it was measured, and nothing where that is not known or it is a station", () => {
    const there = (at: number | null) =>
      marked({ ...exact, measures: [{ dimension: "smallest-leg", station: null, value: 6, at }] }).dimensions!.lines[2]
        .actualThere;
    expect([there(12), there(13), there(14.3), there(150), there(null)]).toEqual([6.4, null, 5.9, null, null]);
    expect(marked(exact).dimensions!.lines[1].actualThere).toBeNull();
  });

  it.each([
    // 0.38 lies 0.08 from the limit of 0.3: both are right; 3.61 lies 0.39 below 4: only one is
    { stated: { statement: "profile", answer: "mitre" }, earned: [12_000, 0] },
    { stated: { statement: "profile", answer: "convex" }, earned: [12_000, 0] },
    { stated: { statement: "profile", answer: "concave" }, earned: [0, 0] },
    { stated: { statement: "size", answer: "not-met" }, earned: [0, 12_000] },
    { stated: { statement: "size", answer: "met" }, earned: [0, 0] },
    { stated: { statement: "asymmetry", answer: "equal" }, earned: [0, 0] },
  ] as const)("$stated.statement $stated.answer earns $earned: in full or not at all", ({ stated, earned }) => {
    const result = marked({ ...exact, statements: [stated] });
    expect(result.dimensions?.statements.map((line) => line.earned)).toEqual(earned);
    // whatever is not stated costs nothing else
    expect(result.mark).toBe(100_000 - 24_000 + earned[0] + earned[1]);
  });

  it("takes nothing from calls on a plate's faces, and a blank report is 0", () => {
    const onCap = exact.calls.map((one) => ({ ...one, face: "cap" as const }));
    expect(marked({ ...EMPTY_REPORT, calls: onCap }).indications.totals.calls).toBe(0);
    expect(marked(EMPTY_REPORT).mark).toBe(0);
  });

  it("leaves everything to dimensions and statements where there is no weight for indications, and the other way round", () => {
    const bare = markSection("fillet", { ...truth, dimensions: [], statements: [] }, exact, SETTINGS);
    expect([bare.indications.worth, bare.dimensions, bare.mark]).toEqual([100_000, null, 100_000]);
    const stated = markSection("fillet", { ...truth, dimensions: [] }, exact, SETTINGS);
    expect([stated.indications.worth, stated.dimensions?.lines, stated.mark]).toEqual([40_000, [], 100_000]);
  });
});

describe("whatever is measured and stated on a fillet", () => {
  const tenths = fc.integer({ min: 0, max: 300 }).map((n) => n / 10);
  const whole = fc.record({
    dimensions: fc.tuple(...ASKED_DIMENSIONS.fillet.map(() => tenths)),
    written: fc.tuple(...ASKED_DIMENSIONS.fillet.map(() => fc.option(tenths))),
    right: fc.tuple(...STATEMENTS.map((one) => fc.constantFrom(...STATEMENT_ANSWERS[one]))),
    answers: fc.tuple(...STATEMENTS.map((one) => fc.constantFrom(...STATEMENT_ANSWERS[one]))),
  });

  it("adds up exactly, lies between 0 and 100, and is never less for one value or answer put right", () => {
    fc.assert(
      fc.property(whole, fc.integer({ min: 0, max: 13 }), ({ dimensions, written, right, answers }, mended) => {
        const sizes = ASKED_DIMENSIONS.fillet;
        const asked = {
          items,
          clutter: [],
          dimensions: sizes.map((one, n) => ({ ...one, value: dimensions[n], at: null, along: null })),
          statements: STATEMENTS.map((statement, n) => ({ statement, right: [right[n]], value: 0, limit: 0 })),
          joint: FILLET_JOINT,
        };
        const report = (isMended: boolean) => ({
          calls: exact.calls,
          measures: sizes.map((one, n) => ({
            ...one,
            value: isMended && n === mended ? dimensions[n] : written[n],
            at: null,
          })),
          statements: STATEMENTS.map((statement, n) => ({
            statement,
            answer: isMended && n + sizes.length === mended ? right[n] : answers[n],
          })) as Report["statements"],
          pieceSentence: null,
          answers: {},
        });
        const result = markSection("fillet", asked, report(false), SETTINGS);
        const part = result.dimensions!;
        const worth = [...part.lines, ...part.statements].reduce((sum, line) => sum + line.worth, 0);
        const earned = [...part.lines, ...part.statements].reduce((sum, line) => sum + line.earned, 0);
        expect([worth, earned + result.indications.earned]).toEqual([60_000, result.mark]);
        expect(result.mark).toBeGreaterThanOrEqual(0);
        expect(result.mark).toBeLessThanOrEqual(100_000);
        const better = markSection("fillet", asked, report(true), SETTINGS);
        expect(better.mark).toBeGreaterThanOrEqual(result.mark);
      }),
      { numRuns: 300 },
    );
  });
});
