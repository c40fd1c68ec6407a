import { describe, expect, it, test } from "vitest";
import { BLADE_SIZES, type FilletUse, type Heights, setDown, tryBlade } from "@/lib/gauges";
import { filletOf, STEADY } from "./support/analytic";

function read(heights: Heights, use: FilletUse, turn = 90): number {
  const standing = setDown(heights, { kind: "fillet-gauge", x: 100, y: 2, turn, use }, STEADY);
  if (!standing.ok) throw new Error(standing.code);
  return standing.exact;
}

// values of the trade's tables: a = z / sqrt 2, z = 1.414 a; 1/4 in leg -> 0.177 in throat
describe("mitre fillet with equal legs", () => {
  test.each([
    [4, 2.828],
    [5, 3.536],
    [6, 4.243],
    [7, 4.95],
    [8, 5.657],
    [10, 7.071],
    [12, 8.485],
  ])("leg %f has throat %f", (leg, throat) => {
    const fillet = filletOf(leg, leg);
    expect(read(fillet, "throat")).toBeCloseTo(throat, 2);
    expect(Math.abs(read(fillet, "leg") - leg)).toBeLessThan(0.1);
  });

  test.each([
    [3, 4.243],
    [3.5, 4.95],
    [4, 5.657],
    [5, 7.071],
    [6, 8.485],
    [7, 9.899],
    [8, 11.314],
  ])("throat %f has leg %f", (throat, leg) => {
    expect(read(filletOf(leg, leg), "throat")).toBeCloseTo(throat, 2);
    expect(Math.abs(read(filletOf(leg, leg), "leg") - leg)).toBeLessThan(0.1);
  });
});

test("a leg of 1/4 in has a throat of 0.177 in", () => {
  expect(read(filletOf(6.35, 6.35), "throat") / 25.4).toBeCloseTo(0.177, 3);
});

// theoretical throat z1 z2 / sqrt(z1^2 + z2^2): height over the hypotenuse of a right triangle
describe("unequal legs", () => {
  test.each([
    [6, 8, 4.8],
    [3, 4, 2.4],
    [5, 12, 4.6154],
    [8, 15, 7.0588],
    [6, 6, 4.2426],
    [6, 9, 4.9923],
    [8, 10, 6.247],
  ])("%i x %i: the legs read give throat %f", (z1, z2, throat) => {
    const fillet = filletOf(z1, z2);
    const [a, b] = [read(fillet, "leg", 90), read(fillet, "leg", 270)];
    // the slide's edge runs a little over the plate: the flatter the toe, the sooner it meets the weld
    expect(Math.abs(a - z1)).toBeLessThan(0.1 * Math.max(1, z1 / z2));
    expect(Math.abs(b - z2)).toBeLessThan(0.1 * Math.max(1, z2 / z1));
    expect(Math.abs((a * b) / Math.hypot(a, b) - throat)).toBeLessThan(0.1);
  });

  test.each([
    [6, 8],
    [5, 12],
    [8, 15],
  ])("%i x %i: along the bisector it shows sqrt 2 z1 z2 / (z1 + z2), more than the throat", (z1, z2) => {
    // the flat end rests on the higher of its two corners, 0.8 mm from the bisector
    const slope = Math.abs(z1 - z2) / (z1 + z2);
    const expected = (Math.SQRT2 * z1 * z2) / (z1 + z2) + 0.8 * slope;
    expect(read(filletOf(z1, z2), "throat")).toBeCloseTo(expected, 2);
  });
});

