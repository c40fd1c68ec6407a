import { describe, expect, it, test } from "vitest";
import { DRILL_GAUGES, drawLargestTask, judgeLargest, leastFound, SEARCHED, STEADY } from "@/lib/drills";
import { lengthOfPeak, profileOf, valueAt } from "@/lib/drills/largest/truth";
import { setDown } from "@/lib/gauges";
import { randomStream } from "@/lib/random";

describe.each(DRILL_GAUGES["find-largest"])("welds for the %s", (kind) => {
  const tasks = Array.from({ length: 15 }, (_, n) => drawLargestTask(randomStream(`largest/${kind}/${n}`), [kind]));

  it("have the largest that a plain loop over all of the metal finds", () => {
    for (const { heights, truth } of tasks) {
      let best = Number.NEGATIVE_INFINITY;
      let at = 0;
      for (let x = SEARCHED.from; x <= SEARCHED.to; x += 0.1) {
        for (let y = -14; y <= 14; y += 0.1) {
          const value = kind === "height-gauge" ? heights.heightAt(x, y) : -heights.heightAt(x, y);
          if (value > best) [best, at] = [value, x];
        }
      }
      // the truth is taken near the line of the crown, and ripples are 0.04 mm
      expect(Math.abs(truth.value - best)).toBeLessThan(0.02);
      expect(Math.abs(truth.at - at)).toBeLessThan(0.6);
    }
  });

  it("let a gauge that is set down there read it", () => {
    for (const { heights, truth, first } of tasks) {
      const standing = setDown(heights, { ...first, x: truth.at }, STEADY);
      expect(standing.ok && Math.abs(standing.exact - truth.value)).toBeLessThan(0.05);
    }
  });

  it("have one place that is largest by more than a gauge can be out", () => {
    for (const task of tasks) {
      const rest = task.profile.filter(({ at }) => Math.abs(at - task.truth.at) > 14);
      expect(task.truth.value - Math.max(...rest.map(({ value }) => value))).toBeGreaterThan(0.28);
      expect(judgeLargest(task, task.truth, []).isRight).toBe(true);
    }
  });

  it("lose to even steps what a plain loop over every first place loses", () => {
    for (const { profile } of tasks) {
      const values = new Map(profile.map(({ at, value }) => [at, value]));
      for (const spacing of [20, 10, 5]) {
        let worst = Number.POSITIVE_INFINITY;
        for (let first = SEARCHED.from; first < SEARCHED.from + spacing; first += 0.5) {
          let best = 0;
          for (let x = first; x <= SEARCHED.to; x += spacing) best = Math.max(best, values.get(x) ?? 0);
          worst = Math.min(worst, best);
        }
        expect(leastFound(profile, spacing)).toBe(worst);
      }
      // coarser steps never find more
      expect(leastFound(profile, 20)).toBeLessThanOrEqual(leastFound(profile, 10));
      expect(leastFound(profile, 10)).toBeLessThanOrEqual(leastFound(profile, 5));
    }
  });
});

describe("a weld with one swelling", () => {
  // 1 mm on 1 mm, a bell that has fallen to 1/e after 5 mm
  const work = {
    sought: "undercut",
    side: 1,
    half: 6,
    base: 1,
    swells: [{ x: 60, by: 1, reach: 5 }],
  } as const;
  const profile = profileOf(work);

  it("is measured to its formula", () => {
    // 60.25 and 59.75 lie in the same half millimetre
    for (const at of [30, 50, 60, 65, 70]) {
      const bell = (x: number) => 1 + Math.exp(-(((x - 60) / 5) ** 2));
      expect(valueAt(profile, at)).toBeCloseTo(Math.max(bell(at - 0.25), bell(at), bell(at + 0.25)), 2);
    }
  });

  it("has a peak as long as the bell is high", () => {
    // the bell is above 2 - 0.26 for |x - 60| < 5 sqrt(-ln 0.74) = 2.74
    expect(Math.abs(lengthOfPeak(profile, 0.26) - 2 * 2.74)).toBeLessThanOrEqual(0.8);
  });

  const truth = { at: 60, value: 2 };
  const task = { kind: "depth-gauge", profile, truth } as const;

  test.each([
    ["the largest at its place", { at: 60, value: 1.9 }, true, true],
    ["0.26 mm too little is what a step and twice the seating come to", { at: 61, value: 1.74 }, true, true],
    ["0.3 mm too little", { at: 60, value: 1.7 }, false, true],
    ["the right value somewhere else", { at: 90, value: 2 }, true, false],
    ["3 mm beside", { at: 63, value: 2 }, true, true],
    ["4 mm beside", { at: 64, value: 2 }, true, false],
  ])("%s", (_name, found, isValueRight, isPlaceRight) => {
    expect(judgeLargest(task, found, [])).toMatchObject({
      isValueRight,
      isPlaceRight,
      isRight: isValueRight && isPlaceRight,
      beside: Math.abs(found.at - 60),
    });
  });

  it("tells what was under the gauge, and the longest stretch that was not", () => {
    const verdict = judgeLargest(task, { at: 50, value: 1 }, [50, 20, 90]);
    expect(verdict.passed).toMatchObject({ at: 50 });
    expect(verdict.passed?.value).toBeCloseTo(valueAt(profile, 50), 9);
    // 3 to 20, 20 to 50, 50 to 90, 90 to 147
    expect(verdict.widestGap).toBe(57);
    expect(judgeLargest(task, { at: 50, value: 1 }, []).passed).toBeNull();
  });
});
