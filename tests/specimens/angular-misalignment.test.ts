import { describe, expect, it } from "vitest";
import { generateFace } from "@/lib/specimen";
import { createWork } from "@/lib/specimen/create-work";
import { probeAngles } from "@/lib/specimen/joint-items";
import { layParentPlate } from "@/lib/specimen/plate";
import { drawRecipe, type Recipe } from "@/lib/specimen/recipe";
import { heightAt, type Surface } from "@/lib/surface";

/** A seed's recipe without anything planted, its plates bent by a total angle, degrees. */
function bentRecipe(seed: string, total: number): Recipe {
  const recipe = drawRecipe(seed);
  const { cap, root } = recipe.faces;
  const faces = { cap: { ...cap, requests: [] }, root: { ...root, requests: [] } };
  return { ...recipe, plates: { ...recipe.plates, distortion: total / 2 }, faces };
}

/** Ordinary least squares through heights read every 0.5 mm, 20 to 60 mm from the centre, at 25 places along the weld. */
function angleByPlainLoops(surface: Surface): number {
  let total = 0;
  for (const side of [-1, 1]) {
    let sum = 0;
    let places = 0;
    for (let x = 30; x <= 270; x += 10) {
      let n = 0;
      let sy = 0;
      let sz = 0;
      let syy = 0;
      let syz = 0;
      for (let out = 20; out <= 60; out += 0.5) {
        const z = heightAt(surface, x, side * out);
        n++;
        sy += out;
        sz += z;
        syy += out * out;
        syz += out * z;
      }
      sum += Math.atan((n * syz - sy * sz) / (n * syy - sy * sy));
      places++;
    }
    total += sum / places;
  }
  return (total * 180) / Math.PI;
}

describe("angular misalignment", () => {
  it.each([0.4, 1.8, 3.3, 5.4])("is felt on the plates as they were set, %s degrees in all", (total) => {
    const work = createWork(bentRecipe(`angle ${total}`, total), "cap");
    layParentPlate(work);
    work.toeMinus.fill(-9);
    work.toePlus.fill(8);
    for (const { angle } of probeAngles(work)) expect(Math.abs(angle - total)).toBeLessThan(0.15);
  });

  it.each([
    ["bent 1", 2.2, false],
    ["bent 2", 3.2, true],
    ["bent 3", 5, true],
  ] as const)("is in the truth of a finished cap (%s) from about 3 degrees on", (seed, total, isThere) => {
    const { surface, items } = generateFace(bentRecipe(seed, total), "cap");
    expect(Math.abs(angleByPlainLoops(surface) - total)).toBeLessThan(0.15);
    const found = items.filter(({ type }) => type === "angular-misalignment");
    expect(found.length).toBe(isThere ? 1 : 0);
    for (const { start, end, size, neutral } of found) {
      expect([start, end, size, neutral]).toEqual([0, 300, null, false]);
    }
  });

  it("is rare: about one plate in seven (common practice, no source)", () => {
    const totals = Array.from({ length: 300 }, (_, n) => 2 * drawRecipe(`how bent ${n}`).plates.distortion);
    const bent = totals.filter((total) => total >= 3);
    // 300 draws at 0.15: standard deviation 6.2
    expect(Math.abs(bent.length - 45)).toBeLessThan(22);
    for (const total of totals) expect(total < 2.3 || total > 3.1).toBe(true);
    expect(Math.max(...totals)).toBeLessThan(5.6);
  });
});
