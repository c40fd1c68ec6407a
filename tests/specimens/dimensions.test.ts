import { beforeAll, describe, expect, it } from "vitest";
import type { DimensionTruth, MadeFace } from "@/lib/specimen";
import { assembleTruth, generateFace } from "@/lib/specimen";
import { drawRecipe, type Recipe } from "@/lib/specimen/recipe";
import { heightAt } from "@/lib/surface";
import type { Dimension, Face } from "@/lib/weld";
import { recipeWith } from "./support/asked-face";
import { largest, median, plate, toeOf } from "./support/plain-loops";

/**
 * The dimensions of finished faces against a second opinion: plain loops over the heights, which share no code with the
 * product's measuring.
 */
const SEEDS = ["dimensions 1", "dimensions 2", "dimensions 3"];
const PLACES = Array.from({ length: 28 }, (_, n) => 15 + 10 * n);

function soundFace(seed: string, face: Face, plates?: Partial<Recipe["plates"]>): MadeFace {
  const recipe = recipeWith(drawRecipe(seed), face, []);
  return generateFace({ ...recipe, plates: { ...recipe.plates, ...plates } }, face);
}

const of = ({ dimensions }: MadeFace, dimension: Dimension): DimensionTruth =>
  dimensions.find((one) => one.dimension === dimension)!;

function at(truth: DimensionTruth, x: number): number {
  const { from, step, values } = truth.along!;
  return values[Math.round((x - from) / step)]!;
}

/** Both toes, each the median of five places within a millimetre. */
function toes(made: MadeFace, x: number) {
  const near = (side: 1 | -1) =>
    median([-0.8, -0.4, 0, 0.4, 0.8].map((dx) => toeOf(made.surface, side, x + dx, 21 * side)));
  return { low: near(-1), high: near(1) };
}

/** From where the metal leaves the plate on one side, by 0.08 mm, to where it does on the other; each the median of five places. */
function widthAt({ surface }: MadeFace, x: number): number {
  const foot = (side: 1 | -1, at: number): number => {
    let y = toeOf(surface, side, at, 21 * side);
    const line = plate(surface, side, at, y);
    while (heightAt(surface, at, y) - line(y) > 0.08 && Math.abs(y) < 24) y += side * 0.05;
    return y;
  };
  const near = (side: 1 | -1) => median([-0.8, -0.4, 0, 0.4, 0.8].map((dx) => foot(side, x + dx)));
  return near(1) - near(-1);
}

/** Largest height over the straight line between the plates at the two toes, of what lies under a blade 3 mm thick. */
function crown(made: MadeFace, x: number): number {
  const { low, high } = toes(made, x);
  const zLow = plate(made.surface, -1, x, low)(low);
  const zHigh = plate(made.surface, 1, x, high)(high);
  const top = (at: number) =>
    largest(low, high, (y) => heightAt(made.surface, at, y) - zLow - ((zHigh - zLow) * (y - low)) / (high - low)).value;
  const places = Array.from({ length: 13 }, (_, n) => x - 1.5 + 0.25 * n);
  return Math.max(
    ...places.map((at) => median([-0.375, -0.25, -0.125, 0, 0.125, 0.25, 0.375].map((dx) => top(at + dx)))),
  );
}

describe.each(SEEDS)("%s", (seed) => {
  let cap: MadeFace;
  let root: MadeFace;
  beforeAll(() => {
    cap = soundFace(seed, "cap");
    root = soundFace(seed, "root");
  });

  it("weld width, toe to toe", () => {
    const errors = PLACES.map((x) => Math.abs(at(of(cap, "weld-width"), x) - widthAt(cap, x)));
    expect(median(errors)).toBeLessThan(0.3);
    // a toe that leaves the plate slowly lies where one looks for it
    expect(Math.max(...errors)).toBeLessThan(0.8);
  });

  it.each([
    ["cap", "cap-height"],
    ["root", "root-height"],
  ] as const)("%s: height of the crown", (face, dimension) => {
    const made = face === "cap" ? cap : root;
    const errors = PLACES.map((x) => Math.abs(at(of(made, dimension), x) - Math.max(0, crown(made, x))));
    expect(median(errors)).toBeLessThan(0.06);
    expect(Math.max(...errors)).toBeLessThan(0.3);
  });

  it("plate thickness: what both finished faces have between them beside the plates' edges", () => {
    const recipe = drawRecipe(seed);
    const truth = assembleTruth(recipe.joint, [cap, root]).dimensions.filter(
      (one) => one.dimension === "plate-thickness",
    );
    const through: number[] = [];
    for (let x = 7; x < 295; x += 4) {
      for (const y of [48, 55, 62, 69, -48, -55, -62, -69]) {
        through.push(recipe.rolled + heightAt(cap.surface, x, y) + heightAt(root.surface, x, y));
      }
    }
    expect(truth).toHaveLength(1);
    expect(truth[0]).toMatchObject({ station: null, at: null, along: null });
    // bent by a few degrees they are a little thinner square to themselves: less than the step of a caliper
    expect(Math.abs(truth[0].value - median(through))).toBeLessThan(0.03);
  });

  it("the value is the largest along the weld, and stands where it is said to be", () => {
    for (const truth of [...cap.dimensions, ...root.dimensions]) {
      const values = truth.along!.values.filter((value) => value !== null);
      expect(truth.value, truth.dimension).toBe(Math.max(0, ...values));
      if (truth.value > 0) expect(at(truth, truth.at!), truth.dimension).toBe(truth.value);
    }
  });
});

describe("how the plates stand", () => {
  it("step: what they were set to, at either end", () => {
    const made = soundFace(SEEDS[0], "cap", { stepAtDatum: 0.3, stepAtFarEnd: -1.5 });
    const truth = of(made, "linear-misalignment");
    expect(Math.abs(truth.value - 1.5)).toBeLessThan(0.12);
    expect(truth.at).toBeGreaterThan(285);
    // the straight line between 0.3 and -1.5 passes 0 at 50 mm
    expect(at(truth, 50)).toBeLessThan(0.1);
    expect(Math.abs(at(truth, 150) - 0.6)).toBeLessThan(0.1);
  });

  it("angle: bent plates come out bent, straight ones nearly straight", () => {
    const bent = of(soundFace(SEEDS[1], "cap", { distortion: 4 }), "angular-misalignment").value;
    const straight = of(soundFace(SEEDS[1], "cap", { distortion: 0 }), "angular-misalignment").value;
    expect(bent - straight).toBeGreaterThan(2);
    expect(straight).toBeLessThan(1.5);
  });
});
