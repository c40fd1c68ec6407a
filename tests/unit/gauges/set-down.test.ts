import { describe, expect, it, test } from "vitest";
import {
  contactAt,
  drawnBack,
  type FeetPlacement,
  GAUGES,
  type GaugePlacement,
  type Heights,
  type HookPlacement,
  liftOf,
  REFUSAL_REASONS,
  REFUSALS,
  type Standing,
  setDown,
  slideTo,
  takeFromTray,
  withinLimits,
} from "@/lib/gauges";
import { randomStream } from "@/lib/random";
import { bead, FLAT, groove, plateOf, STEADY, spatter, step } from "./support/analytic";

const SPOT = { x: 150, y: 0, turn: 90 };
const height = (rest: Partial<FeetPlacement> = {}): FeetPlacement => ({
  ...SPOT,
  kind: "height-gauge",
  stance: "straddling",
  near: 18,
  spacing: 36,
  ...rest,
});
const depth = (rest: Partial<FeetPlacement> = {}): FeetPlacement => height({ kind: "depth-gauge", ...rest });
const hook = (rest: Partial<HookPlacement> = {}): HookPlacement => ({
  ...SPOT,
  kind: "hook-gauge",
  reach: 20,
  ...rest,
});

function stand(heights: Heights, placement: GaugePlacement): Standing {
  const standing = setDown(heights, placement, STEADY);
  if (!standing.ok) throw new Error(standing.code);
  return standing;
}
const exact = (heights: Heights, placement: GaugePlacement): number => stand(heights, placement).exact;

describe("height gauge for butt welds", () => {
  it("reads nothing on a flat plate, wherever and however it stands", () => {
    for (const turn of [0, 45, 90, 200, 315]) {
      expect(
        exact(
          plateOf(() => 0.4),
          height({ turn }),
        ),
      ).toBeCloseTo(0, 6);
      expect(exact(plateOf(FLAT), height({ turn, stance: "one-side" }))).toBeCloseTo(0, 6);
    }
  });

  it("reads the crown of a cap, straddling it or from one side", () => {
    const cap = plateOf(bead(2.4, 8));
    expect(exact(cap, height())).toBeCloseTo(2.4, 3);
    expect(exact(cap, height({ stance: "one-side", near: 12, spacing: 14 }))).toBeCloseTo(2.4, 3);
  });

  it("reads a root that has sunk as less than nought", () => {
    expect(stand(plateOf(bead(-0.001, 8)), height()).reading).toBe(0);
    expect(
      stand(
        plateOf((_x, y) => (Math.abs(y) < 5 ? -1.34 : 0)),
        height(),
      ).reading,
    ).toBe(-1.3);
  });

  it("straddling a step it reads from a line between the plates, from one side the plate it stands on", () => {
    const drop = plateOf((x, y) => step(1.2)(x, y) + (Math.abs(y) < 6 ? 3 : 0));
    // it stands on the outer end of the lower foot and on the inner end of the higher one, 36 mm apart; of the leaning
    // slide the corner on the lower side touches, 0.8 mm from its middle
    const lean = Math.asin(1.2 / 36);
    const expected = (3 + (1.2 * 17) / 36) * Math.cos(lean) + 0.8 * Math.sin(lean);
    expect(exact(drop, height({ y: 2 }))).toBeCloseTo(expected, 2);
    expect(exact(drop, height({ y: 2, stance: "one-side", near: 12, spacing: 12 }))).toBeCloseTo(3, 3);
  });

  it("leans with a foot on spatter, and reads what the lean takes away", () => {
    const lump = 1;
    const dirty = plateOf((x, y) => bead(2, 8)(x, y) + spatter(lump, 150, 18)(x, y));
    const standing = stand(dirty, height());
    // the foot's inner or outer part may touch first, its middle stands on the top of the lump
    const lean = (Math.asin(lump / 36) * 180) / Math.PI;
    expect(standing.seat.lean).toBeGreaterThan(lean * 0.95);
    expect(standing.seat.lean).toBeLessThan(lean * 1.05);
    expect(standing.exact).toBeCloseTo(2 - lump / 2, 1);
    expect(standing.seat.contacts.map(({ part }) => part)).toEqual(["foot", "foot"]);
  });

  it("rests with its bar on a cap that is too high for it", () => {
    const standing = setDown(plateOf(bead(9.5, 6)), height({ y: -5, near: 13 }), STEADY);
    expect(standing.seat?.contacts.map(({ part }) => part)).toContain("body");
  });
});

