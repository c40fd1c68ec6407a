import { describe, expect, it } from "vitest";
import { BLUEPRINTS, generateSpecimen } from "@/lib/specimen";
import { FACES } from "@/lib/weld";

describe("clean plates at full resolution", () => {
  for (const seed of ["clean-1", "clean-2", "clean-3", "clean-4"]) {
    it(`measure nothing to report on ${seed}, yet something that tempts to`, () => {
      const { truth, recipe } = generateSpecimen(seed, BLUEPRINTS.clean);
      expect(truth.items.filter(({ neutral }) => !neutral)).toEqual([]);
      for (const face of FACES) expect(recipe.faces[face].requests.length).toBeGreaterThanOrEqual(2);
      expect(truth.items.length + truth.clutter.length).toBeGreaterThan(0);
    }, 240_000);
  }
});
