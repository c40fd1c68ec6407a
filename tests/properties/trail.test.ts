import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  bounded,
  CLOSE_LOOK_SCALE,
  heightOfTorch,
  lampPosition,
  onFace,
  type Torch,
  toScreen,
  underLens,
  type Viewport,
} from "@/lib/bench";
import {
  BEAT,
  BIN,
  LEAST_LOOK,
  type Look,
  lookKind,
  merged,
  NO_TRAIL,
  noteLook,
  packedTrailSchema,
  packTrail,
  sidesOf,
  type Trail,
  timeAtPlace,
  unpackTrail,
} from "@/lib/trail";
import { ASPECTS, type Aspect, extentOf, faceOf } from "@/lib/weld";

const view: fc.Arbitrary<Viewport> = fc
  .record({
    aspect: fc.constantFrom(...ASPECTS),
    width: fc.integer({ min: 400, max: 1500 }),
    height: fc.integer({ min: 250, max: 900 }),
    x: fc.double({ min: 0, max: 300, noNaN: true }),
    up: fc.double({ min: -75, max: 75, noNaN: true }),
    scale: fc.double({ min: 1, max: 48, noNaN: true }),
  })
  .map(bounded);
const torch: fc.Arbitrary<Torch> = fc.record({
  azimuth: fc.integer({ min: 0, max: 359 }),
  elevation: fc.integer({ min: 9, max: 80 }),
});
const look: fc.Arbitrary<Look> = fc
  .tuple(view, torch, fc.option(fc.double({ min: 0, max: 300, noNaN: true })))
  .map(([seen, light, at]) => ({
    view: seen,
    torch: light,
    lens: at === null ? null : underLens(seen, { x: at, y: 0 }),
  }));
const looks = fc.array(fc.tuple(look, fc.integer({ min: 0, max: 40 })), { maxLength: 12 });
const trailOf = (all: readonly (readonly [Look, number])[]): Trail =>
  all.reduce((trail, [one, beats]) => noteLook(trail, one, beats), NO_TRAIL);

/** The lines that are counted, mm across as reports name them: the weld, and the plate on either side of it. */
const LINES_ACROSS = { butt: [0, 18, -18], fillet: [0, 12, -12] } as const;
const linesOf = (aspect: Aspect) => LINES_ACROSS[faceOf(aspect) === "fillet" ? "fillet" : "butt"];

