import { describe, expect, it } from "vitest";
import { shownMark } from "../../../lib/results";
import { call, truthItem } from "../../support/marking-cases";
import { markCap } from "../../support/marking-simulation";

/** Kind, what the line adds in thousandths of a mark, and whom it names. */
const sketch = (result: ReturnType<typeof markCap>) =>
  result.lines.map((line) => [line.kind, line.earned, [...line.truthIds, ...line.callIds].join(" ")]);

// All arithmetic below was done by hand from the text of the rule; all worked examples are the project's own.
describe("a whole section worked by hand", () => {
  // Four indications of weight 1: each is worth 100,000 / 4 = 25,000; a call costs half of that, 12,500.
  const items = [
    truthItem({ id: "a", type: "slag-residue", start: 20, end: 60, across: 5 }),
    truthItem({ id: "b", type: "surface-pore", start: 100, end: 100, across: -3, size: 2 }),
    truthItem({ id: "c", type: "excess-weld-metal", start: 150, end: 200, across: 0, size: 4 }),
    truthItem({ id: "d", type: "spatter", start: 240, end: 260, across: 20 }),
    truthItem({ id: "n", type: "continuous-undercut", start: 220, end: 228, across: -7, size: 0.2, neutral: true }),
  ];
  const calls = [
    // On a: start 6 mm off. Tolerance 5 (10 % of 40 is less), nothing from 15: (15 - 6) / 10 = 0.9.
    call({ id: "1", type: "slag-residue", start: 26, end: 60, across: 5 }),
    // On b: sticks out 10: (20 - 10) / 12 = 0.833. 4 beside: (8 - 4) / 5 = 0.8. Place 0.833 x 0.8 = 0.666.
    call({ id: "2", type: "crater-pipe", start: 110, across: 1, size: 2.7 }),
    // On c: two pieces with 2 mm open between them, from 150 to 205.
    call({ id: "3", type: "excess-weld-metal", start: 150, end: 172, across: 0, size: 4 }),
    call({ id: "4", type: "excess-weld-metal", start: 174, end: 205, across: 1, size: 3.5 }),
    // Nothing there.
    call({ id: "5", type: "overlap", start: 280, end: 290, across: -7 }),
    // On the neutral n, 11 mm too long: (20 - 11) / 12 = 0.75 of its price comes back.
    call({ id: "6", type: "intermittent-undercut", start: 220, end: 239, across: -7, size: 0.3 }),
    // No place across.
    call({ id: "7", type: "overlap", start: 280, end: 290 }),
  ];
  const result = markCap(items, calls);

  it("has these lines", () => {
    expect(sketch(result)).toEqual([
      // Parts: 40 + 25 + 10 x 0.9 + 10 + 5 = 89 of 90 (no size). 25,000 x 89 / 90 = 24,722; the price comes back in full.
      ["partly", 24_722, "a 1"],
      // Parts: 40 + 25 x 0.5 + 10 x 0.5 + 10 x 0.8 + 5 x 0.5 = 68 of 90 (no end). Quality 0.666 x 68 / 90 = 0.5032.
      // 25,000 x 0.5032 = 12,580; price back 12,500 x 0.666 = 8,325; 12,580 + 8,325 - 12,500 = 8,405.
      ["partly", 8_405, "b 2"],
      // End 5 mm off is within 5, size 4 and place are right: 25,000 x 0.95 = 23,750; both prices come back.
      ["split", 23_750, "c 3 4"],
      // 12,500 x 0.75 - 12,500.
      ["neutral-called", -3_125, "n 6"],
      ["missed", 0, "d"],
      ["false-call", -12_500, "5"],
      ["not-counted", 0, "7"],
    ]);
  });

  it("adds up to 24,722 + 8,405 + 23,750 - 3,125 - 12,500 = 41,252 and shows 41.3", () => {
    expect(result.earned).toBe(41_252);
    expect(shownMark(result.earned)).toBe(41.3);
  });

  it("accounts for each part of the first line: 24,722 shared out as 40 : 25 : 9 : 10 : 5", () => {
    // 24,722 / 89 = 277.775: 11,111.0 + 6,944.4 + 2,499.98 + 2,777.75 + 1,388.88; three left over to the largest remainders.
    const parts = result.lines[0].parts.map(({ part, written, actual, error, share, earned, full }) => [
      part,
      written,
      actual,
      error,
      share,
      earned,
      full,
    ]);
    expect(parts).toEqual([
      ["found", null, null, null, 1000, 11_111, 11_111],
      ["type", "slag-residue", "slag-residue", null, 1000, 6_944, 6_944],
      ["start", 26, 20, 6, 900, 2_500, 2_778],
      ["end", 60, 60, 0, 1000, 2_778, 2_778],
      ["across", 5, 5, 0, 1000, 1_389, 1_389],
    ]);
    expect(result.lines[0].parts[2]).toMatchObject({ tolerance: 5, nothingFrom: 15 });
  });

  it("says what a miss would have needed", () => {
    const missed = result.lines.find(({ kind }) => kind === "missed")!;
    expect(missed.parts.map(({ part, actual, tolerance }) => [part, actual, tolerance])).toEqual([
      ["found", null, null],
      ["type", "spatter", null],
      ["start", 240, 5],
      ["end", 260, 5],
      ["across", 20, 2],
    ]);
  });
});

