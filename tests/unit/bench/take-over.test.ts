import { describe, expect, it } from "vitest";
import { goalsOf, startWriting, takenOver, write } from "@/lib/bench";
import type { ImperfectionType } from "@/lib/imperfections";
import { EMPTY_REPORT, type Report } from "@/lib/report";

const reportWith = (type: ImperfectionType | null): Report => ({
  ...EMPTY_REPORT,
  calls: [{ id: "a", face: "cap", type, start: 100, end: 110, across: 9, size: null }],
});
const goals = (gauge: Parameters<typeof goalsOf>[0], type: ImperfectionType | null, openId: string | null = "a") =>
  goalsOf(gauge, "cap", reportWith(type), openId);

describe("where a reading may go", () => {
  it("is the open row, where the gauge measures what it asks for", () => {
    expect(goals("depth-gauge", "continuous-undercut")).toEqual([{ kind: "row", id: "a", number: 1, size: "depth" }]);
    expect(goals("depth-gauge", "surface-pore")).toEqual([]);
    expect(goals("steel-rule", "surface-pore")[0]).toMatchObject({ kind: "row", size: "diameter" });
  });

  it("is no row that is closed, unnamed or without size", () => {
    expect(goals("depth-gauge", "continuous-undercut", null)).toEqual([]);
    expect(goals("depth-gauge", null)).toEqual([]);
    expect(goals("depth-gauge", "stray-arc")).toEqual([]);
  });

  it("is the dimension that the gauge measures on this face", () => {
    const dimensions = (gauge: Parameters<typeof goalsOf>[0], face: "cap" | "root") =>
      goalsOf(gauge, face, EMPTY_REPORT, null).map((goal) => goal.kind === "dimension" && goal.dimension);
    expect(dimensions("height-gauge", "cap")).toEqual(["cap-height"]);
    expect(dimensions("height-gauge", "root")).toEqual(["root-height"]);
    expect(dimensions("hook-gauge", "root")).toEqual(["linear-misalignment"]);
    expect(dimensions("steel-rule", "cap")).toEqual(["weld-width"]);
    expect(dimensions("profile-comb", "cap")).toEqual([]);
  });
});

describe("a reading taken over", () => {
  it("is written as the size of the row, without its sign", () => {
    const state = { ...startWriting(reportWith("incompletely-filled-groove")), openId: "a" };
    const [goal] = goalsOf("height-gauge", "cap", state.report, "a");
    const next = takenOver(goal, -0.6, 104.2).reduce(write, state);
    expect(next.report.calls[0].size).toBe(0.6);
    expect(next.report.measures).toEqual([]);
  });

  it("is written as the dimension, with where the gauge stood", () => {
    const state = startWriting(EMPTY_REPORT);
    const [goal] = goalsOf("height-gauge", "cap", state.report, null);
    const next = takenOver(goal, 2.4, 104.23).reduce(write, state);
    expect(next.report.measures).toEqual([{ dimension: "cap-height", station: null, value: 2.4, at: 104.2 }]);
  });
});
