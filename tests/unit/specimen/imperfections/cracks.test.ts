import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { randomStream } from "@/lib/random";
import { openCrack, slitCoverage } from "@/lib/specimen/imperfections/crack-opening";
import { crackPath, echelonPieces, settleIntoCreases } from "@/lib/specimen/imperfections/crack-path";
import { bareField } from "./bare-field";

const PIXEL = 0.125;

describe("cracks", () => {
  it("cover, summed over all pixels across, exactly their width", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.4, noNaN: true }),
        fc.double({ min: 0, max: PIXEL, noNaN: true }),
        (width, at) => {
          let sum = 0;
          for (let n = -6; n <= 6; n++) sum += slitCoverage(width, Math.abs(n * PIXEL - at), PIXEL) * PIXEL;
          expect(sum).toBeCloseTo(width, 9);
        },
      ),
    );
  });

  it("run from end to end, never more than a millimetre off a line that does not wander", () => {
    for (let n = 0; n < 20; n++) {
      const path = crackPath(randomStream(`path-${n}`), [3, 1], [27, 1], 0, 0.6);
      expect(path[0]).toEqual([3, 1]);
      expect(path[path.length - 1]).toEqual([27, 1]);
      for (const [, y] of path) expect(Math.abs(y - 1)).toBeLessThan(1);
      expect(path.length).toBeGreaterThan(15);
    }
  });

  it("settle into a crease beside them", () => {
    const field = bareField((_, y) => -0.15 * Math.exp(-(((y - 0.3) / 0.15) ** 2)));
    const straight = Array.from({ length: 20 }, (_, n): [number, number] => [5 + n, 0]);
    const settled = settleIntoCreases(field, straight, 0.4).slice(3, -3);
    for (const [, y] of settled) expect(y).toBeGreaterThan(0.15);
  });

  it("in pieces still reach over the whole length, with overlaps", () => {
    const path = crackPath(randomStream("pieces"), [0, 0], [30, 0], 0.3);
    const pieces = echelonPieces(randomStream("breaks"), path, 3, 0.3);
    expect(pieces.length).toBe(3);
    expect(pieces[0][0]).toEqual([0, 0]);
    expect(pieces[2][pieces[2].length - 1]).toEqual([30, 0]);
    for (let n = 1; n < 3; n++) {
      const before = pieces[n - 1];
      expect(pieces[n][0][0]).toBeLessThan(before[before.length - 1][0]);
    }
  });

  it("are a notch in the height and leave no upright spike", () => {
    const field = bareField();
    openCrack(field, crackPath(randomStream("notch"), [5, 0], [35, 0], 0.4), () => 0.15, 0.2);
    expect(Math.min(...field.z)).toBeLessThan(-0.1);
    expect(Math.max(...field.z)).toBeLessThan(0.02);
    expect(Math.max(...field.crack)).toBeGreaterThan(0.9);
  });
});