describe("weights", () => {
  it("share 100 marks exactly: a crack (1.5) and a pore (1) are worth 60 and 40", () => {
    const items = [
      truthItem({ id: "a", type: "longitudinal-crack", start: 10, end: 50 }),
      truthItem({ id: "b", type: "surface-pore", start: 100, end: 100, size: 1 }),
    ];
    expect(markCap(items, []).lines.map(({ worth }) => worth)).toEqual([60_000, 40_000]);
  });

  it("give what cannot be divided to the earlier of three equal ones", () => {
    const items = [10, 60, 110].map((start, i) => truthItem({ id: `${i}`, type: "spatter", start, end: start + 20 }));
    expect(markCap(items, []).lines.map(({ worth }) => worth)).toEqual([33_334, 33_333, 33_333]);
  });
});

describe("merged calls", () => {
  const overlaps = (gap: number) => [
    truthItem({ id: "a", type: "overlap", start: 50, end: 70, across: 7 }),
    truthItem({ id: "b", type: "overlap", start: 70 + gap, end: 100, across: 7 }),
  ];
  const over = call({ id: "1", type: "overlap", start: 50, end: 100, across: 7 });

  it("keep 85 % over two indications 4 mm apart", () => {
    expect(sketch(markCap(overlaps(4), [over]))).toEqual([["merged", 85_000, "a b 1"]]);
  });

  it("shrink with the gap: 8 mm leaves (15 - 8) / 10 = 0.7", () => {
    // 100,000 x 0.85 x 0.7 = 59,500 and 0.7 of the price 25,000 back: 59,500 + 17,500 - 25,000 = 52,000.
    expect(markCap(overlaps(8), [over]).earned).toBe(52_000);
  });

  it("cost nothing for a neutral feature beside an indication", () => {
    const [a, b] = overlaps(4);
    expect(markCap([a, { ...b, neutral: true }], [over]).earned).toBe(100_000);
  });

  it("do not join the two toes of a weld: a call between them is beside both", () => {
    const [a, b] = overlaps(4);
    const result = markCap(
      [
        { ...a, across: 9 },
        { ...b, across: -9 },
      ],
      [{ ...over, across: 0 }],
    );
    expect(result.lines.map(({ kind }) => kind).sort()).toEqual(["false-call", "floor", "missed", "missed"]);
  });
});

