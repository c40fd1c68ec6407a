import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  DRILL_GAUGES,
  drawLargestTask,
  drawReadingTask,
  drawSeatTask,
  judgeLargest,
  judgeReading,
  judgeSeat,
  leastFound,
  SEARCHED,
} from "@/lib/drills";
import { GAUGES } from "@/lib/gauges";
import { randomStream } from "@/lib/random";

const name = fc.string({ minLength: 1, maxLength: 20 });
const among = <T>(all: readonly T[]) => fc.subarray([...all], { minLength: 1 });

describe("whatever is drawn", () => {
  it("a scale shows a value that it has, with one line nearest to it", () => {
    fc.assert(
      fc.property(name, among(DRILL_GAUGES["read-scale"]), (stream, kinds) => {
        const { kind, key, position } = drawReadingTask(randomStream(stream), kinds);
        const { range, step } = GAUGES[kind];
        expect(kinds).toContain(kind);
        expect(key).toBeGreaterThanOrEqual(range?.lowest ?? Number.NaN);
        expect(key).toBeLessThanOrEqual(range?.highest ?? Number.NaN);
        expect(Math.abs(key / step - Math.round(key / step))).toBeLessThan(1e-6);
        expect(Math.abs(position - key)).toBeLessThan(0.36 * step);
      }),
      { numRuns: 300 },
    );
  });

  it("the same name draws the same task", () => {
    fc.assert(
      fc.property(name, (stream) => {
        const draw = () => {
          const { heights: _heights, ...task } = {
            heights: null,
            ...drawReadingTask(randomStream(stream), ["depth-gauge", "steel-rule"]),
          };
          return task;
        };
        expect(draw()).toEqual(draw());
      }),
      { numRuns: 50 },
    );
  });

  it("a reading is right within a step and wrong beyond it, and nearer is never worse", () => {
    const typed = fc.integer({ min: -60, max: 3050 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(name, among(DRILL_GAUGES["read-scale"]), typed, (stream, kinds, value) => {
        const task = drawReadingTask(randomStream(stream), kinds);
        const { step } = GAUGES[task.kind];
        const verdict = judgeReading(task, value);
        expect(verdict.isRight).toBe(Math.round(Math.abs(value - task.key) * 1e6) <= Math.round(step * 1e6));
        expect(verdict.error).toBeCloseTo(value - task.key, 6);
        if (verdict.isRight) expect(verdict.slip).toBeNull();
        expect(judgeReading(task, task.key)).toEqual({ isRight: true, error: 0, slip: null });
      }),
      { numRuns: 300 },
    );
  });

  it("a seat is wrong as it is handed over and right as it is shown", () => {
    fc.assert(
      fc.property(name, among(DRILL_GAUGES["seat-gauge"]), (stream, kinds) => {
        const task = drawSeatTask(randomStream(stream), kinds);
        expect(kinds).toContain(task.kind);
        const first = judgeSeat(task, task.first);
        expect(first.isRight).toBe(false);
        expect(first.refusal !== null || first.faults.length > 0).toBe(true);
        expect(judgeSeat(task, task.solution).isRight).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  it("the largest is found by whoever names it, and lost to coarse steps by no less than to fine ones", () => {
    fc.assert(
      fc.property(name, among(DRILL_GAUGES["find-largest"]), (stream, kinds) => {
        const task = drawLargestTask(randomStream(stream), kinds);
        const { truth, profile } = task;
        expect(truth.at).toBeGreaterThan(SEARCHED.from);
        expect(truth.at).toBeLessThan(SEARCHED.to);
        expect(profile.every(({ value }) => value <= truth.value)).toBe(true);
        expect(judgeLargest(task, truth, [truth.at])).toMatchObject({
          isRight: true,
          error: 0,
          beside: 0,
          passed: truth,
        });
        expect(leastFound(profile, 0.5)).toBe(truth.value);
        expect(leastFound(profile, 20)).toBeLessThan(truth.value);
      }),
      { numRuns: 60 },
    );
  });
});
