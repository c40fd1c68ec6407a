import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { type Heights, setDown } from "@/lib/gauges";
import { randomStream } from "@/lib/random";
import {
  drawCleanFillet,
  type FilletRecipe,
  generateFillet,
  generateFilletSpecimen,
  sizesAt,
  truthSchema,
} from "@/lib/specimen";
import type { FeatureRequest } from "@/lib/specimen/work";
import { heightAt, type Surface, turnedFillet } from "@/lib/surface";
import { type Dimension, FILLET_HALF_WIDTH, FILLET_LENGTH, requiredThroat, STATEMENTS } from "@/lib/weld";

/** A point of a section, mm along the base plate and up the standing plate; worked out here from the heights alone. */
interface Place {
  readonly p: number;
  readonly q: number;
}

const middleOf = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1];

/** One column of pixels as a section, from the standing plate to the base plate, and where both plates lie. */
function column(surface: Surface, x: number): { places: Place[]; corner: Place; inside: number } {
  const { grid, height } = surface.strip;
  const i = Math.min(grid.columns - 1, Math.floor(x * grid.perMm));
  const places: Place[] = [];
  for (let j = 0; j < grid.rows; j++) {
    const v = grid.y0 + (j + 0.5) / grid.perMm;
    const z = height[j * grid.columns + i];
    places.push({ p: (z + v) / Math.SQRT2, q: (z - v) / Math.SQRT2 });
  }
  const outer = (along: (place: Place) => number, other: (place: Place) => number) =>
    middleOf(places.filter((place) => along(place) > 20 && along(place) < 26).map(other));
  return {
    places,
    corner: {
      p: outer(
        ({ q }) => q,
        ({ p }) => p,
      ),
      q: outer(
        ({ p }) => p,
        ({ q }) => q,
      ),
    },
    inside: places.findIndex(({ p, q }) => p > q),
  };
}

/** Where the metal comes down to 0.12 mm over a plate, from the middle of the weld outwards, in one column. */
function legsAt(surface: Surface, x: number): { base: number; standing: number } {
  const { places, corner, inside } = column(surface, x);
  let j = inside;
  while (places[j].q - corner.q > 0.12) j++;
  const base = places[j].p - corner.p;
  j = inside;
  while (places[j].p - corner.p > 0.12) j--;
  return { base, standing: places[j].q - corner.q };
}

/** Nearest pixel to the corner between both toes, in one column. */
function throatAt(surface: Surface, x: number): number {
  const { places, corner } = column(surface, x);
  const { base, standing } = legsAt(surface, x);
  const face = places
    .map(({ p, q }) => ({ p: p - corner.p, q: q - corner.q }))
    .filter(({ p, q }) => p > 0.12 && q > 0.12);
  return Math.min(base, standing, ...face.map(({ p, q }) => Math.hypot(p, q)));
}

/** Highest pixel within 0.8 mm of the line between the plates over the corner, in one column. */
function shownAt(surface: Surface, x: number): number {
  const { places, corner } = column(surface, x);
  const across = ({ p, q }: Place) => Math.abs(p - corner.p - q + corner.q) / Math.SQRT2;
  const over = ({ p, q }: Place) => (p - corner.p + q - corner.q) / Math.SQRT2;
  return Math.max(...places.filter((place) => across(place) <= 0.8).map(over));
}

const heightsOf = (surface: Surface): Heights => ({
  heightAt: (x, y) => heightAt(surface, x, y),
  extent: { x0: 0, x1: FILLET_LENGTH, y0: -FILLET_HALF_WIDTH, y1: FILLET_HALF_WIDTH },
  corner: 90,
  underside: null,
});

const near = (x: number) => Array.from({ length: 9 }, (_, n) => x + (n - 4) / 8);
const fingerprint = ({ strip, plate }: Surface, truth: unknown) =>
  createHash("sha256")
    .update(new Uint8Array(strip.height.buffer))
    .update(strip.albedo)
    .update(new Uint8Array(plate.height.buffer))
    .update(JSON.stringify(truth))
    .digest("hex");