describe("split calls", () => {
  const item = truthItem({ id: "a", type: "overlap", start: 50, end: 150, across: 7 });
  const piece = (id: string, start: number, end: number, type: "overlap" | "spatter" = "overlap") =>
    call({ id, type, start, end, across: 7 });

  it("keep 95 % in two pieces and 0.95 x 0.95 = 90.25 % in three", () => {
    expect(markCap([item], [piece("1", 50, 100), piece("2", 102, 150)]).earned).toBe(95_000);
    expect(markCap([item], [piece("1", 50, 80), piece("2", 80, 120), piece("3", 118, 150)]).earned).toBe(90_250);
  });

  it("are named as their worst piece, so that naming one of two better never scores less", () => {
    // Both wrong: 65 of 90 x 0.95. One right, one wrong: the same, not one call right and the other false.
    const bothWrong = markCap([item], [piece("1", 50, 100, "spatter"), piece("2", 100, 150, "spatter")]);
    const oneRight = markCap([item], [piece("1", 50, 100), piece("2", 100, 150, "spatter")]);
    expect(bothWrong.earned).toBe(Math.round((100_000 * 0.95 * 65) / 90));
    expect(oneRight.earned).toBe(bothWrong.earned);
    expect(oneRight.lines[0].parts.find(({ part }) => part === "type")).toMatchObject({ written: "spatter", share: 0 });
  });

  it("do not exist for a point: the second call on a pore is a false call", () => {
    const pore = truthItem({ id: "p", type: "surface-pore", start: 50, end: 50, size: 1 });
    const on = call({ id: "1", type: "surface-pore", start: 50, across: 0, size: 1 });
    expect(sketch(markCap([pore], [on, { ...on, id: "2" }]))).toEqual([
      ["found", 100_000, "p 1"],
      ["false-call", -50_000, "2"],
    ]);
  });
});

describe("a section with nothing to find", () => {
  const neutral = truthItem({ id: "n", type: "surface-pore", start: 50, end: 50, size: 0.3, neutral: true });
  const on = call({ id: "1", type: "surface-pore", start: 50, across: 0, size: 0.5 });
  const off = (id: string) => call({ id, type: "overlap", start: 200, end: 220, across: 7 });

  it("has 100 marks less 15 for each call that is not on a neutral feature", () => {
    const result = markCap([neutral], [on, off("2"), off("3")]);
    expect(sketch(result)).toEqual([
      ["nothing-to-find", 100_000, ""],
      ["neutral-called", 0, "n 1"],
      ["false-call", -15_000, "2"],
      ["false-call", -15_000, "3"],
    ]);
    expect(result.earned).toBe(70_000);
  });

  it("never falls below 0, and says so in a line of its own", () => {
    const calls = Array.from({ length: 8 }, (_, i) => off(`${i}`));
    const result = markCap([], calls);
    // 100 - 8 x 15 = -20.
    expect(result.lines.at(-1)).toMatchObject({ kind: "floor", earned: 20_000 });
    expect(result.earned).toBe(0);
  });
});

describe("blank fields", () => {
  const item = truthItem({ id: "a", type: "continuous-undercut", start: 50, end: 90, across: 7, size: 1 });
  const exact = call({ id: "1", type: "continuous-undercut", start: 50, end: 90, across: 7, size: 1 });

  it.each([
    { field: "type", mark: 75_000 },
    { field: "size", mark: 90_000 },
    { field: "end", mark: 90_000 },
    { field: "start", mark: 0 },
    { field: "across", mark: 0 },
  ])("without $field the call has $mark thousandths", ({ field, mark }) => {
    expect(markCap([item], [{ ...exact, [field]: null }]).earned).toBe(mark);
  });

  it("read a call whose ends were written the wrong way round like the right one", () => {
    expect(markCap([item], [{ ...exact, start: 90, end: 50 }]).earned).toBe(100_000);
  });
});

describe("misalignment, which lies under the whole weld", () => {
  // Weights 1 and 1: each is worth 50,000, a call costs 25,000.
  const items = [
    truthItem({ id: "step", type: "linear-misalignment", start: 0, end: 300, across: 0, size: 2 }),
    truthItem({ id: "pore", type: "surface-pore", start: 80, end: 80, across: 1, size: 1 }),
  ];

  it("is not found by a false call that happens to lie on it", () => {
    const result = markCap(items, [call({ id: "1", type: "overlap", start: 150, end: 170, across: 0 })]);
    expect(sketch(result)).toEqual([
      ["missed", 0, "step"],
      ["missed", 0, "pore"],
      ["false-call", -25_000, "1"],
      ["floor", 25_000, ""],
    ]);
  });

  it("is found by a call that names it, wherever that ends", () => {
    const named = call({ id: "1", type: "linear-misalignment", start: 0, end: 300, across: 0, size: 2 });
    expect(sketch(markCap(items, [named]))).toEqual([
      ["found", 50_000, "step 1"],
      ["missed", 0, "pore"],
    ]);
  });
});
