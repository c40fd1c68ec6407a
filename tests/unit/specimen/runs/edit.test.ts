import { describe, expect, it } from "vitest";
import type { RunPlan } from "@/lib/specimen/plan";
import { forColumns, moveToe, outerRun, toeAt } from "@/lib/specimen/runs/edit";
import type { FaceWork } from "@/lib/specimen/work";
import type { Grid } from "@/lib/surface";

const GRID: Grid = { columns: 40, rows: 8, perMm: 4, x0: 0, y0: -1 };

const line = (value: number) => new Float32Array(GRID.columns).fill(value);

const runAt = (centre: number, halfWidth: number): RunPlan => ({
  seed: 1,
  direction: 1,
  centre: line(centre),
  halfWidth: line(halfWidth),
  height: line(1),
  exponentMinus: line(2),
  exponentPlus: line(2),
  tail: line(0.5),
  ripple: line(0.04),
  raggedMinus: line(1),
  raggedPlus: line(1),
  tailPower: 2,
  pitch: 1,
  coarse: 0.3,
  smooth: 0.1,
  evenness: 0,
  fine: 0.2,
  bend: 1,
  dwell: 0.085,
  lean: 0,
  lag: 0,
  weave: false,
  segments: [],
});

const edges = (run: RunPlan, i: number) => [run.centre[i] - run.halfWidth[i], run.centre[i] + run.halfWidth[i]];

describe("moveToe", () => {
  it("moves one edge and leaves the other", () => {
    const run = runAt(2, 3);
    moveToe(run, 1, 7, 8, 1);
    expect(edges(run, 7)).toEqual([-1, 8]);
    moveToe(run, -1, 7, -3, 0.5);
    expect(edges(run, 7)).toEqual([-2, 8]);
    expect(edges(run, 8)).toEqual([-1, 5]);
  });

  it("never turns a run inside out", () => {
    const run = runAt(0, 3);
    moveToe(run, 1, 0, -20, 1);
    expect(edges(run, 0)[0]).toBeCloseTo(-3, 5);
    expect(edges(run, 0)[1]).toBeCloseTo(-2.2, 5);
  });
});

describe("outerRun", () => {
  it("is the first run on plate B's side and the last on plate A's", () => {
    const runs = [runAt(-4, 4), runAt(0, 4), runAt(4, 4)];
    const plan = { groove: 6, wallSlope: 1.7, fill: line(-1), runs };
    expect(outerRun(plan, -1)).toBe(runs[0]);
    expect(outerRun(plan, 1)).toBe(runs[2]);
  });
});

describe("forColumns", () => {
  it("visits the columns whose middles lie between two places, bounded to the grid", () => {
    const seen: number[] = [];
    forColumns(GRID, 1, 2, (i, x) => {
      expect(x).toBeCloseTo((i + 0.5) / 4, 9);
      seen.push(i);
    });
    expect(seen).toEqual([4, 5, 6, 7]);
    let count = 0;
    forColumns(GRID, -50, 500, () => count++);
    expect(count).toBe(GRID.columns);
  });
});

describe("toeAt", () => {
  const toes = Float32Array.from({ length: GRID.columns }, (_, i) => (i < 20 ? Number.NaN : i));
  const work = {
    strip: { grid: GRID },
    plan: { groove: 6.5 },
    toeMinus: toes.map((value) => -value),
    toePlus: toes,
  } as unknown as FaceWork;

  it("is the mean of the columns that have a weld", () => {
    // columns 28..32 lie within half a millimetre of the middle of column 30
    expect(toeAt(work, 1, 30.5 / 4, 0.5)).toBeCloseTo(30, 5);
    expect(toeAt(work, -1, 30.5 / 4)).toBeCloseTo(-30, 5);
  });

  it("is the edge of the joint where there is no weld", () => {
    expect(toeAt(work, 1, 1, 0.5)).toBe(6.5);
    expect(toeAt(work, -1, 1, 0.5)).toBe(-6.5);
  });
});
