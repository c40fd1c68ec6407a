import { describe, expect, test } from "vitest";
import { incompleteBeta, lowerGamma, normalCdf, normalQuantile, studentCdf, twoSidedT, twoSidedZ } from "@/lib/math";

describe("normal", () => {
  // Abramowitz and Stegun 1964, tables 26.1 and 26.5
  test.each([
    [0, 0.5],
    [1, 0.841344746068543],
    [2, 0.977249868051821],
    [-3, 0.00134989803163],
  ])("P(%d) = %d", (z, p) => expect(normalCdf(z)).toBeCloseTo(p, 13));

  test.each([
    [0.975, 1.959963984540054],
    [0.95, 1.644853626951473],
    [0.005, -2.575829303548901],
    [0.000001, -4.753424308822899],
  ])("z(%d) = %d", (p, z) => expect(normalQuantile(p)).toBeCloseTo(z, 11));

  test("1.96 for 95 %", () => expect(twoSidedZ(0.95)).toBeCloseTo(1.959964, 6));
});

describe("Student's t", () => {
  // the printed table of every textbook: 0.975 quantiles
  test.each([
    [1, 12.706],
    [2, 4.303],
    [9, 2.262],
    [16, 2.12],
    [120, 1.98],
  ])("%d degrees of freedom: %d", (degrees, t) => expect(twoSidedT(0.95, degrees)).toBeCloseTo(t, 3));

  test("of one degree is Cauchy's distribution", () => {
    for (const t of [-3, -0.5, 0, 2]) expect(studentCdf(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 12);
  });
});

describe("incomplete functions against their closed forms", () => {
  test("P(n, x) is one less a Poisson sum", () => {
    for (const x of [0.1, 1, 4.5, 12, 60]) {
      for (const n of [1, 3, 10]) {
        let [term, sum] = [Math.exp(-x), 0];
        for (let k = 0; k < n; k++) {
          sum += term;
          term *= x / (k + 1);
        }
        expect(lowerGamma(n, x)).toBeCloseTo(1 - sum, 12);
      }
    }
  });

  test("I_x(k, n - k + 1) is a binomial sum", () => {
    for (const [n, k, p] of [
      [10, 3, 0.2],
      [29, 29, 0.9],
      [46, 45, 0.9],
      [7, 1, 0.55],
    ]) {
      let sum = 0;
      let choose = 1;
      for (let i = 0; i <= n; i++) {
        if (i >= k) sum += choose * p ** i * (1 - p) ** (n - i);
        choose *= (n - i) / (i + 1);
      }
      expect(incompleteBeta(p, k, n - k + 1)).toBeCloseTo(sum, 12);
    }
  });
});
