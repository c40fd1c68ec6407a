import { beforeAll, describe, expect, it } from "vitest";
import { IMPERFECTION_TYPES } from "@/lib/imperfections";
import { drawRecipe, type Recipe } from "@/lib/specimen";
import type { FeatureRequest } from "@/lib/specimen/work";
import { FACES, type Face, grooveHalfWidth } from "@/lib/weld";

const SEEDS = 1000;

interface Extent {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

/** What lies over the whole width of the weld, whatever its request says. */
const WHOLE_WELD = new Set([
  "incompletely-filled-groove",
  "excess-weld-metal",
  "root-penetration",
  "root-fusion",
  "excess-penetration",
  "burn-through",
  "root-concavity",
  "shrinkage-groove",
  "root-porosity",
]);
const ON_PLATE = new Set(["stray-arc", "grinding-mark", "chipping-mark", "light-grinding"]);

/** The smallest box that a request can be thought to fill, by the joint's geometry: worked out anew, not taken from the generator. */
function extentOf(recipe: Recipe, face: Face, request: FeatureRequest): Extent {
  const { joint, faces } = recipe;
  const { layout } = faces[face];
  const toe = (face === "cap" ? grooveHalfWidth(joint) : joint.rootGap / 2) + layout.overlap;
  const along = { x0: request.x, x1: request.x + request.length };
  const across = (a: number, b: number): Extent => ({ ...along, y0: Math.min(a, b), y1: Math.max(a, b) });
  if (WHOLE_WELD.has(request.type)) return across(-toe, toe);
  if (ON_PLATE.has(request.type)) {
    if (request.y === undefined) throw new Error(`${request.id} has no place across`);
    return across(request.y - 2, request.y + 2);
  }
  if (request.type === "spatter") return across(request.side * (toe + 1), request.side * 20);
  if (request.run !== undefined) {
    const share = layout.runs.length === 1 ? 0 : (2 * request.run) / (layout.runs.length - 1) - 1;
    const middle = share * toe * 0.5;
    return across(middle - 1, middle + 1);
  }
  return across(request.side * (toe - 0.5), request.side * (toe + 1));
}

const gap = (a0: number, a1: number, b0: number, b1: number) => Math.max(a0 - b1, b0 - a1);

describe("recipes of a thousand seeds", () => {
  let recipes: Recipe[] = [];
  beforeAll(() => {
    recipes = Array.from({ length: SEEDS }, (_, n) => drawRecipe(`recipe-${n}`));
  }, 240_000);

  it("draws joints within the workshop's range, with grooves that the runs can cover", () => {
    for (const { joint } of recipes) {
      expect(joint.thickness).toBeGreaterThanOrEqual(8);
      expect(joint.thickness).toBeLessThanOrEqual(15);
      expect(joint.grooveAngle).toBeGreaterThanOrEqual(50);
      expect(joint.grooveAngle).toBeLessThanOrEqual(70);
      expect(joint.rootGap).toBeGreaterThanOrEqual(2);
      expect(joint.rootGap).toBeLessThanOrEqual(4);
      expect(joint.rootFace).toBeGreaterThanOrEqual(1);
      expect(joint.rootFace).toBeLessThanOrEqual(2);
      // opening of a single V: gap + 2 (t - c) tan(angle / 2)
      const opening =
        joint.rootGap + 2 * (joint.thickness - joint.rootFace) * Math.tan((joint.grooveAngle * Math.PI) / 360);
      expect(opening).toBeLessThan(19.5);
    }
  });

  it("asks for five to nine things on the cap and four to seven on the root, and a few decoys", () => {
    const decoys = new Set(["sound-stop", "shallow-undercut", "light-grinding"]);
    for (const recipe of recipes) {
      const count = (face: Face) => recipe.faces[face].requests.filter((r) => !decoys.has(r.type)).length;
      expect(count("cap")).toBeGreaterThanOrEqual(5);
      expect(count("cap")).toBeLessThanOrEqual(9);
      expect(count("root")).toBeGreaterThanOrEqual(4);
      expect(count("root")).toBeLessThanOrEqual(7);
      for (const face of FACES) {
        expect(recipe.faces[face].requests.filter((r) => decoys.has(r.type)).length).toBeLessThanOrEqual(2);
      }
    }
  });

  it("keeps everything 25 mm apart along the weld or 12 mm across, and 12 mm from the ends", () => {
    for (const recipe of recipes) {
      for (const face of FACES) {
        const extents = recipe.faces[face].requests.map((request) => extentOf(recipe, face, request));
        extents.forEach((a, n) => {
          expect(a.x0).toBeGreaterThanOrEqual(12);
          expect(a.x1).toBeLessThanOrEqual(recipe.joint.length - 12);
          for (const b of extents.slice(n + 1)) {
            const along = gap(a.x0, a.x1, b.x0, b.x1);
            const across = gap(a.y0, a.y1, b.y0, b.y1);
            if (along < 25) expect(across, `${recipe.seed} ${face}`).toBeGreaterThanOrEqual(12);
          }
        });
      }
    }
  });

  it("keeps ordinary stops out of what is planted on the same run", () => {
    for (const recipe of recipes) {
      for (const face of FACES) {
        const { layout, requests } = recipe.faces[face];
        layout.runs.forEach(({ stops }, run) => {
          for (const request of requests.filter((r) => r.run === run)) {
            for (const stop of stops) {
              const away = gap(request.x, request.x + request.length, stop, stop);
              expect(away, `${recipe.seed} ${request.id}`).toBeGreaterThan(4);
            }
          }
        });
      }
    }
  });

  it("keeps planted stops of a run so far apart that an electrode's length lies between them", () => {
    const atStops = new Set(["poor-restart", "crater-pipe", "crater-crack", "sound-stop"]);
    for (const recipe of recipes) {
      for (const face of FACES) {
        const { layout, requests } = recipe.faces[face];
        const planted = requests.filter((r) => atStops.has(r.type)).map(({ x }) => x);
        const last = layout.runs[layout.runs.length - 1];
        const all = [...planted, ...last.stops].sort((a, b) => a - b);
        for (let n = 1; n < all.length; n++) expect(all[n] - all[n - 1], `${recipe.seed} ${face}`).toBeGreaterThan(40);
      }
    }
  });

  it("lets every imperfection of the catalogue come up within sixty seeds", () => {
    const seen = new Set<string>();
    for (const recipe of recipes.slice(0, 60)) {
      for (const face of FACES) for (const request of recipe.faces[face].requests) seen.add(`${request.type}`);
      const { stepAtDatum, stepAtFarEnd } = recipe.plates;
      if (Math.max(Math.abs(stepAtDatum), Math.abs(stepAtFarEnd)) > 1.2) seen.add("linear-misalignment");
    }
    expect(IMPERFECTION_TYPES.filter((type) => !seen.has(type))).toEqual([]);
  });

  it("plants lack of root fusion on the plate that stands out, and burns through wide gaps more than tight ones", () => {
    let wide = 0;
    let tight = 0;
    for (const { joint, plates, faces } of recipes) {
      const step = (plates.stepAtDatum + plates.stepAtFarEnd) / 2;
      for (const request of faces.root.requests) {
        if (request.type === "root-fusion" && Math.abs(step) > 0.8) expect(request.side).toBe(step > 0 ? -1 : 1);
        if (request.type === "burn-through" && joint.rootGap > 3.2) wide++;
        if (request.type === "burn-through" && joint.rootGap < 2.4) tight++;
      }
    }
    expect(wide).toBeGreaterThan(2 * tight);
  });

  it("gives the same recipe for the same seed and different ones for different seeds", () => {
    expect(drawRecipe("recipe-7")).toEqual(recipes[7]);
    expect(new Set(recipes.map((recipe) => JSON.stringify(recipe.faces))).size).toBe(SEEDS);
  });
});