const CLEAN = ["f1", "f2", "f3", "f4", "f5", "f6", "f7", "f8"];

describe("clean fillets", () => {
  const made = CLEAN.map((seed) => {
    const recipe = drawCleanFillet(seed);
    return { seed, recipe, ...generateFillet(recipe) };
  });

  it("have nothing to record", () => {
    for (const { seed, truth } of made)
      expect(
        truth.items.filter(({ neutral }) => !neutral),
        seed,
      ).toEqual([]);
  });

  it("have legs and throats that plain loops over the pixels find too", () => {
    for (const { seed, surface, truth } of made) {
      for (const [n, x] of truth.stations.entries()) {
        const station = sizesAt(surface.strip, x)!;
        const legs = near(x).map((place) => legsAt(surface, place));
        const at = `${seed}, station ${n + 1}`;
        expect(Math.abs(station.baseLeg - middleOf(legs.map(({ base }) => base))), at).toBeLessThan(0.3);
        expect(Math.abs(station.standingLeg - middleOf(legs.map(({ standing }) => standing))), at).toBeLessThan(0.3);
        const throat = middleOf(near(x).map((place) => throatAt(surface, place)));
        expect(Math.abs(station.actualThroat - throat), at).toBeLessThan(0.15);
        expect(station.asymmetry, at).toBeCloseTo(Math.abs(station.baseLeg - station.standingLeg), 9);
        // a triangle that fits in is no higher than the weld is thick, and no larger than the shorter leg allows
        expect(station.designThroat, at).toBeLessThanOrEqual(station.actualThroat + 1e-9);
        expect(station.designThroat, at).toBeLessThanOrEqual(
          Math.min(station.baseLeg, station.standingLeg) / Math.SQRT2 + 1e-9,
        );
      }
    }
  });

  it("are as large as their drawing asks, less what is not recorded", () => {
    for (const { seed, recipe, truth } of made) {
      const { value } = truth.dimensions.find(({ dimension }) => dimension === "smallest-throat")!;
      expect(value, seed).toBeGreaterThan(requiredThroat(recipe.joint.size) - 0.3);
    }
  });

  it("have dimensions that plain loops over the pixels find too: at every station, and least along the whole weld", () => {
    for (const { seed, surface, truth } of made) {
      const at = (dimension: Dimension, station: number | null) =>
        truth.dimensions.find((one) => one.dimension === dimension && one.station === station)!;
      // a blade 3 mm thick shows the largest under it
      const under = (size: (x: number) => number, x: number) =>
        Math.max(...[-1.5, -1, -0.5, 0, 0.5, 1, 1.5].map((away) => size(x + away)));
      for (const [n, x] of truth.stations.entries()) {
        const words = `${seed}, station ${n + 1}`;
        expect(at("throat", n + 1).at, words).toBe(x);
        // one column's toe wanders with the grain: the middle one of those within half a millimetre
        const leg = (side: "base" | "standing") =>
          Math.max(...[-1, 0, 1].map((away) => middleOf(near(x + away).map((place) => legsAt(surface, place)[side]))));
        const base = leg("base");
        expect(Math.abs(at("base-leg", n + 1).value - base), words).toBeLessThan(0.3);
        const standing = leg("standing");
        expect(Math.abs(at("standing-leg", n + 1).value - standing), words).toBeLessThan(0.3);
        const shown = under((place) => shownAt(surface, place), x);
        expect(Math.abs(at("throat", n + 1).value - shown), words).toBeLessThan(0.15);
      }
      const places = Array.from({ length: 167 }, (_, n) => 17 + n);
      const throat = Math.min(...places.map((x) => under((place) => shownAt(surface, place), x)));
      expect(Math.abs(at("smallest-throat", null).value - throat), seed).toBeLessThan(0.2);
      const leg = Math.min(
        ...places.map((x) => under((place) => Math.min(...Object.values(legsAt(surface, place))), x)),
      );
      expect(Math.abs(at("smallest-leg", null).value - leg), seed).toBeLessThan(0.35);
      for (const dimension of ["smallest-leg", "smallest-throat"] as const) {
        const { value, along, at: place } = at(dimension, null);
        const values = along!.values.filter((one) => one !== null);
        expect(value, `${seed} ${dimension}`).toBe(Math.min(...values));
        expect(along!.values[(place! - along!.from) / along!.step], `${seed} ${dimension}`).toBe(value);
      }
    }
  });

  it("have a throat that the leg-and-throat gauge reads when it is set down there", () => {
    for (const { seed, surface, truth } of made) {
      const heights = heightsOf(surface);
      for (const { dimension, station, value, at } of truth.dimensions) {
        if (dimension !== "throat" && dimension !== "smallest-throat") continue;
        const spot = { kind: "fillet-gauge", use: "throat", x: at!, y: 0, turn: 90 } as const;
        const standing = setDown(heights, spot, randomStream(seed));
        if (!standing.ok) throw new Error(`${seed} ${dimension} ${station}: ${standing.code}`);
        // what the gauge's own seating adds is another matter: within half the tolerance
        expect(Math.abs(standing.exact - value), `${seed} ${dimension} ${station}`).toBeLessThan(0.25);
      }
    }
  });

  it("are stated in the words of their own dimensions", () => {
    for (const { seed, recipe, truth } of made) {
      const { symbol, value } = recipe.joint.size;
      const least = truth.dimensions.find(
        ({ dimension }) => dimension === (symbol === "a" ? "smallest-throat" : "smallest-leg"),
      )!.value;
      const stated = truth.statements.find(({ statement }) => statement === "size")!;
      expect(stated.value, seed).toBe(least);
      expect(stated.right.includes("met"), seed).toBe(least >= value - 0.2);
      const legs = truth.statements.find(({ statement }) => statement === "asymmetry")!;
      // nothing is recorded on these
      expect(legs.right, seed).toContain("equal");
      expect(
        truth.statements.map(({ statement }) => statement),
        seed,
      ).toEqual([...STATEMENTS]);
      expect(truthSchema.parse(JSON.parse(JSON.stringify(truth))), seed).toEqual(truth);
    }
  });

  it("stand between plates at 45 degrees to the line between them", () => {
    for (const { seed, surface } of made) {
      const { grid, height } = surface.plate;
      for (let i = 20; i < grid.columns - 20; i += 37) {
        for (const j of [30, 80, grid.rows - 81, grid.rows - 31]) {
          const v = grid.y0 + (j + 0.5) / grid.perMm;
          // mill scale, rolling waves, scratches and globules of spatter
          expect(Math.abs(height[j * grid.columns + i] - Math.abs(v)), `${seed} ${i} ${j}`).toBeLessThan(0.9);
        }
      }
    }
  });

  it("are tight under the standing plate", () => {
    for (const { seed, truth } of made) expect(Math.max(truth.gap.datum, truth.gap.farEnd), seed).toBeLessThan(1);
  });

  it("come out the same again, and differ from each other", () => {
    const first = made.map(({ surface, truth }) => fingerprint(surface, truth));
    expect(new Set(first).size).toBe(CLEAN.length);
    const again = generateFillet(drawCleanFillet(CLEAN[0]));
    expect(fingerprint(again.surface, again.truth)).toBe(first[0]);
  });

  it("show what they show from either plate too", () => {
    const { surface } = made[0];
    const { base } = legsAt(surface, 100);
    const turned = turnedFillet(surface, "base");
    const { grid, height } = turned.strip;
    const row = (y: number) => Math.floor((y - grid.y0) * grid.perMm);
    expect(height[row(base + 6) * grid.columns + 800]).toBeLessThan(0.4);
    expect(height[row(base / 2) * grid.columns + 800]).toBeGreaterThan(1);
  });
});