describe("depth gauge with a point", () => {
  it("reads a V groove short by what keeps a ball from its bottom", () => {
    const slope = 2 / 1.5;
    // a ball of radius r in a V of slope s rests r (sqrt(1 + s^2) - 1) above its bottom
    const lift = 0.3 * (Math.sqrt(1 + slope * slope) - 1);
    expect(exact(plateOf(groove(2, 1.5)), depth())).toBeCloseTo(2 - lift, 2);
  });

  it("stops with its flank at the mouth of a narrow hole", () => {
    const hole = plateOf((x, y) => (Math.hypot(x - 150, y) < 0.5 ? -5 : 0));
    const standing = stand(hole, depth());
    expect(standing.touch).toBe("flank");
    // a cone of 15 degrees that meets a ball of 0.3: it is 0.5 mm from its axis this far over its end
    const over = 0.3 - 0.3 / Math.sin(Math.PI / 12) + 0.5 / Math.tan(Math.PI / 12);
    expect(Math.abs(standing.exact - over)).toBeLessThan(0.12);
    expect(
      stand(
        plateOf((x, y) => (Math.hypot(x - 150, y) < 1.5 ? -3 : 0)),
        depth(),
      ),
    ).toMatchObject({
      touch: "end",
      reading: 3,
    });
  });

  it("has a point without a step between its round end and its cone", () => {
    const rod = { radius: 0.3, halfAngle: 15, rodRadius: 0.8 };
    const seam = 0.3 * Math.cos(Math.PI / 12);
    expect(liftOf(rod, seam + 1e-9)).toBeCloseTo(liftOf(rod, seam), 6);
    expect(liftOf(rod, 0)).toBe(0);
  });

  it("reads an undercut from the plate beside it", () => {
    const undercut = plateOf((x, y) => bead(2, 8)(x, y) + groove(0.8, 1.2, 9.2)(x, y));
    const slope = 0.8 / 1.2;
    const lift = 0.3 * (Math.sqrt(1 + slope * slope) - 1);
    const standing = stand(undercut, depth({ y: 9.2, stance: "one-side", near: 8, spacing: 14 }));
    expect(standing.exact).toBeCloseTo(0.8 - lift, 2);
  });
});

describe("hook gauge", () => {
  it("reads how far the other plate lies lower", () => {
    const drop = plateOf((x, y) => step(1.3)(x, y) + bead(3, 7)(x, y));
    expect(stand(drop, hook({ y: -12, reach: 22 }))).toMatchObject({ reading: 1.3 });
    expect(setDown(drop, hook({ y: 12, turn: 270, reach: 22 }), STEADY)).toMatchObject({ code: "out-of-range" });
  });

  it("shows nought between level plates", () => {
    expect(exact(plateOf(bead(3, 7)), hook({ y: -12, reach: 22 }))).toBeCloseTo(0, 6);
  });
});

describe("the moving part stops at the metal", () => {
  test.each([
    ["height gauge", plateOf(bead(2.4, 8)), height(), 1],
    ["depth gauge", plateOf(groove(2, 1.5)), depth(), -1],
  ] as const)("%s", (_name, heights, placement, away) => {
    const standing = stand(heights, placement);
    expect(contactAt(standing, standing.stop)).toBe("touching");
    expect(contactAt(standing, standing.stop + 0.1 * away)).toBe("clear");
    expect(contactAt(standing, standing.stop - 0.1 * away)).toBe("inside");
    expect(slideTo(standing, standing.stop - 3 * away)).toBe(standing.stop);
    expect(slideTo(standing, standing.stop + 0.5 * away)).toBeCloseTo(standing.stop + 0.5 * away, 9);
    expect(contactAt(standing, drawnBack(standing))).toBe("clear");
  });
});

