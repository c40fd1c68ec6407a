import { describe, expect, it } from "vitest";
import {
  type FeetPlacement,
  GAUGES,
  type Heights,
  type HookPlacement,
  heightsOfFace,
  STEEPEST,
  setDown,
  withinLimits,
} from "@/lib/gauges";
import { type RandomStream, randomStream } from "@/lib/random";
import { generateFace } from "@/lib/specimen/generate";
import { drawRecipe } from "@/lib/specimen/recipe";
import { plateOf, STEADY } from "./support/analytic";
import { partOf } from "./support/placements";
import { type PlainStand, standByTrying } from "./support/plain-gauge";

type OnFeet = FeetPlacement | HookPlacement;

/** A weld with undercuts, a step between the plates, waves and lumps, all smooth, different for every name. */
function drawnPlate(random: RandomStream): Heights {
  const [cap, half] = [random.uniform(-1, 4), random.uniform(4, 11)];
  const drop = random.uniform(-3, 3);
  const cuts = [1, -1].map((side) => ({
    at: side * (half + 0.3),
    depth: random.uniform(0, 1.5),
    wide: random.uniform(0.4, 1.2),
  }));
  const lumps = Array.from({ length: 40 }, () => ({
    x: random.uniform(0, 300),
    y: random.uniform(-60, 60),
    high: random.uniform(0.2, 1.6),
    wide: random.uniform(0.8, 2.5),
  }));
  // only those that can be felt in a stretch of 10 mm
  const near = Array.from({ length: 30 }, (_, n) => lumps.filter(({ x }) => Math.abs(x - 10 * n - 5) < 15));
  const [wave, period] = [random.uniform(0, 0.15), random.uniform(3, 20)];
  return plateOf((x, y) => {
    let height = -drop / (1 + Math.exp(4 * y)) + wave * Math.sin(x / period) * Math.cos(y / period);
    if (Math.abs(y) < half) height += cap * Math.cos((Math.PI * y) / (2 * half)) ** 2;
    for (const { at, depth, wide } of cuts) height -= depth * Math.exp(-(((y - at) / wide) ** 2));
    for (const lump of near[Math.floor(x / 10)]) {
      const square = ((x - lump.x) ** 2 + (y - lump.y) ** 2) / lump.wide ** 2;
      if (square < 6) height += lump.high * Math.exp(-square);
    }
    return height;
  });
}

function drawnPlacement(random: RandomStream): OnFeet {
  const spot = { x: random.uniform(70, 230), y: random.uniform(-14, 14), turn: random.uniform(0, 360) };
  const kind = random.pick(["height-gauge", "depth-gauge", "hook-gauge"] as const);
  const drawn: OnFeet =
    kind === "hook-gauge"
      ? { ...spot, kind, turn: random.pick([90, 270]) + random.uniform(-15, 15), reach: random.uniform(6, 40) }
      : {
          ...spot,
          kind,
          stance: random.pick(["straddling", "one-side"] as const),
          near: random.uniform(3, 25),
          spacing: random.uniform(10, 45),
        };
  const placement = withinLimits(drawn);
  if (placement.kind === "fillet-gauge" || placement.kind === "caliper") throw new Error("a gauge on feet stays one");
  return placement;
}

interface Tally {
  read: number;
  refused: number;
  /** Where it stands otherwise than trying has it. */
  readonly misfits: string[];
  /** Of the reading against the one found by trying, at the lean that trying found best. */
  readonly errors: number[];
}

/** Whether a lean is as good a rest as the one at which the hand is lowest. */
const isRest = (plain: PlainStand, lean: number): boolean => plain.handAt(lean) - plain.handAt(plain.lean) < 0.05;

/** Sets gauges down and compares how they stand and what they read with the same found by trying. */
function compare(heights: Heights, random: RandomStream, count: number, tally: Tally): void {
  for (let n = 0; n < count; n++) {
    const placement = drawnPlacement(random);
    const standing = setDown(heights, placement, STEADY);
    const plain = standByTrying(heights, placement);
    const where = JSON.stringify({ placement, plain, standing });
    if (!standing.ok) {
      tally.refused++;
      if (standing.code === "leans-too-far" && Math.abs(plain.lean) > STEEPEST) continue;
      if (standing.code === "rocks") {
        // turned a little to one side or the other, the hand is hardly higher
        const rise = [-3, 3].map((by) => plain.handAt(plain.lean + by) - plain.handAt(plain.lean));
        if (Math.min(...rise) > 0.12) tally.misfits.push(where);
        continue;
      }
      if (!isRest(plain, standing.seat?.lean ?? 0)) tally.misfits.push(where);
      if (standing.code === "leans-too-far") continue;
      expect(standing.code, where).toBe("out-of-range");
      const end = plain.endAt(standing.seat?.lean ?? 0) ?? Number.NEGATIVE_INFINITY;
      const { lowest, highest } = GAUGES[placement.kind].range ?? { lowest: 0, highest: 0 };
      const shown = placement.kind === "height-gauge" ? end : -end;
      expect(shown < lowest + 0.1 || shown > highest - 0.1, where).toBe(true);
      continue;
    }
    tally.read++;
    const { lean } = standing.seat;
    if (!isRest(plain, lean)) tally.misfits.push(where);
    const shown = placement.kind === "height-gauge" ? standing.exact : -standing.exact;
    expect(Math.abs(shown - (plain.endAt(lean) ?? Number.POSITIVE_INFINITY)), where).toBeLessThan(0.1);
    tally.errors.push(Math.abs(shown - (plain.endAt(plain.lean) ?? Number.POSITIVE_INFINITY)));
  }
}

const share = (errors: readonly number[], part: number) =>
  [...errors].sort((a, b) => a - b)[Math.floor(errors.length * part)];

/** On drawn plates 100 each, on generated faces as many on a cap as on a root. */
const DRAWN = partOf(60);
const ON_FACE = partOf(1000);

describe("what is read is what is found by trying every lean and pushing down", () => {
  it(`at ${100 * DRAWN} placements on drawn plates`, { timeout: 3_600_000 }, () => {
    const tally: Tally = { read: 0, refused: 0, misfits: [], errors: [] };
    for (let n = 0; n < DRAWN; n++) {
      const random = randomStream(`read back ${n}`);
      compare(drawnPlate(random.child("plate")), random.child("placements"), 100, tally);
    }
    expect(tally.read).toBeGreaterThan(50 * DRAWN);
    // with a lump right under the hand there are two rests, and either may be found
    expect(tally.misfits.length, tally.misfits.join("\n")).toBeLessThan(Math.max(4, DRAWN / 4));
    expect(share(tally.errors, 0.5)).toBeLessThan(0.005);
    expect(share(tally.errors, 0.99)).toBeLessThan(0.05);
  });

  it(`at ${2 * ON_FACE} placements on generated faces`, { timeout: 3_600_000 }, () => {
    const tally: Tally = { read: 0, refused: 0, misfits: [], errors: [] };
    for (const [seed, face] of [
      ["read back 1", "cap"],
      ["read back 2", "root"],
    ] as const) {
      const heights = heightsOfFace(generateFace(drawRecipe(seed), face).surface);
      compare(heights, randomStream(seed), ON_FACE, tally);
    }
    expect(tally.read).toBeGreaterThan(ON_FACE);
    expect(tally.misfits.length, tally.misfits.join("\n")).toBeLessThan(4);
    expect(share(tally.errors, 0.5)).toBeLessThan(0.02);
  });
});
