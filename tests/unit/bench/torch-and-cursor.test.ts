import { describe, expect, it } from "vitest";
import {
  carryTorch,
  describePlace,
  exposureUnder,
  heightOfTorch,
  lampPosition,
  MAX_ELEVATION,
  MIN_ELEVATION,
  moveCursor,
  sideOfTorch,
  stepTorch,
  TORCH_DISTANCE,
  TORCH_HEIGHTS,
  torchOnScreen,
  turnTorch,
} from "@/lib/bench";

const screen = { width: 1000, height: 600 };

describe("torch", () => {
  it("goes round in eighths from wherever it is", () => {
    expect(turnTorch({ azimuth: 135, elevation: 20 }, 1).azimuth).toBe(180);
    expect(turnTorch({ azimuth: 100, elevation: 20 }, 1).azimuth).toBe(135);
    expect(turnTorch({ azimuth: 100, elevation: 20 }, -1).azimuth).toBe(90);
    expect(turnTorch({ azimuth: 0, elevation: 20 }, -1).azimuth).toBe(315);
  });

  it("goes up and down by its named heights and stays at the last", () => {
    const low = { azimuth: 0, elevation: TORCH_HEIGHTS.low };
    expect(stepTorch(low, 1).elevation).toBe(TORCH_HEIGHTS.middle);
    expect(stepTorch(stepTorch(low, 1), 1).elevation).toBe(TORCH_HEIGHTS.high);
    expect(stepTorch({ azimuth: 0, elevation: TORCH_HEIGHTS.high }, 1).elevation).toBe(TORCH_HEIGHTS.high);
    expect(stepTorch({ azimuth: 0, elevation: 40 }, -1).elevation).toBe(TORCH_HEIGHTS.middle);
    expect(stepTorch(low, -1)).toBe(low);
    expect(heightOfTorch({ azimuth: 0, elevation: 12 })).toBe("low");
  });

  it("lies where it was carried to", () => {
    for (const azimuth of [0, 45, 130, 250, 359]) {
      for (const elevation of [MIN_ELEVATION, 20, 44, MAX_ELEVATION]) {
        const carried = carryTorch(screen, torchOnScreen({ azimuth, elevation }, screen));
        expect(carried.azimuth).toBeCloseTo(azimuth, 6);
        expect(carried.elevation).toBeCloseTo(elevation, 6);
      }
    }
  });

  it("is lower the further out it is carried", () => {
    const near = carryTorch(screen, { left: 800, top: 300 });
    const far = carryTorch(screen, { left: 960, top: 300 });
    expect(far.elevation).toBeLessThan(near.elevation);
    expect(carryTorch(screen, { left: 5000, top: 300 }).elevation).toBe(MIN_ELEVATION);
  });

  it("shines from the side it is seen on", () => {
    const [x, up, height] = lampPosition({ azimuth: 90, elevation: 30 }, { aspect: "cap", x: 100, up: 0 });
    expect(x).toBeCloseTo(100, 9);
    expect(up).toBeCloseTo(TORCH_DISTANCE * Math.cos(Math.PI / 6), 9);
    expect(height).toBeCloseTo(TORCH_DISTANCE / 2, 9);
    expect(sideOfTorch({ azimuth: 90, elevation: 30 })).toBe("top");
    expect(sideOfTorch({ azimuth: 340, elevation: 30 })).toBe("right");
  });

  it("rakes along the nearer plate of a corner, at the angle that it is held at", () => {
    for (const azimuth of [0, 45, 90, 200, 270]) {
      for (const elevation of [9, 14, 30]) {
        const [x, up, out] = lampPosition({ azimuth, elevation }, { aspect: "fillet", x: 0, up: 0 });
        expect(Math.hypot(x, up, out)).toBeCloseTo(TORCH_DISTANCE, 6);
        // heights over the two plates, which rise at 45 degrees to either side
        const over = [out - up, out + up].map((height) => height / Math.SQRT2 / TORCH_DISTANCE);
        expect(Math.asin(Math.min(...over))).toBeCloseTo((elevation * Math.PI) / 180, 6);
      }
    }
  });

  it("never stands behind the other plate", () => {
    for (let azimuth = 0; azimuth < 360; azimuth += 15) {
      const at = { x: 100, up: 0 };
      expect(lampPosition({ azimuth, elevation: 14 }, { ...at, aspect: "base" })[1]).toBeLessThan(1e-9);
      expect(lampPosition({ azimuth, elevation: 14 }, { ...at, aspect: "standing" })[1]).toBeGreaterThan(-1e-9);
    }
  });

  it("lets the eye open for a low torch", () => {
    const under = (elevation: number) =>
      exposureUnder(lampPosition({ azimuth: 0, elevation }, { aspect: "cap", x: 0, up: 0 }));
    expect(under(TORCH_HEIGHTS.middle)).toBeCloseTo(1, 9);
    expect(under(10)).toBeGreaterThan(under(20));
    expect(under(70)).toBeGreaterThanOrEqual(0.85);
  });
});

describe("cursor", () => {
  const step = (key: string, shift = false, alt = false) => moveCursor({ x: 100, y: 0 }, "cap", key, { shift, alt });

  it("moves by 1, 10 and 0.1 mm", () => {
    expect(step("ArrowRight")).toEqual({ x: 101, y: 0 });
    expect(step("ArrowLeft", true)).toEqual({ x: 90, y: 0 });
    expect(step("ArrowUp", false, true)).toEqual({ x: 100, y: 0.1 });
    expect(step("a")).toBeNull();
  });

  it("moves up on the screen on both faces", () => {
    const up = moveCursor({ x: 100, y: 5 }, "root", "ArrowUp", { shift: false, alt: false });
    expect(up).toEqual({ x: 100, y: 4 });
  });

  it("stays on the plate and on tenths", () => {
    expect(moveCursor({ x: 299.6, y: 0 }, "cap", "ArrowRight", { shift: true, alt: false })).toEqual({ x: 300, y: 0 });
    let place = { x: 0.1, y: 0 };
    for (let n = 0; n < 30; n++) place = moveCursor(place, "cap", "ArrowRight", { shift: false, alt: true })!;
    expect(place.x).toBe(3.1);
  });

  it("is told in words", () => {
    expect(describePlace("cap", { x: 123.42, y: -2.06 })).toBe("123.4 mm from the datum, 2.1 mm towards plate B");
    expect(describePlace("fillet", { x: 20, y: -3 })).toBe("20.0 mm from the datum, 3.0 mm towards the standing plate");
    expect(describePlace("root", { x: 5, y: 0 })).toBe("5.0 mm from the datum, on the centre line");
  });
});