describe("convex and concave faces", () => {
  it("throat is measured on the face: z / sqrt 2 plus the bulge, or less the sag", () => {
    expect(read(filletOf(8, 8, 1.2), "throat")).toBeCloseTo(5.657 + 1.2, 2);
    // the end, 1.6 mm wide, bridges a hollow: parabola's height 0.8 mm off its middle
    const bridged = -0.9 * (1 - (0.8 / (8 / Math.SQRT2)) ** 2);
    expect(read(filletOf(8, 8, -0.9), "throat")).toBeCloseTo(5.657 + bridged, 2);
  });

  it("legs do not change with the bulge", () => {
    for (const bulge of [-0.9, 0, 1.2]) expect(Math.abs(read(filletOf(7, 9, bulge), "leg") - 7)).toBeLessThan(0.2);
  });

  it("reads a leg too long where it is turned aside, and not at all beyond 15 degrees", () => {
    const fillet = filletOf(8, 8);
    expect(read(fillet, "leg", 102)).toBeGreaterThan(read(fillet, "leg", 90) + 0.1);
    expect(setDown(fillet, { kind: "fillet-gauge", x: 100, y: 0, turn: 106, use: "leg" }, STEADY)).toMatchObject({
      ok: false,
      code: "not-square",
    });
  });

  it("leans when spatter lies under its sole", () => {
    const clean = filletOf(8, 8);
    // a lump 0.6 mm over the plate, 33 mm from the corner
    const [v, z] = [33 / Math.SQRT2 - 0.42, 33 / Math.SQRT2 + 0.42];
    const dirty: Heights = {
      ...clean,
      heightAt: (x, y) => (Math.abs(y - v) < 0.3 && Math.abs(x - 100) < 2 ? z : clean.heightAt(x, y)),
    };
    const standing = setDown(dirty, { kind: "fillet-gauge", x: 100, y: 0, turn: 90, use: "leg" }, STEADY);
    // lump and inner end of the sole are less than 10 mm apart; the slide then runs into the plate
    expect(standing.seat?.lean).toBeGreaterThan(2);
    expect(standing.seat?.lean).toBeLessThan(8);
    expect(standing).toMatchObject({ ok: false, code: "out-of-range" });
  });

  it("is lifted by spatter under a shoulder", () => {
    const clean = filletOf(8, 8);
    const dirty: Heights = {
      ...clean,
      heightAt: (x, y) => clean.heightAt(x, y) + 0.7 * Math.max(0, 1 - Math.hypot(y - 18, x - 100)),
    };
    expect(read(dirty, "throat")).toBeLessThan(read(clean, "throat") - 0.1);
  });
});

describe("fillet blades", () => {
  const fitsOf = (heights: Heights, use: FilletUse) =>
    Object.fromEntries(
      BLADE_SIZES.map((size) => {
        const trial = tryBlade(heights, { x: 100, turn: 90, use, size });
        return [size, trial.ok ? trial.fit : trial.code];
      }),
    );

  it("one size fits, smaller ones are carried, under larger ones there is light", () => {
    expect(fitsOf(filletOf(7.071, 7.071), "throat")).toMatchObject({
      "4": "too-large",
      "4.5": "too-large",
      "5": "fits",
      "5.5": "too-small",
      "12": "too-small",
    });
    expect(fitsOf(filletOf(8, 6), "leg")).toMatchObject({ "7": "too-large", "8": "fits", "10": "too-small" });
  });

  it("between two sizes none fits", () => {
    const leg = 5.25 * Math.SQRT2;
    expect(Object.values(fitsOf(filletOf(leg, leg), "throat"))).not.toContain("fits");
  });
});

describe("a blade that is too small", () => {
  it("is carried by its nib, and its nib does not go into the weld", () => {
    const fillet = filletOf(8, 8);
    const home = tryBlade(fillet, { x: 100, turn: 90, use: "throat", size: 8 });
    const rides = tryBlade(fillet, { x: 100, turn: 90, use: "throat", size: 5 });
    if (!home.ok || !rides.ok) throw new Error("a blade does not stand");
    expect(home.seat.pose.height).toBeCloseTo(0, 3);
    expect(rides.seat.pose.height + 5).toBeCloseTo(8 / Math.SQRT2, 2);
    expect(rides.seat.contacts.map(({ part }) => part)).toEqual(["nib"]);
  });

  it("is refused like a gauge", () => {
    expect(tryBlade(filletOf(8, 8), { x: 100, turn: 110, use: "leg", size: 5 })).toMatchObject({ code: "not-square" });
    expect(tryBlade(filletOf(8, 8), { x: -1, turn: 90, use: "leg", size: 5 })).toMatchObject({ code: "off-plate" });
  });
});
