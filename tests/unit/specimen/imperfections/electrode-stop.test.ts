import { describe, expect, it } from "vitest";
import { frontOf, placeStop } from "@/lib/specimen/imperfections/electrode-stop";
import type { RunPlan, Segment } from "@/lib/specimen/plan";

const segment = (a: number, b: number): Segment => ({
  a,
  b,
  hump: 0,
  humpLength: 5,
  crater: 0.5,
  shift: 0,
  widen: 0,
  wetting: 0,
});
const runOf = (direction: 1 | -1, segments: Segment[]) => ({ direction, segments }) as unknown as RunPlan;

describe("placing a stop", () => {
  it("parts one electrode length in two, in the order of welding", () => {
    const forwards = runOf(1, [segment(2, 298)]);
    placeStop(forwards, 100);
    expect(forwards.segments.map((s) => [s.a, s.b])).toEqual([
      [2, 100],
      [100, 298],
    ]);
    const backwards = runOf(-1, [segment(2, 298)]);
    placeStop(backwards, 100);
    expect(backwards.segments.map((s) => [s.a, s.b])).toEqual([
      [100, 298],
      [2, 100],
    ]);
    expect(frontOf(backwards.segments[0], -1)).toBe(100);
  });

  it("moves a stop that lies near instead of adding one", () => {
    const run = runOf(1, [segment(2, 150), segment(146, 298)]);
    placeStop(run, 160);
    expect(run.segments.map((s) => [s.a, s.b])).toEqual([
      [2, 160],
      [160, 298],
    ]);
  });

  it("refuses a place with less than 12 mm of weld to a side", () => {
    const run = runOf(1, [segment(2, 298)]);
    expect(placeStop(run, 8)).toBeNull();
    expect(run.segments).toHaveLength(1);
  });
});
