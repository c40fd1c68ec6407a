import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  assess,
  assessPiece,
  BUILT_IN_CRITERIA,
  type Indication,
  type Load,
  measuredSize,
  OUTCOMES,
  type Piece,
  SYMBOLS,
  worstWindow,
} from "@/lib/criteria";
import { IMPERFECTION_TYPES, imperfection } from "@/lib/imperfections";

/** Places on a grid of 0.05 mm, as counts of it: what is added up stays exact, and a plain loop meets every edge. */
const GRID = 0.05;
const HAIR = 1e-6;
const steps = (mm: number) => Math.round(mm / GRID);

const criteria = fc.constantFrom(...BUILT_IN_CRITERIA);
const hundredths = (min: number, max: number) =>
  fc.integer({ min: min * 100, max: max * 100 }).map((value) => value / 100);

const piece: fc.Arbitrary<Piece> = fc
  .record({
    length: hundredths(60, 400),
    t: hundredths(0.5, 60),
    others: fc.record({ a: hundredths(3, 12), b: hundredths(4, 40) }),
  })
  .chain(({ length, t, others: { a, b } }) =>
    fc.subarray([...SYMBOLS]).map((known) => {
      const all = { t, s: t, a, aA: 0.9 * a, b, bRoot: b / 4, z: 1.4 * a, hCap: 2 };
      return { length, values: { t, ...Object.fromEntries(known.map((symbol) => [symbol, all[symbol]])) } };
    }),
  );

const size = fc.option(hundredths(0, 6), { nil: undefined });
const sizes = fc.record({
  depth: size,
  height: size,
  diameter: size,
  "diameter-sum": size,
  difference: size,
  gap: size,
  width: size,
  "leg-shortfall": size,
});

/** Of few types, so that they add up. */
const types = fc.oneof(
  fc.constantFrom(...IMPERFECTION_TYPES),
  fc.constantFrom(
    "root-concavity",
    "continuous-undercut",
    "surface-pore",
    "clustered-porosity",
    "root-penetration" as const,
  ),
);
const indication = (length: number): fc.Arbitrary<Indication> =>
  types.chain((type) =>
    fc
      .record({
        face: fc.constantFrom(...imperfection(type).faces),
        start: hundredths(0, length),
        long: fc.oneof(fc.constant(0), hundredths(0, 60)),
        sizes,
        angle: fc.option(fc.integer({ min: 60, max: 170 }), { nil: undefined }),
      })
      .map(({ face, start, long, sizes: measured, angle }) => ({
        id: "i",
        type,
        face,
        start,
        end: Math.min(length, start + long),
        measured: {
          ...Object.fromEntries(Object.entries(measured).filter(([, value]) => value !== undefined)),
          ...(angle === undefined ? {} : { "toe-angle": angle }),
        },
      })),
  );

const situation = piece.chain((one) =>
  fc.record({
    piece: fc.constant(one),
    criteria,
    indications: fc.array(indication(Math.floor(one.length)), { maxLength: 8 }),
  }),
);

describe("sentences, whatever is written", () => {
  it("a size that grows never turns a rejection into anything else", () => {
    fc.assert(
      fc.property(
        situation.filter(({ indications }) => indications.length > 0),
        fc.nat(7),
        fc.constantFrom(
          "depth",
          "height",
          "diameter",
          "diameter-sum",
          "difference",
          "gap",
          "width",
          "leg-shortfall" as const,
        ),
        hundredths(0.01, 5),
        ({ piece, criteria, indications }, n, quantity, more) => {
          const grown = indications.map((one, k) => {
            const value = one.measured[quantity];
            if (k !== n % indications.length || value === undefined) return one;
            return { ...one, measured: { ...one.measured, [quantity]: value + more } };
          });
          const before = assessPiece(indications, piece, criteria);
          const after = assessPiece(grown, piece, criteria);
          before.sentences.forEach(({ outcome }, k) => {
            if (outcome === "reject") expect(after.sentences[k].outcome).toBe("reject");
          });
          if (before.outcome === "reject") expect(after.outcome).toBe("reject");
        },
      ),
      { numRuns: 2000 },
    );
  });

  it("one more indication never makes the sentence on the piece or on another indication milder", () => {
    fc.assert(
      fc.property(
        situation.filter(({ indications }) => indications.length > 0),
        fc.nat(7),
        ({ piece, criteria, indications }, n) => {
          const without = indications.filter((_, k) => k !== n % indications.length);
          const after = assessPiece(indications, piece, criteria);
          const before = assessPiece(without, piece, criteria);
          const rank = (outcome: (typeof OUTCOMES)[number]) => OUTCOMES.indexOf(outcome);
          expect(rank(after.outcome)).toBeLessThanOrEqual(rank(before.outcome));
          for (const { indication, outcome } of before.sentences) {
            const now = after.sentences.find((sentence) => sentence.indication === indication);
            expect(rank(now!.outcome)).toBeLessThanOrEqual(rank(outcome));
          }
        },
      ),
      { numRuns: 2000 },
    );
  });

  it("no order matters, and nothing is milder together than alone", () => {
    fc.assert(
      fc.property(situation, ({ piece, criteria, indications }) => {
        const straight = assessPiece(indications, piece, criteria);
        const back = assessPiece([...indications].reverse(), piece, criteria);
        expect(back.outcome).toBe(straight.outcome);
        expect(back.sentences.map(({ outcome }) => outcome).reverse()).toEqual(
          straight.sentences.map(({ outcome }) => outcome),
        );
        for (const { indication, outcome } of straight.sentences) {
          const alone = assess(indication, piece, criteria).outcome;
          expect(OUTCOMES.indexOf(outcome)).toBeLessThanOrEqual(OUTCOMES.indexOf(alone));
        }
      }),
      { numRuns: 2000 },
    );
  });

  it("the piece is rejected exactly where one of its indications is", () => {
    fc.assert(
      fc.property(situation, ({ piece, criteria, indications }) => {
        const { outcome, sentences } = assessPiece(indications, piece, criteria);
        expect(outcome === "reject").toBe(sentences.some((sentence) => sentence.outcome === "reject"));
        expect(outcome === "accept").toBe(sentences.every((sentence) => sentence.outcome === "accept"));
      }),
      { numRuns: 2000 },
    );
  });

  it("a size from the report is enough for a sentence on most types", () => {
    const open = IMPERFECTION_TYPES.filter((type) => imperfection(type).size !== null).filter((type) => {
      const one: Indication = {
        id: "i",
        type,
        face: imperfection(type).faces[0],
        start: 0,
        end: 5,
        measured: measuredSize(type, 0.05),
      };
      const values = { t: 10, s: 10, a: 6, aA: 6, b: 16, bRoot: 4, z: 8.5, hCap: 2 };
      const [iso] = BUILT_IN_CRITERIA.filter(({ id }) => id === "iso-5817-2014-c");
      return assess(one, { length: 300, values }, iso).findings[0].reason === "missing-measure";
    });
    // its mouth is measured, and its depth counts
    expect(open).toEqual(["crater-pipe"]);
  });
});