describe("a look, against where every place lies on the screen", () => {
  it("counts the middle of a bin on the weld of a face if, and only if, its pixel is on the screen", () => {
    fc.assert(
      fc.property(view, torch, fc.nat(59), (seen, light, bin) => {
        const { aspect } = seen;
        fc.pre(aspect === faceOf(aspect) && (bin + 0.5) * BIN < extentOf(aspect).length);
        const x = (bin + 0.5) * BIN;
        const { left, top } = toScreen(seen, { x, y: 0 });
        const isSeen = left >= 0 && left <= seen.width && top >= 0 && top <= seen.height;
        // a view so close that its middle lies on the weld and beside its centre line is a look at the weld as well
        fc.pre(isSeen || Math.abs(seen.up) > 9 || left < 0 || left > seen.width);
        const trail = noteLook(NO_TRAIL, { view: seen, torch: light, lens: null }, 6);
        const { afar, close } = timeAtPlace(trail, { face: aspect, start: x, end: x, across: 0 });
        expect([afar, close]).toEqual(!isSeen ? [0, 0] : seen.scale >= CLOSE_LOOK_SCALE ? [0, 3] : [3, 0]);
      }),
    );
  });

  it("counts low light from the side that the lamp stands on, and no other", () => {
    fc.assert(
      fc.property(view, torch, (seen, light) => {
        const { aspect } = seen;
        const close = bounded({ ...seen, x: 102.5, up: 0, scale: 9 });
        const trail = noteLook(NO_TRAIL, { view: close, torch: light, lens: null }, 10);
        const { low, lowFrom } = timeAtPlace(trail, { face: faceOf(aspect), start: 102.5, end: 102.5, across: 0 });
        // along the plate that the light falls on; a fillet's torch is given that way already
        const [x, up, out] = lampPosition(light, close);
        const angle = (Math.atan2(out, Math.hypot(x - close.x, up - close.up)) * 180) / Math.PI;
        const elevation = aspect === "fillet" ? light.elevation : angle;
        fc.pre(Math.abs(elevation - 22) > 1e-6);
        const isLow = heightOfTorch({ azimuth: 0, elevation }) === "low";
        expect(low).toBe(isLow ? 5 : 0);
        expect(lowFrom.reduce((sum, seconds) => sum + seconds, 0)).toBe(low);
        if (!isLow || aspect === "fillet") return;
        const degrees = (Math.atan2(up - close.up, x - close.x) * 180) / Math.PI;
        const off = (eighth: number) => Math.abs(((degrees - 45 * eighth + 540) % 360) - 180);
        const [side] = sidesOf({ afar: 0, close: low, low, lowFrom });
        expect(Math.min(off(side), 360 - off(side))).toBeLessThanOrEqual(22.5 + 1e-6);
      }),
    );
  });

  it("counts no bin for longer than the look lasted, and none of a plate that the other one hides", () => {
    fc.assert(
      fc.property(look, fc.integer({ min: 1, max: 40 }), fc.nat(59), (one, beats, bin) => {
        const { aspect } = one.view;
        const trail = noteLook(NO_TRAIL, one, beats);
        const x = Math.min(bin * BIN + 1, extentOf(aspect).length);
        for (const across of linesOf(aspect)) {
          const { afar, close, low } = timeAtPlace(trail, { face: faceOf(aspect), start: x, end: x, across });
          expect(afar + close).toBeLessThanOrEqual(beats * BEAT);
          expect(low).toBeLessThanOrEqual(close);
          const isHidden = (aspect === "base" && across < 0) || (aspect === "standing" && across > 0);
          if (isHidden) expect(afar + close).toBe(0);
        }
      }),
    );
  });

  it("is close under the lens, wherever the eye is", () => {
    fc.assert(
      fc.property(torch, fc.double({ min: 10, max: 190, noNaN: true }), (light, x) => {
        const whole = bounded({ aspect: "cap", width: 900, height: 500, x: 150, up: 0, scale: 1 });
        const lens = underLens(whole, { x, y: 0 });
        const trail = noteLook(NO_TRAIL, { view: whole, torch: light, lens }, 8);
        const middle = (Math.floor(x / BIN) + 0.5) * BIN;
        const place = { face: "cap", across: 0 } as const;
        expect(timeAtPlace(trail, { ...place, start: middle, end: middle })).toMatchObject({ afar: 0, close: 4 });
        const beside = middle + 30;
        expect(timeAtPlace(trail, { ...place, start: beside, end: beside })).toMatchObject({ afar: 4, close: 0 });
      }),
    );
  });
});

describe("trails of several windows", () => {
  it("add up as if one window had seen it all, in any order", () => {
    fc.assert(
      fc.property(looks, looks, (first, second) => {
        const [a, b] = [trailOf(first), trailOf(second)];
        expect(merged(a, b)).toEqual(trailOf([...first, ...second]));
        expect(merged(a, b)).toEqual(merged(b, a));
        expect(merged(a, NO_TRAIL)).toEqual(a);
      }),
    );
  });
});

