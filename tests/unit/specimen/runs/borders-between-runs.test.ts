import { describe, expect, test } from "vitest";
import { randomStream } from "@/lib/random";
import { drawRecipe } from "@/lib/specimen";
import { planFace } from "@/lib/specimen/runs";
import { STRIP_GRID } from "@/lib/surface";

/** Millimetres at both ends of the strip that are not looked at. */
const ENDS = 10 * STRIP_GRID.perMm;

const caps = Array.from({ length: 60 }, (_, n) => {
  const { joint, look, faces } = drawRecipe(`borders ${n}`);
  return planFace("cap", joint, faces.cap.layout, look, STRIP_GRID, randomStream(`borders ${n}`)).runs;
}).filter((runs) => runs.length > 2);

/** Standard deviation about the straight line of least squares. */
function straying(values: readonly number[]): number {
  const middle = (values.length - 1) / 2;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const slope =
    values.reduce((sum, value, n) => sum + (n - middle) * (value - mean), 0) /
    values.reduce((sum, _, n) => sum + (n - middle) ** 2, 0);
  const squares = values.reduce((sum, value, n) => sum + (value - mean - slope * (n - middle)) ** 2, 0);
  return Math.sqrt(squares / values.length);
}

// what a weld looks like: common practice, no source
describe("runs of a cap that lie on one another", () => {
  test("have no border as if ruled: it strays by more than a quarter of a millimetre in the mean", () => {
    const borders = caps.flatMap((runs) =>
      runs
        .slice(1)
        .map(({ centre, halfWidth }) => straying(Array.from(centre, (y, i) => y - halfWidth[i]).slice(ENDS, -ENDS))),
    );
    expect(borders.length).toBeGreaterThan(50);
    expect(borders.reduce((sum, value) => sum + value, 0) / borders.length).toBeGreaterThan(0.265);
  });

  test("are round on their backs: below an edge exponent of 1.9 the crown is a ridge", () => {
    const exponents = caps.flat().flatMap((run) => [...run.exponentMinus, ...run.exponentPlus]);
    expect(exponents.reduce((least, value) => Math.min(least, value), 9)).toBeGreaterThan(1.899);
  });
});