/** A clean fillet with one thing asked of it at its middle. */
function withOne(
  seed: string,
  request: Omit<FeatureRequest, "id" | "x">,
): ReturnType<typeof generateFillet> & { recipe: FilletRecipe } {
  const recipe = { ...drawCleanFillet(seed), requests: [{ ...request, id: "one", x: 100 - request.length / 2 }] };
  return { recipe, ...generateFillet(recipe) };
}

const alongItem = ({ start, end }: { start: number; end: number }, step = 0.5) =>
  Array.from({ length: Math.floor((end - start) / step) }, (_, n) => start + (n + 0.5) * step);

describe("what is measured on fillets", () => {
  it("finds an undercut as deep, square to the standing plate, as the pixels are", () => {
    const { surface, truth } = withOne("u1", { type: "continuous-undercut", length: 30, side: 1, severity: 0.7 });
    const item = truth.items.find(({ type }) => type === "continuous-undercut");
    if (!item) throw new Error("no undercut");
    let deepest = 0;
    for (const x of alongItem(item, 1 / 8)) {
      const { places, corner } = column(surface, x);
      const { standing } = legsAt(surface, x);
      const beside = places.filter(({ q }) => q - corner.q > standing + 3 && q - corner.q < standing + 9);
      const plate = middleOf(beside.map(({ p }) => p));
      const groove = places.filter(({ q }) => q - corner.q > standing - 1.5 && q - corner.q < standing + 3);
      deepest = Math.max(deepest, ...groove.map(({ p }) => plate - p));
    }
    expect(item.size).not.toBeNull();
    expect(Math.abs((item.size ?? 0) - deepest)).toBeLessThan(0.12);
    expect(item.across).toBeLessThan(0);
    expect(item.end - item.start).toBeGreaterThan(18);
  });

  it("finds an overlap where the base plate's toe reaches out", () => {
    const { surface, truth } = withOne("o1", { type: "overlap", length: 22, side: -1, severity: 2.2 });
    const item = truth.items.find(({ type }) => type === "overlap");
    if (!item) throw new Error("no overlap");
    const legs = (from: number, to: number) => alongItem({ start: from, end: to }).map((x) => legsAt(surface, x).base);
    const sound = middleOf([...legs(item.start - 10, item.start - 3), ...legs(item.end + 3, item.end + 10)]);
    const furthest = Math.max(...legs(item.start, item.end));
    expect(Math.abs((item.width ?? 0) - (furthest - sound))).toBeLessThan(0.5);
    expect(item.across).toBeGreaterThan(0);
  });

  it("finds a pore as wide as its mouth", () => {
    const { surface, truth } = withOne("p1", { type: "surface-pore", length: 0, side: 1, severity: 1.6 });
    const item = truth.items.find(({ type }) => type === "surface-pore");
    if (!item) throw new Error("no pore");
    const { grid, height } = surface.strip;
    const rim: number[] = [];
    const inside: number[] = [];
    for (let j = 0; j < grid.rows; j++) {
      for (let i = 0; i < grid.columns; i++) {
        const away = Math.hypot((i + 0.5) / 8 - item.start, grid.y0 + (j + 0.5) / 8 - item.across);
        const z = height[j * grid.columns + i];
        if (away > 1.2 && away < 1.5) rim.push(z);
        if (away < 1.3) inside.push(z);
      }
    }
    const depth = middleOf(rim) - Math.min(...inside);
    const mouth = inside.filter((z) => middleOf(rim) - z > 0.35 * depth).length;
    expect(Math.abs((item.size ?? 0) - 2 * Math.sqrt(mouth / Math.PI / 64))).toBeLessThan(0.3);
  });

  it("finds a bulge over the line from toe to toe", () => {
    const { surface, truth } = withOne("v1", { type: "excessive-convexity", length: 28, side: 1, severity: 2.4 });
    const item = truth.items.find(({ type }) => type === "excessive-convexity");
    if (!item) throw new Error("no convexity");
    const bulges = alongItem(item).map((x) => {
      const { places, corner } = column(surface, x);
      const { base, standing } = legsAt(surface, x);
      const long = Math.hypot(base, standing);
      return Math.max(
        ...places
          .map(({ p, q }) => ((p - corner.p) * standing + (q - corner.q) * base - base * standing) / long)
          .filter((_, n) => {
            const { p, q } = places[n];
            return p - corner.p < base && q - corner.q < standing;
          }),
      );
    });
    expect(Math.abs((item.size ?? 0) - Math.max(...bulges))).toBeLessThan(0.2);
  });

  it("finds unequal legs and short throats", () => {
    const uneven = withOne("s1", { type: "excessive-asymmetry", length: 30, side: -1, severity: 3.4 });
    const longer = uneven.truth.items.find(({ type }) => type === "excessive-asymmetry");
    if (!longer) throw new Error("no asymmetry");
    const differences = alongItem(longer).map((x) => {
      const { base, standing } = legsAt(uneven.surface, x);
      return base - standing;
    });
    expect(Math.abs((longer.size ?? 0) - middleOf(differences.sort((a, b) => b - a).slice(0, 9)))).toBeLessThan(0.4);

    const small = withOne("s2", { type: "insufficient-throat", length: 30, side: 1, severity: 0.9, variant: "legs" });
    const short = small.truth.items.find(({ type }) => type === "insufficient-throat");
    if (!short) throw new Error("no short throat");
    const shortest = alongItem(short).map((x) => {
      const { base, standing } = legsAt(small.surface, x);
      return Math.min(base, standing) / Math.SQRT2;
    });
    const missing = requiredThroat(small.recipe.joint.size) - middleOf(shortest.sort((a, b) => a - b).slice(0, 9));
    expect(Math.abs((short.size ?? 0) - missing)).toBeLessThan(0.3);
  });

  it("feels the gap that the end view shows", () => {
    const { truth, ends } = generateFillet({ ...drawCleanFillet("g1"), gap: { datum: 2.1, farEnd: 0.3 } });
    const feet = ends.datum.standing.filter(({ along, up }) => along < 0 && up < 10).map(({ up }) => up);
    expect(truth.gap.datum).toBeGreaterThan(Math.min(...feet) - 0.05);
    expect(Math.abs(truth.gap.datum - 2.1)).toBeLessThan(0.2);
    const item = truth.items.find(({ type }) => type === "incorrect-root-gap");
    expect(item).toMatchObject({ start: 0, end: 0, size: truth.gap.datum, neutral: false });
  });
});

