import { describe, expect, it } from "vitest";
import { goalsOf, measure, NOTHING_OUT, startWriting, type TrayKind, takenOver, write } from "@/lib/bench";
import type { ImperfectionType } from "@/lib/imperfections";
import { EMPTY_REPORT, type Report } from "@/lib/report";
import type { Aspect, JointFacts } from "@/lib/weld";

const reportWith = (type: ImperfectionType | null): Report => ({
  ...EMPTY_REPORT,
  calls: [{ id: "a", face: "cap", type, start: 100, end: 110, across: 9, size: null, sentence: null }],
});
const PLATE: JointFacts = { kind: "butt", process: "111", position: "PA", thickness: 10 };
const FILLET: JointFacts = {
  kind: "fillet",
  process: "135",
  position: "PB",
  baseThickness: 10,
  standingThickness: 8,
  size: { symbol: "a", value: 5 },
  stations: [40, 105, 160],
};
/** A gauge as it is taken out of the tray to a place 4 mm towards plate A or a fillet's base plate. */
function placed(gauge: TrayKind, aspect: Aspect, x = 100) {
  const { out } = measure(NOTHING_OUT, { kind: "take", gauge, aspect, place: { x, y: 4 } });
  if (!out) throw new Error("no gauge is out");
  return out.placement;
}
const goals = (gauge: TrayKind, type: ImperfectionType | null, openId: string | null = "a") =>
  goalsOf(placed(gauge, "cap"), "cap", PLATE, reportWith(type), openId);

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
    const dimensions = (gauge: TrayKind, face: "cap" | "root") =>
      goalsOf(placed(gauge, face), face, PLATE, EMPTY_REPORT, null).map(
        (goal) => goal.kind === "dimension" && goal.dimension,
      );
    expect(dimensions("height-gauge", "cap")).toEqual(["cap-height"]);
    expect(dimensions("height-gauge", "root")).toEqual(["root-height"]);
    expect(dimensions("hook-gauge", "root")).toEqual(["linear-misalignment"]);
    expect(dimensions("caliper", "cap")).toEqual(["plate-thickness"]);
    expect(dimensions("caliper", "root")).toEqual(["plate-thickness"]);
    expect(dimensions("steel-rule", "cap")).toEqual(["weld-width"]);
    expect(dimensions("profile-comb", "cap")).toEqual([]);
  });
});

describe("where a reading in the corner of a fillet may go", () => {
  const asked = (x: number, use: "base-leg" | "throat") => {
    const placement = { ...placed("fillet-gauge", "fillet", x), use: use === "throat" ? "throat" : "leg" } as const;
    return goalsOf(placement as Parameters<typeof goalsOf>[0], "fillet", FILLET, EMPTY_REPORT, null);
  };

  it("is the station that it stands on, and always the smallest of the weld", () => {
    expect(asked(106.5, "base-leg")).toEqual([
      { kind: "dimension", dimension: "base-leg", station: 2 },
      { kind: "dimension", dimension: "smallest-leg", station: null },
    ]);
    expect(asked(159, "throat")[0]).toMatchObject({ dimension: "throat", station: 3 });
    expect(asked(70, "throat")).toEqual([{ kind: "dimension", dimension: "smallest-throat", station: null }]);
  });

  it("keeps no place at a station, and its place where the smallest was found", () => {
    const [atStation, smallest] = asked(105, "throat");
    const state = startWriting(EMPTY_REPORT);
    const written = [...takenOver(atStation, 4.8, 105), ...takenOver(smallest, 4.8, 105)].reduce(write, state);
    expect(written.report.measures).toEqual([
      { dimension: "throat", station: 2, value: 4.8, at: null },
      { dimension: "smallest-throat", station: null, value: 4.8, at: 105 },
    ]);
  });
});

describe("a reading taken over", () => {
  it("is written as the size of the row, without its sign", () => {
    const state = { ...startWriting(reportWith("incompletely-filled-groove")), openId: "a" };
    const [goal] = goalsOf(placed("height-gauge", "cap"), "cap", PLATE, state.report, "a");
    const next = takenOver(goal, -0.6, 104.2).reduce(write, state);
    expect(next.report.calls[0].size).toBe(0.6);
    expect(next.report.measures).toEqual([]);
  });

  it("is written as the dimension, with where the gauge stood", () => {
    const state = startWriting(EMPTY_REPORT);
    const [goal] = goalsOf(placed("height-gauge", "cap"), "cap", PLATE, state.report, null);
    const next = takenOver(goal, 2.4, 104.23).reduce(write, state);
    expect(next.report.measures).toEqual([{ dimension: "cap-height", station: null, value: 2.4, at: 104.2 }]);
  });
});