const load = (length: number): fc.Arbitrary<Load> =>
  fc
    .record({
      from: fc.nat(steps(length)),
      long: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: steps(60) })),
      amount: hundredths(0.5, 9),
    })
    .map(({ from, long, amount }) => {
      const to = Math.min(steps(length), from + long);
      return { from: from * GRID, to: to * GRID, amount };
    });

/**
 * The plain way: a window is moved on by 0.05 mm at a time, and every 0.05 mm of it is counted cell by cell. A point belongs to
 * the cells at either side of it in turn, so that a window holds it by its first or by its last end but not by both.
 */
function slid(loads: readonly Load[], width: number, length: number): number {
  const cells = steps(length);
  const wide = Math.min(steps(width), cells);
  let most = 0;
  for (const side of [0, 1]) {
    const filled = new Float64Array(cells + 1);
    for (const { from, to, amount } of loads) {
      const [first, last] = [steps(from), steps(to)];
      if (first === last) {
        const cell = wide === cells ? Math.min(cells - 1, first) : first - side;
        if (cell >= 0) filled[cell] += amount;
      } else for (let cell = first; cell < last; cell += 1) filled[cell] += amount / (last - first);
    }
    for (let start = 0; start + wide <= cells; start += 1) {
      let sum = 0;
      for (let cell = start; cell < start + wide; cell += 1) sum += filled[cell];
      most = Math.max(most, sum);
    }
  }
  return most;
}

/** A weld and loads on it; lengths in mm, on the grid. */
const loaded = (shortest: number, longest: number) =>
  fc.integer({ min: steps(shortest), max: steps(longest) }).chain((cells) =>
    fc.record({
      length: fc.constant(cells * GRID),
      loads: fc.array(load(cells * GRID), { minLength: 1, maxLength: 7 }),
    }),
  );

describe("the fullest window", () => {
  it("has what plain sliding by 0.05 mm finds", () => {
    const width = fc.integer({ min: steps(5), max: steps(70) }).map((cells) => cells * GRID);
    fc.assert(
      fc.property(loaded(15, 60), width, ({ length, loads }, wide) => {
        expect(worstWindow(loads, wide, length).sum).toBeCloseTo(slid(loads, wide, length), 6);
      }),
      { numRuns: 300 },
    );
  });

  it("lies on the weld, has its width, and holds what it says", () => {
    fc.assert(
      fc.property(loaded(20, 300), hundredths(1, 300), ({ length, loads }, width) => {
        const { from, to, sum } = worstWindow(loads, width, length);
        expect(from).toBeGreaterThanOrEqual(0);
        expect(to).toBeLessThanOrEqual(length + HAIR);
        expect(to - from).toBeCloseTo(Math.min(width, length), 6);
        const total = (some: readonly Load[]) => some.reduce((all, { amount }) => all + amount, 0);
        const inside = loads.filter((one) => one.from > from + HAIR && one.to < to - HAIR);
        const touching = loads.filter((one) => one.from < to + HAIR && one.to > from - HAIR);
        expect(sum).toBeLessThanOrEqual(total(touching) + HAIR);
        expect(sum).toBeGreaterThanOrEqual(total(inside) - HAIR);
      }),
      { numRuns: 1000 },
    );
  });
});
