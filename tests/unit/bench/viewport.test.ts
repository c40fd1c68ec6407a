import { describe, expect, it } from "vitest";
import {
  bounded,
  centredOn,
  MAX_SCALE,
  panned,
  resized,
  revealing,
  seenFrom,
  shiftBetween,
  stretchInSight,
  toPlace,
  toScreen,
  turnedTo,
  type Viewport,
  wholePlate,
  zoomed,
} from "@/lib/bench";

const close: Viewport = { aspect: "cap", width: 1000, height: 600, x: 120, up: 4, scale: 12 };

describe("view of the plate", () => {
  it("shows plate A above on the cap face and below on the root face, the datum left on both", () => {
    for (const [aspect, sign] of [
      ["cap", -1],
      ["root", 1],
    ] as const) {
      const view = wholePlate({ aspect, width: 1000, height: 600 });
      const plateA = toScreen(view, { x: 10, y: 50 });
      const plateB = toScreen(view, { x: 290, y: -50 });
      expect(Math.sign(plateA.top - plateB.top)).toBe(sign);
      expect(plateA.left).toBeLessThan(plateB.left);
    }
  });

  it("shows the whole plate on any screen", () => {
    for (const [width, height] of [
      [1000, 600],
      [640, 700],
      [360, 300],
    ]) {
      const view = wholePlate({ aspect: "cap", width: width, height: height });
      const from = toScreen(view, { x: 0, y: 75 });
      const to = toScreen(view, { x: 300, y: -75 });
      expect(Math.min(from.left, from.top)).toBeGreaterThan(0);
      expect(to.left).toBeLessThan(width);
      expect(to.top).toBeLessThan(height);
    }
  });

  it("keeps what lies under the pointer where it is when zooming", () => {
    const about = { left: 700, top: 120 };
    const root: Viewport = { ...close, aspect: "root" };
    const before = toPlace(root, about);
    const after = toPlace(zoomed(root, 1.7, about), about);
    expect(after.x).toBeCloseTo(before.x, 9);
    expect(after.y).toBeCloseTo(before.y, 9);
  });

  it("never magnifies beyond its bounds", () => {
    expect(zoomed(close, 1e6, { left: 0, top: 0 }).scale).toBe(MAX_SCALE);
    expect(zoomed(close, 1e-6, { left: 0, top: 0 }).scale).toBeCloseTo(
      wholePlate({ aspect: "cap", width: 1000, height: 600 }).scale,
      12,
    );
  });

  it("moves the plate with the pointer", () => {
    const moved = panned(close, 60, -24);
    const at = toScreen(moved, { x: 120, y: 4 });
    const was = toScreen(close, { x: 120, y: 4 });
    expect(at.left - was.left).toBeCloseTo(60, 9);
    expect(at.top - was.top).toBeCloseTo(-24, 9);
  });

  it("cannot lose the plate off the screen", () => {
    const lost = bounded({ ...close, x: 9999, up: -9999 });
    const corner = toScreen(lost, { x: 300, y: -75 });
    expect(corner.left).toBeGreaterThan(0);
    expect(corner.top).toBeGreaterThan(0);
    expect(corner.left).toBeLessThan(1000);
    expect(corner.top).toBeLessThan(600);
  });

  it("shows the same stretch of the same plate when the plate is turned", () => {
    const before = toPlace(close, { left: 500, top: 300 });
    const after = toPlace(turnedTo(close, "root", before), { left: 500, top: 300 });
    expect(after.x).toBeCloseTo(before.x, 9);
    expect(after.y).toBeCloseTo(before.y, 9);
  });

  it("brings a place to the middle, and moves only as far as needed to reveal one", () => {
    const centred = centredOn({ ...close, aspect: "root" }, { x: 200, y: -10 }, 20);
    expect(toScreen(centred, { x: 200, y: -10 })).toEqual({ left: 500, top: 300 });
    expect(revealing(close, { x: 121, y: 4 })).toBe(close);
    const revealed = revealing(close, { x: 220, y: 4 }, 60);
    expect(toScreen(revealed, { x: 220, y: 4 }).left).toBeCloseTo(940, 9);
  });

  it("stays whole through a change of size", () => {
    const view = resized(wholePlate({ aspect: "cap", width: 1000, height: 600 }), 640, 700);
    expect(view).toEqual(wholePlate({ aspect: "cap", width: 640, height: 700 }));
    expect(resized(close, 640, 700).scale).toBe(12);
  });

  it("tells how an old picture lies in a new view", () => {
    const now = zoomed(panned(close, 33, 12), 1.3, { left: 210, top: 90 });
    const shift = shiftBetween(close, now);
    const place = { x: 133, y: -6 };
    const old = toScreen(close, place);
    const wanted = toScreen(now, place);
    expect(old.left * shift.scale + shift.left).toBeCloseTo(wanted.left, 8);
    expect(old.top * shift.scale + shift.top).toBeCloseTo(wanted.top, 8);
  });

  it("knows the stretch in sight", () => {
    const { from, to } = stretchInSight(close);
    expect(from).toBeCloseTo(120 - 500 / 12, 9);
    expect(to).toBeCloseTo(120 + 500 / 12, 9);
  });

  it("shows a fillet from the corner outward: the base plate below, each plate by itself down or up from the corner", () => {
    const topOf = (aspect: Viewport["aspect"], y: number) =>
      toScreen(wholePlate({ aspect, width: 1000, height: 600 }), { x: 100, y }).top;
    expect(topOf("fillet", 30)).toBeGreaterThan(topOf("fillet", -30));
    expect(topOf("base", 60)).toBeGreaterThan(topOf("base", 0));
    expect(topOf("standing", -60)).toBeLessThan(topOf("standing", 0));
    for (const aspect of ["fillet", "base", "standing"] as const) {
      const view = wholePlate({ aspect, width: 1000, height: 600 });
      const { bottom, top, length } = seenFrom(aspect);
      expect(length).toBe(200);
      expect(toScreen(view, { x: 0, y: -top }).top).toBeGreaterThan(0);
      expect(toScreen(view, { x: length, y: -bottom }).top).toBeLessThan(600);
    }
  });
});
