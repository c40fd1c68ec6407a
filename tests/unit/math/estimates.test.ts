import { describe, expect, test } from "vitest";
import {
  clopperPearsonInterval,
  clopperPearsonLower,
  fitLogistic,
  isOverlapping,
  logistic,
  logit,
  poissonInterval,
  profileThrough,
  trialsToShow,
  wilsonInterval,
} from "@/lib/math";

describe("proportions", () => {
  // the first four of Wilson: R. G. Newcombe, Statistics in Medicine 17, 1998, table I; the rest from the formulas, by R and scipy
  test.each([
    [81, 263, 0.2553, 0.3662, 0.2527, 0.3676],
    [15, 148, 0.0624, 0.1605, 0.0578, 0.1617],
    [0, 20, 0, 0.1611, 0, 0.1684],
    [1, 29, 0.0061, 0.1718, 0.0009, 0.1776],
    [10, 10, 0.7225, 1, 0.6915, 1],
    [29, 29, 0.883, 1, 0.8806, 1],
    [18, 20, 0.699, 0.9721, 0.683, 0.9877],
    [5, 10, 0.2366, 0.7634, 0.1871, 0.8129],
  ])("%d of %d", (count, of, wilsonLow, wilsonHigh, exactLow, exactHigh) => {
    const wilson = wilsonInterval(count, of);
    const exact = clopperPearsonInterval(count, of);
    expect(wilson.low).toBeCloseTo(wilsonLow, 4);
    expect(wilson.high).toBeCloseTo(wilsonHigh, 4);
    expect(exact.low).toBeCloseTo(exactLow, 4);
    expect(exact.high).toBeCloseTo(exactHigh, 4);
  });

  // 29 of 29 and 45 of 46: the exact plans of 90/95 in nondestructive testing (45 of 46 in NASA/TM-2015-218770); the others computed
  test.each([
    [0, 29],
    [1, 46],
    [2, 61],
    [3, 76],
    [4, 89],
    [5, 103],
  ])("90 %% with 95 %% confidence and %d misses takes %d", (misses, trials) => {
    expect(trialsToShow(0.9, misses)).toBe(trials);
  });

  test("28 of 28 falls short, 29 of 29 does not", () => {
    expect(clopperPearsonLower(28, 28)).toBeCloseTo(0.8985, 4);
    expect(clopperPearsonLower(29, 29)).toBeCloseTo(0.05 ** (1 / 29), 10);
    expect(clopperPearsonLower(45, 46)).toBeCloseTo(0.901, 4);
  });
});

describe("a Poisson count", () => {
  // F. Garwood, Biometrika 28, 1936, table 1 as quoted in textbooks of epidemiology: 95 % limits
  test.each([
    [0, 0, 3.689],
    [1, 0.0253, 5.572],
    [5, 1.623, 11.668],
    [10, 4.795, 18.39],
  ])("%d events", (count, low, high) => {
    const interval = poissonInterval(count);
    expect(interval.low).toBeCloseTo(low, 3);
    expect(interval.high).toBeCloseTo(high, 2);
  });

  test("its tails are 2.5 % by plain sums", () => {
    const { low, high } = poissonInterval(7);
    const atMost = (mean: number, count: number) => {
      let [term, sum] = [Math.exp(-mean), 0];
      for (let k = 0; k <= count; k++) {
        sum += term;
        term *= mean / (k + 1);
      }
      return sum;
    };
    expect(1 - atMost(low, 6)).toBeCloseTo(0.025, 10);
    expect(atMost(high, 7)).toBeCloseTo(0.025, 10);
  });
});

describe("logistic line", () => {
  // hours of study and passing, the example of twenty students that stands in many textbooks and encyclopaedias
  const HOURS = [0.5, 0.75, 1, 1.25, 1.5, 1.75, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.25, 3.5, 4, 4.25, 4.5, 4.75, 5, 5.5];
  const PASSED = [0, 0, 0, 0, 0, 0, 1, 0, 1, 0, 1, 0, 1, 0, 1, 1, 1, 1, 1, 1];
  const trials = HOURS.map((x, i) => ({ x, total: 1, succeeded: PASSED[i] }));
  const line = fitLogistic(trials);

  test("coefficients and errors as published", () => {
    expect(line.intercept).toBeCloseTo(-4.0777, 4);
    expect(line.slope).toBeCloseTo(1.5046, 4);
    expect(line.interceptError).toBeCloseTo(1.761, 3);
    expect(line.slopeError).toBeCloseTo(0.6287, 3);
    expect(line.covariance).toBeCloseTo(-1.0345, 3);
    expect(line.logLikelihood).toBeCloseTo(-8.0299, 4);
  });

  // printed from rounded coefficients
  test("chances as published", () => {
    for (const [x, p] of [
      [1, 0.0709],
      [2, 0.2557],
      [3, 0.6073],
      [4, 0.8744],
      [5, 0.9691],
    ]) {
      expect(logistic(line.intercept + line.slope * x)).toBeCloseTo(p, 3);
    }
  });

  test("the profile touches the best line where that reaches the value, and lies below elsewhere", () => {
    const at = (logit(0.9) - line.intercept) / line.slope;
    expect(at).toBeCloseTo(4.1704, 4);
    expect(profileThrough(trials, at, logit(0.9))).toBeCloseTo(line.logLikelihood, 9);
    // one-sided 95 %: 2.7055 is the 0.90 quantile of chi-square with one degree of freedom
    expect(2 * (line.logLikelihood - profileThrough(trials, 6.2981, logit(0.9)))).toBeCloseTo(2.7055, 3);
  });

  test("no overlap, no line", () => {
    expect(isOverlapping(trials)).toBe(true);
    expect(isOverlapping(trials.map((trial) => ({ ...trial, succeeded: 1 })))).toBe(false);
    expect(isOverlapping(trials.map((trial) => ({ ...trial, succeeded: Number(trial.x > 2) })))).toBe(false);
    expect(isOverlapping(trials.map((trial) => ({ ...trial, succeeded: Number(trial.x < 2) })))).toBe(false);
  });
});