describe("refusals", () => {
  const flat = plateOf(FLAT);
  test.each([
    ["off-plate", flat, height({ y: 76 })],
    ["no-support", flat, height({ y: 60 })],
    ["no-support", flat, { ...SPOT, kind: "fillet-gauge", use: "leg" }],
    ["leans-too-far", plateOf((_x, y) => (y > 10 ? 12 : 0)), height()],
    ["rocks", plateOf(spatter(1.5, 150, 27)), hook()],
    ["not-square", flat, hook({ turn: 106 })],
    ["out-of-range", plateOf((_x, y) => (Math.abs(y) < 3 ? -6 : 0)), height()],
    ["out-of-range", plateOf((_x, y) => (Math.abs(y) < 3 ? -9 : 0)), depth()],
    [
      "cannot-reach",
      { ...flat, heightAt: (_x: number, y: number) => (Math.abs(y) < 4 ? Number.NEGATIVE_INFINITY : 0) },
      depth(),
    ],
  ] as const)("%s", (code, heights, placement) => {
    expect(setDown(heights, placement, STEADY)).toMatchObject({ ok: false, code, kind: placement.kind });
  });

  it("have their reasons in words", () => {
    for (const code of REFUSALS) expect(REFUSAL_REASONS[code]).toMatch(/^[A-Z].*\.$/);
  });

  it("square to the weld within 15 degrees is square enough", () => {
    for (const turn of [75.1, 104.9, 255.1, 284.9]) expect(setDown(flat, hook({ turn }), STEADY).ok).toBe(true);
    for (const turn of [74.9, 105.1, 0, 180]) expect(setDown(flat, hook({ turn }), STEADY).ok).toBe(false);
  });
});

describe("seating noise", () => {
  const cap = plateOf(bead(2.4, 8));
  const random = randomStream("attempt 7").child("cap");

  it("is the same at the same placement, to a tenth", () => {
    const first = setDown(cap, height(), random);
    expect(setDown(cap, height(), random)).toEqual(first);
    const again = setDown(cap, height({ x: 150.04 }), random);
    expect(again.ok && first.ok && again.noise === first.noise).toBe(true);
  });

  it("is another at another placement, in another attempt, and on the other face", () => {
    const noise = (placement: GaugePlacement, stream = random) => {
      const standing = setDown(cap, placement, stream);
      return standing.ok ? standing.noise : Number.NaN;
    };
    const all = [
      noise(height()),
      noise(height({ x: 151 })),
      noise(height({ turn: 91 })),
      noise(height({ near: 17 })),
      noise(height(), randomStream("attempt 7").child("root")),
      noise(height(), randomStream("attempt 8").child("cap")),
    ];
    expect(new Set(all).size).toBe(all.length);
  });

  test.each(["height-gauge", "depth-gauge", "hook-gauge"] as const)("of the %s has the stated spread", (kind) => {
    const flat = plateOf(FLAT);
    const noises = Array.from({ length: 600 }, (_, n) => {
      const standing = setDown(flat, takeFromTray(kind, { ...SPOT, x: 100 + n / 5 }), random);
      return standing.ok ? standing.noise : Number.NaN;
    });
    const mean = noises.reduce((sum, noise) => sum + noise, 0) / noises.length;
    const spread = Math.sqrt(noises.reduce((sum, noise) => sum + (noise - mean) ** 2, 0) / (noises.length - 1));
    // four standard errors of a mean and of a deviation of 600
    expect(Math.abs(mean)).toBeLessThan((4 * GAUGES[kind].noise) / Math.sqrt(600));
    expect(Math.abs(spread / GAUGES[kind].noise - 1)).toBeLessThan(4 / Math.sqrt(1200));
  });
});

describe("settings", () => {
  it("are kept in their ranges", () => {
    expect(withinLimits(height({ turn: -90, near: 99, spacing: 200 }))).toMatchObject({
      turn: 270,
      near: 40,
      spacing: 60,
    });
    expect(withinLimits(height({ near: 39, spacing: 20 }))).toMatchObject({ near: 17 });
    expect(withinLimits(height({ stance: "one-side", near: 39, spacing: 20 }))).toMatchObject({ near: 39 });
    expect(withinLimits(hook({ reach: 2 }))).toMatchObject({ reach: 6 });
  });
});
