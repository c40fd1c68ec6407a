import { describe, expect, it, test } from "vitest";
import {
  type Drawing,
  drawBlade,
  drawGauge,
  drawLeaf,
  drawRule,
  FEELER_LEAVES,
  type GaugePlacement,
  type Heights,
  lookAlong,
  type Stroke,
  setDown,
  toSection,
} from "@/lib/gauges";
import { randomStream } from "@/lib/random";
import { bead, filletOf, groove, plateOf } from "./support/analytic";

const spot = { x: 100, y: 0, turn: 90 };
const HEIGHT: GaugePlacement = { ...spot, kind: "height-gauge", stance: "straddling", near: 18, spacing: 36 };
const DEPTH: GaugePlacement = { ...spot, kind: "depth-gauge", stance: "one-side", near: 8, spacing: 14 };
const HOOK: GaugePlacement = { ...spot, y: -12, kind: "hook-gauge", reach: 24 };
const CALIPER: GaugePlacement = { ...spot, y: 50, kind: "caliper" };
const LEG: GaugePlacement = { ...spot, kind: "fillet-gauge", use: "leg" };
const THROAT: GaugePlacement = { ...spot, kind: "fillet-gauge", use: "throat" };

const engraved = ({ marks }: Drawing): readonly Stroke[] =>
  marks.flatMap((mark) => (mark.kind === "stroke" && mark.role === "engraved" ? [mark] : []));

describe("a drawn vernier shows its reading", () => {
  // main scale and vernier meet at one edge: lines on either side of it, at their places along it
  test.each([
    ["height gauge", HEIGHT, 1, 0],
    ["hook gauge", HOOK, 1, 0],
    ["caliper", CALIPER, 1, 0],
    ["leg", LEG, 0, 1],
    ["throat", THROAT, 1, 0],
  ] as const)("%s", (_name, placement, along, across) => {
    const position = 3.7;
    const lines = engraved(drawGauge(placement, position, 0));
    const side = (line: Stroke) => Math.sign(line.to[across] - line.from[across]);
    const main = lines.filter((line) => side(line) > 0).map(({ from }) => from[along]);
    const vernier = lines.filter((line) => side(line) < 0).map(({ from }) => from[along]);
    expect(vernier).toHaveLength(11);
    const misses = vernier.map((at) => Math.min(...main.map((line) => Math.abs(line - at))));
    expect(misses.findIndex((miss) => miss < 1e-6)).toBe(7);
    expect(misses.filter((miss) => miss < 0.05)).toHaveLength(1);
    const gaps = vernier.slice(1).map((at, n) => Math.abs(at - vernier[n]));
    for (const gap of gaps) expect(gap).toBeCloseTo(0.9, 9);
  });

  it("moves with the slide and not with the noise", () => {
    const lines = (noise: number) => engraved(drawGauge(HEIGHT, 2.2, noise)).map(({ from, to }) => [from, to]);
    expect(lines(0.1)).toEqual(lines(-0.1));
  });
});

/** How far the drawing reaches into the metal, and how near its moving part comes to it, mm. */
function closeness(heights: Heights, placement: GaugePlacement) {
  const standing = setDown(heights, placement, randomStream("drawn"));
  if (!standing.ok) throw new Error(standing.code);
  const y = placement.kind === "fillet-gauge" ? 0 : placement.y;
  const { marks } = drawGauge(placement, standing.stop, standing.noise);
  const over = (role: "moving" | "all") =>
    Math.min(
      ...marks.flatMap((mark) => {
        if (mark.kind !== "shape" || (role === "moving" && mark.role !== "moving")) return [];
        return mark.outline.flatMap(([u, w], n) => {
          const [u1, w1] = mark.outline[(n + 1) % mark.outline.length];
          return Array.from({ length: 21 }, (_, k) => {
            const [s, h] = toSection(standing.seat.pose, u + ((u1 - u) * k) / 20, w + ((w1 - w) * k) / 20);
            return h - heights.heightAt(placement.x, y + s);
          });
        });
      }),
    );
  return { all: over("all"), moving: over("moving") };
}

describe("a drawn gauge stands on the metal and touches it", () => {
  test.each([
    ["height gauge", plateOf(bead(2.4, 8)), HEIGHT],
    ["depth gauge", plateOf(groove(1, 1.5)), DEPTH],
    ["hook gauge", plateOf((x, y) => bead(2, 7)(x, y) - (y > 0 ? 0 : 1.4)), HOOK],
    ["leg", filletOf(8, 6, 0.5), LEG],
    ["throat", filletOf(8, 6, 0.5), THROAT],
  ] as const)("%s", (_name, heights, placement) => {
    const { all, moving } = closeness(heights, placement);
    expect(all).toBeGreaterThan(-0.03);
    expect(Math.abs(moving)).toBeLessThan(0.12);
  });
});

it("draws a caliper's jaws on both faces of the plate, and nothing of it in the metal", () => {
  const slope = Math.tan((2 * Math.PI) / 180);
  const heights: Heights = {
    ...plateOf((_x, y) => slope * y),
    underside: (_x, y) => slope * y - 12.3 / Math.cos((2 * Math.PI) / 180),
  };
  const standing = setDown(heights, CALIPER, randomStream("drawn"));
  if (!standing.ok) throw new Error(standing.code);
  const { marks } = drawGauge(CALIPER, standing.stop, standing.noise);
  const corners = marks.flatMap((mark) => (mark.kind === "shape" ? mark.outline : []));
  // the jaws' tips lie about 50 mm from the weld; the beam stands beyond the plate's edge at 75
  const places = corners.map(([u, w]) => toSection(standing.seat.pose, u, w));
  const tips = places.filter(([s]) => s < 25);
  const over = tips.map(([s, h]) => h - heights.heightAt(100, 50 + s));
  const under = tips.map(([s, h]) => heights.underside!(100, 50 + s) - h);
  for (const [n, room] of over.entries()) expect(Math.max(room, under[n])).toBeGreaterThan(-0.01);
  for (const rooms of [over, under]) expect(Math.min(...rooms.filter((room) => room > -0.01))).toBeLessThan(0.01);
  expect(places.filter(([s]) => s > 25).length).toBeGreaterThan(10);
});

test("a rule has 601 lines, the tens the longest", () => {
  const lines = engraved(drawRule());
  expect(lines).toHaveLength(601);
  const longest = Math.max(...lines.map(({ from, to }) => from[1] - to[1]));
  expect(lines.filter(({ from, to }) => from[1] - to[1] === longest).map(({ from }) => from[0])).toEqual(
    Array.from({ length: 31 }, (_, n) => 10 * n),
  );
});

test("blades and leaves carry their size", () => {
  const texts = ({ marks }: Drawing) => marks.flatMap((mark) => (mark.kind === "label" ? [mark.text] : []));
  expect(texts(drawBlade({ use: "throat", size: 5.5 }))).toContain("a 5.5");
  expect(texts(drawBlade({ use: "leg", size: 8 }))).toContain("z 8");
  for (const leaf of FEELER_LEAVES) expect(texts(drawLeaf(leaf))).toContain(leaf.toFixed(2));
});

test("the elevation shows what stands behind the blade, and ends at the plate's edge", () => {
  const behind = plateOf((x, _y) => (x < 96 && x > 92 ? 2 : 0));
  const { near, beyond } = lookAlong(behind, spot, -20, 100, 2);
  expect(Math.max(...near.map(([, height]) => height))).toBe(0);
  expect(Math.max(...beyond.map(([, height]) => height))).toBe(2);
  expect(near[near.length - 1][0]).toBeLessThanOrEqual(75);
});
