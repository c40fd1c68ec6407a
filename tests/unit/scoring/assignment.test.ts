import fc from "fast-check";
import computeMunkres from "munkres-js";
import { describe, expect, it } from "vitest";
import { assignMost } from "../../../lib/scoring/assignment";

/** Least total cost by the code under test: the costs are turned round, so high that leaving anything alone never pays. */
function leastCost(costs: readonly number[][]): number {
  const top = 1_000_000;
  const pairs = Math.min(costs.length, costs[0].length);
  return top * pairs - assignMost(costs.map((row) => row.map((cost) => top - cost))).total;
}

const matrices = fc
  .record({
    rows: fc.integer({ min: 1, max: 8 }),
    columns: fc.integer({ min: 1, max: 8 }),
    most: fc.constantFrom(3, 1000),
  })
  .chain(({ rows, columns, most }) =>
    fc.array(fc.array(fc.nat(most), { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows }),
  );

describe("best assignment", () => {
  it.each([
    // Example in the documentation of SciPy's linear_sum_assignment.
    {
      costs: [
        [4, 1, 3],
        [2, 0, 5],
        [3, 2, 2],
      ],
      least: 5,
      assigned: [1, 0, 2],
    },
    // Teaching example of the Hungarian method with four workers and four jobs, found in many lecture notes.
    {
      costs: [
        [82, 83, 69, 92],
        [77, 37, 49, 92],
        [11, 69, 5, 86],
        [8, 9, 98, 23],
      ],
      least: 140,
      assigned: [2, 1, 0, 3],
    },
    // Square test case of the Munkres packages for Python and JavaScript.
    {
      costs: [
        [400, 150, 400],
        [400, 450, 600],
        [300, 225, 300],
      ],
      least: 850,
      assigned: [1, 0, 2],
    },
    // The same with a fourth column; value computed by brute force, not from a source.
    {
      costs: [
        [400, 150, 400, 1],
        [400, 450, 600, 2],
        [300, 225, 300, 3],
      ],
      least: 452,
      assigned: [1, 3, 0],
    },
    // Where taking the cheapest first fails; computed by hand: 2 + 2 < 1 + 100.
    {
      costs: [
        [1, 2],
        [2, 100],
      ],
      least: 4,
      assigned: [1, 0],
    },
    // Test cases of the Munkres packages; values computed by brute force, not from a source.
    {
      costs: [
        [10, 10, 8],
        [9, 8, 1],
        [9, 7, 4],
      ],
      least: 18,
      assigned: [0, 2, 1],
    },
    {
      costs: [
        [5, 9, 1],
        [10, 3, 2],
        [8, 7, 4],
      ],
      least: 12,
      assigned: [0, 1, 2],
    },
  ])("costs $least", ({ costs, least, assigned }) => {
    expect(leastCost(costs)).toBe(least);
    expect(assigned.reduce((sum, column, row) => sum + costs[row][column], 0)).toBe(least);
  });

  it("costs what munkres-js finds, on random matrices", () => {
    fc.assert(
      fc.property(matrices, (costs) => {
        const reference = computeMunkres(costs).reduce((sum, [row, column]) => sum + costs[row][column], 0);
        expect(leastCost(costs)).toBe(reference);
      }),
      { numRuns: 2_000, seed: 20261125 },
    );
  });

  it("uses each row and column once and proves itself by its prices", () => {
    fc.assert(
      fc.property(matrices, (values) => {
        const { total, columnOf, rowPrices, columnPrices } = assignMost(values);
        const used = columnOf.filter((column) => column >= 0);
        expect(new Set(used).size).toBe(used.length);
        expect(columnOf.reduce((sum, column, row) => sum + (column < 0 ? 0 : values[row][column]), 0)).toBe(total);
        const prices = [...rowPrices, ...columnPrices];
        expect(Math.min(...prices)).toBeGreaterThanOrEqual(0);
        expect(prices.reduce((a, b) => a + b, 0)).toBe(total);
        values.forEach((row, i) => {
          const surplus = row.map((value, j) => rowPrices[i] + columnPrices[j] - value);
          expect(Math.min(...surplus)).toBeGreaterThanOrEqual(0);
        });
      }),
      { numRuns: 2_000, seed: 20261125 },
    );
  });

  it("has nothing to assign without rows", () => {
    expect(assignMost([])).toEqual({ total: 0, columnOf: [], rowPrices: [], columnPrices: [] });
  });
});