describe("fillet specimens", () => {
  const made = ["q1", "q2", "q3"].map((seed) => ({ seed, ...generateFilletSpecimen(seed) }));

  it("let a careful hand read legs and throats at nearly every station within 0.5 mm", () => {
    let within = 0;
    for (const { seed, surface, truth } of made) {
      const heights = heightsOf(surface);
      const hand = randomStream(`hand ${seed}`);
      for (const { dimension, station, value, at } of truth.dimensions) {
        if (station === null) continue;
        const use = dimension === "throat" ? "throat" : "leg";
        const readings = Array.from({ length: 3 }, () => {
          const turn = (dimension === "standing-leg" ? -90 : 90) + hand.normal(0, 1.5);
          const spot = { kind: "fillet-gauge", use, x: at! + hand.normal(0, 0.5), y: 0, turn } as const;
          const standing = setDown(heights, spot, hand.child("seat"));
          return standing.ok ? standing.reading : Number.POSITIVE_INFINITY;
        });
        if (Math.abs(middleOf(readings) - value) <= 0.5 + 1e-9) within++;
      }
    }
    // of 27; what a slide stops at before the toe is there for anybody to see
    expect(within).toBeGreaterThanOrEqual(25);
  });

  it("have at least four things to record, apart from each other and on the joint", () => {
    for (const { seed, truth } of made) {
      const recorded = truth.items.filter(({ neutral }) => !neutral);
      expect(recorded.length, seed).toBeGreaterThanOrEqual(4);
      for (const [n, item] of recorded.entries()) {
        expect(item.face).toBe("fillet");
        expect(item.start, seed).toBeGreaterThanOrEqual(0);
        expect(item.end, seed).toBeLessThanOrEqual(FILLET_LENGTH);
        for (const other of recorded.slice(n + 1)) {
          const along = Math.max(item.start - other.end, other.start - item.end);
          expect(along >= 10 || Math.abs(item.across - other.across) >= 3, `${seed} ${item.id} ${other.id}`).toBe(true);
        }
      }
    }
  });
});
