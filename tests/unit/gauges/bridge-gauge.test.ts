import { describe, expect, it } from "vitest";
import { adjusted, BRIDGE_GAUGE, type BridgePlacement, cutSection, pointsOf, readBridgeGauge } from "@/lib/gauges";
import { columnX, type Patch, PLATE_GRID, rowY, STRIP_GRID } from "@/lib/surface";

type HeightFormula = (x: number, y: number) => number;

function patchOf(grid: Patch["grid"], formula: HeightFormula): Patch {
  const height = new Float32Array(grid.columns * grid.rows);
  for (let j = 0, k = 0; j < grid.rows; j++) {
    for (let i = 0; i < grid.columns; i++, k++) height[k] = formula(columnX(grid, i), rowY(grid, j));
  }
  const none = new Uint8Array(0);
  return { grid, height, albedo: none, finish: none, brushing: { columns: 0, rows: 0, values: none } };
}

const surfaceOf = (formula: HeightFormula) => ({
  strip: patchOf(STRIP_GRID, formula),
  plate: patchOf(PLATE_GRID, formula),
});

const at = (x: number, y: number, rest: Partial<BridgePlacement> = {}): BridgePlacement => ({
  x,
  y,
  turn: 90,
  offset: 10,
  spacing: 16,
  ...rest,
});

function exactOf(surface: ReturnType<typeof surfaceOf>, placement: BridgePlacement): number {
  const read = readBridgeGauge(surface, placement);
  if (!read.ok) throw new Error(read.code);
  return read.exact;
}

describe("bridge gauge on surfaces of exact formula", () => {
  it("reads nothing on a flat plate, wherever and however it stands", () => {
    const flat = surfaceOf(() => 0.4);
    for (const turn of [0, 45, 90, 200, 315]) {
      expect(exactOf(flat, at(150, 3, { turn }))).toBeCloseTo(0, 6);
    }
  });

  it("reads nothing on a leaning plate except what the ball's side contact adds", () => {
    const slope = 0.05;
    const leaning = surfaceOf((_x, y) => slope * y);
    // feet 1 mm wide touch with their upper edge, both alike; the ball touches aside: r (sqrt(1 + s^2) - 1), then edge lift
    const edge = (slope * BRIDGE_GAUGE.footWidth) / 2;
    const ball = BRIDGE_GAUGE.tipRadius * (Math.sqrt(1 + slope * slope) - 1);
    const expected = (ball - edge) * Math.cos(Math.atan(slope));
    expect(exactOf(leaning, at(150, 0))).toBeCloseTo(expected, 3);
  });

  it("reads the height of a dome at its top", () => {
    const radius = 20;
    const rise = 2.5;
    const dome = surfaceOf((x, y) => {
      const square = (x - 150) ** 2 + y ** 2;
      return Math.max(0, Math.sqrt(Math.max(0, radius * radius - square)) - (radius - rise));
    });
    expect(exactOf(dome, at(150, 0, { offset: 14 }))).toBeCloseTo(rise, 2);
  });

  it("reads a V groove short by what keeps a ball from its bottom", () => {
    const depth = 2;
    const half = 1.5;
    const groove = surfaceOf((_x, y) => -depth * Math.max(0, 1 - Math.abs(y) / half));
    const slope = depth / half;
    // a ball of radius r in a V of slope s rests r (sqrt(1 + s^2) - 1) above its bottom
    const lift = BRIDGE_GAUGE.tipRadius * (Math.sqrt(1 + slope * slope) - 1);
    expect(exactOf(groove, at(150, 0))).toBeCloseTo(-(depth - lift), 1);
    expect(Math.abs(exactOf(groove, at(150, 0)) + depth - lift)).toBeLessThan(0.03);
  });

  it("leans with a foot on spatter, and reads what the lean adds", () => {
    const lump = 0.8;
    const spatter = surfaceOf((x, y) => (Math.hypot(x - 150, y - 26) < 2 ? lump : 0));
    const read = readBridgeGauge(spatter, at(150, 0, { offset: 10, spacing: 16 }));
    if (!read.ok) throw new Error(read.code);
    const lean = Math.atan(lump / 16);
    expect(read.seat.tilt).toBeCloseTo((lean * 180) / Math.PI, 1);
    expect(read.exact).toBeCloseTo((lump / 16) * 10 * Math.cos(lean), 1);
  });

  it("reads the step between two plates from the one it stands on", () => {
    const step = surfaceOf((_x, y) => (y > 0 ? 0 : -1.3));
    expect(readBridgeGauge(step, at(150, -5, { offset: 12 }))).toMatchObject({ ok: true, reading: -1.3 });
  });

  it("reads to a tenth of a millimetre", () => {
    const raised = surfaceOf((x, y) => (Math.hypot(x - 150, y) < 2 ? 1.26 : 0));
    expect(readBridgeGauge(raised, at(150, 0))).toMatchObject({ ok: true, reading: 1.3 });
  });

  it("refuses with its reason", () => {
    const flat = surfaceOf(() => 0);
    expect(readBridgeGauge(flat, at(150, 60))).toEqual({ ok: false, code: "off-plate", seat: null });
    expect(readBridgeGauge(flat, at(-1, 0))).toMatchObject({ ok: false, code: "off-plate" });
    const cliff = surfaceOf((_x, y) => (y > 20 ? 9 : 0));
    expect(readBridgeGauge(cliff, at(150, 0))).toMatchObject({ ok: false, code: "too-steep" });
    const pit = surfaceOf((x, y) => (Math.hypot(x - 150, y) < 3 ? -9 : 0));
    expect(readBridgeGauge(pit, at(150, 0))).toMatchObject({ ok: false, code: "out-of-range" });
  });

  it("keeps offset, spacing and turn in their ranges", () => {
    expect(adjusted(at(10, 0, { offset: 99, spacing: 1, turn: -90 }))).toMatchObject({
      offset: BRIDGE_GAUGE.offset.most,
      spacing: BRIDGE_GAUGE.spacing.least,
      turn: 270,
    });
  });

  it("has its feet in a line on the side it is turned to", () => {
    const points = pointsOf(at(100, -4, { turn: 0, offset: 7, spacing: 9 }));
    expect(points).toEqual({ tip: { x: 100, y: -4 }, near: { x: 107, y: -4 }, far: { x: 116, y: -4 } });
  });
});

describe("section", () => {
  it("follows the formula along a slanting line", () => {
    const surface = surfaceOf((x, y) => 0.01 * x - 0.02 * y);
    const points = cutSection(surface, { x: 100, y: 0, turn: 30, from: -8, to: 12 }, 0.5);
    expect(points).toHaveLength(41);
    for (const { at: along, height } of points) {
      const x = 100 + along * Math.cos(Math.PI / 6);
      const y = along * Math.sin(Math.PI / 6);
      expect(height).toBeCloseTo(0.01 * x - 0.02 * y, 4);
    }
  });

  it("ends at the edge of the plate", () => {
    const surface = surfaceOf(() => 0);
    const points = cutSection(surface, { x: 150, y: 0, turn: 90, from: 60, to: 90 }, 1);
    expect(points[points.length - 1].at).toBe(75);
  });
});
