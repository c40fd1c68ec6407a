import { describe, expect, it } from "vitest";
import { type FilletUse, type Heights, heightsOfFace, type Standing, setDown } from "@/lib/gauges";
import { type RandomStream, randomStream } from "@/lib/random";
import { drawCleanFillet, generateFillet } from "@/lib/specimen";
import { filletOf, STEADY } from "./support/analytic";
import { partOf } from "./support/placements";

/** A fillet with waves on plates and face and some lumps beside it. */
function drawnFillet(random: RandomStream): Heights {
  const legs = [random.uniform(4, 13), random.uniform(4, 13)];
  const bulge = random.uniform(-0.1, 0.12) * Math.min(...legs);
  const fillet = filletOf(legs[0], legs[1], bulge);
  const [wave, period] = [random.uniform(0, 0.04), random.uniform(2, 9)];
  const lumps = Array.from({ length: 12 }, () => ({
    x: random.uniform(0, 200),
    y: random.chance(0.5) ? random.uniform(12, 24) : random.uniform(-24, -12),
    high: random.uniform(0.1, 0.6),
  }));
  return {
    ...fillet,
    heightAt: (x, y) => {
      let height = fillet.heightAt(x, y) + wave * Math.sin(x / period) * Math.sin(y / period);
      for (const lump of lumps) height += lump.high * Math.exp(-((x - lump.x) ** 2) - (y - lump.y) ** 2);
      return height;
    },
  };
}

/** Points of the gauge's body that may rest, in its own frame, and the blade's half thickness. */
function restingPoints(use: FilletUse): readonly (readonly [number, number])[] {
  return Array.from({ length: 81 }, (_, n) => n / 80).flatMap((share) => {
    if (use === "leg") return [[23 + 12 * share, 0] as const];
    const out = (21 + 10 * share) / Math.SQRT2;
    return [[out, out] as const, [-out, out] as const];
  });
}
/** Across half a blade 3 mm thick, and along it, in steps finer than a pixel. */
const SIDES = Array.from({ length: 25 }, (_, n) => 1.5 * (n / 12 - 1));
const PER_MM = 32;
const REACH = 44;

/** The same gauge on the same metal by plain loops. */
function byLoops(heights: Heights, x: number, turn: number) {
  const angle = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const { x0, x1, y0, y1 } = heights.extent;
  const highestAt = (s: number) => {
    let best = Number.NEGATIVE_INFINITY;
    for (const side of SIDES) {
      const [px, py] = [x + s * cos - side * sin, s * sin + side * cos];
      if (px >= x0 && px <= x1 && py >= y0 && py <= y1) best = Math.max(best, heights.heightAt(px, py));
    }
    return best;
  };
  const strip = Float64Array.from({ length: 2 * REACH * PER_MM + 1 }, (_, n) => highestAt(n / PER_MM - REACH));
  const metal = (s: number) => {
    const at = (s + REACH) * PER_MM;
    const n = Math.floor(at);
    return strip[n] + (at - n) * (strip[n + 1] - strip[n]);
  };
  const place = (pose: Standing["seat"]["pose"], u: number, w: number) => {
    const lean = (pose.tilt * Math.PI) / 180;
    const s = pose.along + u * Math.cos(lean) - w * Math.sin(lean);
    return pose.height + u * Math.sin(lean) + w * Math.cos(lean) - metal(s);
  };
  /** Least clearance, straight down, of some of the gauge's points. */
  const clearance = (pose: Standing["seat"]["pose"], points: readonly (readonly [number, number])[]) =>
    Math.min(...points.map(([u, w]) => place(pose, u, w)));
  /** The outline of the metal in the gauge's own frame. */
  const turned = (pose: Standing["seat"]["pose"]) => {
    const lean = (pose.tilt * Math.PI) / 180;
    return Array.from({ length: 1120 }, (_, n) => {
      const s = -35 + n / 16;
      const [ds, dh] = [s - pose.along, metal(s) - pose.height];
      return [ds * Math.cos(lean) + dh * Math.sin(lean), dh * Math.cos(lean) - ds * Math.sin(lean)] as const;
    });
  };
  return { clearance, turned };
}

