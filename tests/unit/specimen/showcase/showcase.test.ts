import { describe, expect, it } from "vitest";
import type { ClutterItem, TruthItem } from "@/lib/specimen";
import { FEATURE_ROWS } from "@/lib/specimen/recipe/feature-rows";
import { type FeatureRow, NEUTRAL_ROWS } from "@/lib/specimen/recipe/rows";
import { foundNear } from "@/lib/specimen/showcase/found-near";
import { plateFor } from "@/lib/specimen/showcase/plate-for";

const ALL = [...FEATURE_ROWS, ...NEUTRAL_ROWS];
const UNDERCUT = rowOf("cap", "continuous-undercut");

function rowOf(face: string, type: string): FeatureRow {
  const row = ALL.find((one) => one.face === face && one.type === type);
  if (!row) throw new Error(`no row: ${face} ${type}`);
  return row;
}

describe("a plate to show a row on", () => {
  it("is welded by a process that brings it, with the runs it needs, for every row", () => {
    for (const row of ALL) {
      const { joint, faces } = plateFor(row, "shown");
      const name = `${row.face} ${row.type}`;
      const likelihoods = Object.values(row.likelihood);
      const likeliest = ["high", "medium", "low"].find((one) => likelihoods.some((likelihood) => likelihood === one));
      expect(row.likelihood[joint.process], name).toBe(likeliest);
      expect(row.positions?.[joint.position] ?? 1, name).toBeGreaterThan(0);
      expect(faces.cap.layout.runs.length, name).toBeGreaterThanOrEqual(row.leastRuns ?? 1);
      if (row.variants?.includes("between")) expect(faces.cap.layout.runs.length, name).toBeGreaterThan(1);
    }
  }, 60_000);

  it("is in flat position, but for what never comes in it", () => {
    expect(plateFor(UNDERCUT, "shown").joint.position).toBe("PA");
    expect(plateFor({ ...UNDERCUT, positions: { PA: 0, PC: 0 } }, "shown").joint.position).toBe("PF");
  });

  it("is refused with the row and what was not found, never replaced by another one", () => {
    expect(() => plateFor({ ...UNDERCUT, leastRuns: 30 }, "shown")).toThrow(
      /^no plate for cap continuous-undercut: no cap had 30 runs side by side/,
    );
    const never = { "111": "never", "135": "never", "136": "never", "141": "never" } as const;
    expect(() => plateFor({ ...UNDERCUT, likelihood: never }, "shown")).toThrow(
      "no plate for cap continuous-undercut: no process brings it",
    );
    const nowhere = { PA: 0, PC: 0, PF: 0, PE: 0 };
    expect(() => plateFor({ ...UNDERCUT, positions: nowhere }, "shown")).toThrow(
      /^no plate for cap continuous-undercut: process \d+ brings it in no position/,
    );
  });
});

describe("what was measured of a showcase's request", () => {
  const item = (type: TruthItem["type"], start: number, end: number, neutral = false): TruthItem => ({
    id: `cap-${start}`,
    face: "cap",
    type,
    start,
    end,
    across: 0,
    size: null,
    width: null,
    worst: [start, 0],
    outline: [],
    neutral,
  });
  const scratch: ClutterItem = { id: "s", face: "cap", kind: "scratch", start: 140, end: 160, across: 0, outline: [] };

  it("is the nearest of its type", () => {
    const measured = [item("overlap", 128, 140), item("overlap", 141, 155), scratch, item("surface-pore", 150, 150)];
    expect(foundNear(measured, "overlap", 150)).toBe(measured[1]);
    expect(foundNear(measured, "scratch", 150)).toBe(scratch);
  });

  it("is nothing where only something else lies there, or it lies elsewhere", () => {
    expect(foundNear([scratch, item("surface-pore", 150, 150)], "overlap", 150)).toBeNull();
    expect(foundNear([item("overlap", 176, 180)], "overlap", 150)).toBeNull();
    expect(foundNear([item("overlap", 100, 122)], "overlap", 150)).toBeNull();
    expect(foundNear([], "overlap", 150)).toBeNull();
  });

  it("is the neutral item under whose type a harmless feature is listed", () => {
    const real = item("surface-pore", 150, 150);
    const fine = item("surface-pore", 155, 155, true);
    expect(foundNear([real, fine], "fine-pore", 150)).toBe(fine);
    expect(foundNear([real], "fine-pore", 150)).toBeNull();
    expect(foundNear([item("grinding-mark", 140, 160, true)], "dressed-stop", 150)).not.toBeNull();
  });
});