describe("what is sent and stored", () => {
  it("reads back as it was, through JSON and the schema", () => {
    fc.assert(
      fc.property(looks, (all) => {
        const trail = trailOf(all);
        const text = JSON.stringify(packTrail(trail));
        expect(unpackTrail(packedTrailSchema.parse(JSON.parse(text)))).toEqual(trail);
      }),
    );
  });

  it("is refused where the counts are not those of the whole aspect", () => {
    fc.assert(
      fc.property(looks, fc.constantFrom(...ASPECTS), fc.nat(), (all, aspect, at) => {
        const packed = packTrail(trailOf(all));
        const runs = packed.views[aspect];
        fc.pre(runs !== undefined);
        const longer = runs.map((value, index) => (index === (at % (runs.length / 2)) * 2 + 1 ? value + 1 : value));
        for (const wrong of [longer, runs.slice(1), runs.slice(2), runs.with(0, -1), runs.with(0, 0.5)]) {
          expect(packedTrailSchema.safeParse({ ...packed, views: { [aspect]: wrong } }).success).toBe(false);
        }
        expect(packedTrailSchema.safeParse({ ...packed, version: 2 }).success).toBe(false);
      }),
    );
  });
});

describe("what a trail says of a place", () => {
  it("more looking never makes less of it, and low light is what parts the last two", () => {
    const order = ["never", "afar", "no-low-torch", "passed-over"];
    const place = { face: "cap", start: 40, end: 95, across: 3 } as const;
    fc.assert(
      fc.property(looks, look, fc.integer({ min: 0, max: 20 }), (all, one, beats) => {
        const before = timeAtPlace(trailOf(all), place);
        const after = timeAtPlace(noteLook(trailOf(all), one, beats), place);
        expect(order.indexOf(lookKind(after))).toBeGreaterThanOrEqual(order.indexOf(lookKind(before)));
        expect(lookKind(after) === "passed-over").toBe(after.close >= LEAST_LOOK && after.low >= LEAST_LOOK);
      }),
    );
  });

  it("of a long one, at least half of its bins were in sight for so long", () => {
    fc.assert(
      fc.property(looks, fc.integer({ min: 0, max: 200 }), fc.integer({ min: 1, max: 100 }), (all, start, length) => {
        const trail = trailOf(all);
        const place = { face: "root", start, end: start + length, across: 0 } as const;
        const { close } = timeAtPlace(trail, place);
        const bins = Array.from({ length: 60 }, (_, bin) => bin * BIN).filter(
          (from) => from < place.end && from + BIN > start,
        );
        const each = bins.map((from) => timeAtPlace(trail, { ...place, start: from, end: from }).close);
        expect(each.filter((seconds) => seconds >= close).length).toBeGreaterThanOrEqual(bins.length / 2);
        expect(each.filter((seconds) => seconds > close).length).toBeLessThan(bins.length / 2);
      }),
    );
  });
});

it("a careful walk along a face from four sides weighs less than 4 kB", () => {
  let trail: Trail = NO_TRAIL;
  for (const azimuth of [0, 90, 180, 270]) {
    for (let x = 0; x <= 300; x += 4 + (x % 7)) {
      const seen = bounded({ aspect: "cap", width: 900, height: 500, x, up: (x % 11) - 5, scale: 10 + (x % 9) });
      trail = noteLook(trail, { view: seen, torch: { azimuth, elevation: 14 }, lens: null }, 2 + (x % 5));
    }
  }
  expect(JSON.stringify(packTrail(trail)).length).toBeLessThan(4096);
});

it("what is seen square on a plate of a fillet counts where a report would name it, on even plates", () => {
  for (const [aspect, along] of [
    ["base", 17],
    ["standing", -17],
  ] as const) {
    const { x, y } = onFace(aspect, { x: 102.5, y: along }, null);
    const seen: Viewport = { aspect, width: 600, height: 200, x, up: -along, scale: 20 };
    const trail = noteLook(NO_TRAIL, { view: seen, torch: { azimuth: 0, elevation: 30 }, lens: null }, 8);
    const place = { face: "fillet", start: x, end: x } as const;
    expect(timeAtPlace(trail, { ...place, across: y }).close).toBe(4);
    expect(timeAtPlace(trail, { ...place, across: 0 }).close).toBe(0);
    expect(timeAtPlace(trail, { ...place, across: -y }).close).toBe(0);
  }
});