const NOSE = Array.from({ length: 41 }, (_, n) => [0, 22 + n / 10] as const);
/** The slide's knife edge: 0.05 mm over the plate, rounded 0.05 mm, its bevel rising at 35 degrees. */
const EDGE = Array.from({ length: 121 }, (_, n) => {
  const up = n / 40;
  const back =
    up < 0.05 ? 0.05 - Math.sqrt(0.05 ** 2 - (0.05 - up) ** 2) : (up - 0.05) / Math.tan((35 * Math.PI) / 180);
  return [back, 0.05 + up] as const;
});
const END = Array.from({ length: 17 }, (_, n) => [0.8 * (n / 8 - 1), 0] as const);

function check(heights: Heights, use: FilletUse, random: RandomStream): "read" | "refused" {
  const [x, turn] = [random.uniform(10, 190), random.pick([90, 270]) + random.uniform(-10, 10)];
  const standing = setDown(heights, { kind: "fillet-gauge", x, y: 0, turn, use }, STEADY);
  if (!standing.ok) return "refused";
  const { pose } = standing.seat;
  const { clearance, turned } = byLoops(heights, x, turn);
  const points = restingPoints(use);
  const where = JSON.stringify(standing);
  // it rests: clear of the metal, and not above it
  expect(Math.abs(clearance(pose, points)), where).toBeLessThan(0.06);
  if (use === "leg") expect(Math.abs(clearance(pose, NOSE)), where).toBeLessThan(0.06);
  // it cannot get lower under the hand by leaning, nor between its shoulders by moving aside
  const handAt = (along: number, tilt: number) => {
    const moved = { ...pose, along: pose.along + along, tilt: pose.tilt + tilt };
    const room = clearance(moved, points);
    if (use === "throat") return moved.height - room;
    // the hand presses square to the plate, which rises one in one: so the room square to it is less by sqrt 2
    const lean = (moved.tilt * Math.PI) / 180;
    const [s, h] = [moved.along + 29 * Math.cos(lean), moved.height + 29 * Math.sin(lean)];
    return (h - s - room) / Math.SQRT2;
  };
  const home = handAt(0, 0);
  for (const tilt of [-1, -0.5, 0, 0.5, 1]) {
    for (const along of use === "leg" ? [0] : [-0.5, -0.1, 0, 0.1, 0.5]) {
      expect(handAt(along, tilt), `${tilt} ${along} ${where}`).toBeGreaterThan(home - 0.05);
    }
  }
  // the moving part, pushed in small steps until something of it would be inside
  const part = use === "leg" ? EDGE : END;
  let position = 20;
  if (use === "leg") {
    // it rides over what stands no higher than 0.15 mm, and stops at the foot of the slope of what stands higher
    const outline = turned(pose);
    let n = outline.findLastIndex(([u, w]) => u < 21 && w > 0.15);
    const falls = ([u0, w0]: readonly number[], [u1, w1]: readonly number[]) => w0 - w1 > 0.1 * (u1 - u0);
    while (outline[n + 1][1] > 0.05 && falls(outline[n], outline[n + 1])) n++;
    position = outline[n + 1][0];
  }
  const at = (q: number) => part.map(([u, w]) => (use === "leg" ? ([q + u, w] as const) : ([u, q] as const)));
  while (position > 0 && clearance(pose, at(position)) > 0) position -= 0.02;
  expect(Math.abs(standing.exact - position), where).toBeLessThan(0.1);
  return "read";
}

/** On drawn fillets, and on each of two generated ones. */
const DRAWN = partOf(500);
const ON_FILLET = partOf(250);
const USES = ["leg", "throat"] as const;

describe("fillet gauge: what is read is what is found by pushing in small steps", () => {
  it.each(USES)(`%s at ${DRAWN} placements on drawn fillets`, { timeout: 3_600_000 }, (use) => {
    const outcomes = Array.from({ length: DRAWN }, (_, n) => {
      const random = randomStream(`corner ${use} ${n}`);
      return check(drawnFillet(random), use, random);
    });
    expect(outcomes.filter((outcome) => outcome === "read").length).toBeGreaterThan(DRAWN / 2);
  });

  it.each(USES)(`%s at ${2 * ON_FILLET} placements on generated fillets`, { timeout: 3_600_000 }, (use) => {
    const outcomes = ["one", "two"].flatMap((seed) => {
      const { surface } = generateFillet(drawCleanFillet(`read back ${seed}`));
      const heights: Heights = { ...heightsOfFace(surface), corner: 90 };
      const random = randomStream(`corner ${use} ${seed}`);
      return Array.from({ length: ON_FILLET }, () => check(heights, use, random));
    });
    expect(outcomes.filter((outcome) => outcome === "read").length).toBeGreaterThan(1.6 * ON_FILLET);
  });
});
