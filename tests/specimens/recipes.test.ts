import { beforeAll, describe, expect, it } from "vitest";
import { CLUTTER, IMPERFECTION_TYPES, typesOn } from "@/lib/imperfections";
import { drawRecipe, type Recipe } from "@/lib/specimen";
import { FEATURE_ROWS } from "@/lib/specimen/recipe/feature-rows";
import { NEUTRAL_ROWS } from "@/lib/specimen/recipe/rows";
import { type FeatureRequest, HARMLESS } from "@/lib/specimen/work";
import { FACES, type Face, grooveHalfWidth } from "@/lib/weld";

const SEEDS = 1000;

interface Extent {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

/** Where the table says that something lies; on a root bead whatever lies at a toe is taken to cross it. */
const siteOf = (face: Face, { type }: FeatureRequest): string | undefined =>
  [...FEATURE_ROWS, ...NEUTRAL_ROWS].find((row) => row.type === type && row.face === face)?.site;

/** The smallest box that a request can be thought to fill, by the joint's geometry: worked out anew, not taken from the generator. */
function extentOf(recipe: Recipe, face: Face, request: FeatureRequest): Extent {
  const { joint, faces } = recipe;
  const { layout } = faces[face];
  const toe = (face === "cap" ? grooveHalfWidth(joint) : joint.rootGap / 2) + layout.overlap;
  const along = { x0: request.x, x1: request.x + request.length };
  const across = (a: number, b: number): Extent => ({ ...along, y0: Math.min(a, b), y1: Math.max(a, b) });
  if (request.y !== undefined) return across(request.y - 2, request.y + 2);
  const site = siteOf(face, request);
  if (site === "weld" || (face === "root" && site === "toe")) return across(-toe, toe);
  if (site === "plate") return across(request.side * (toe + 1.5), request.side * 20);
  if (request.run !== undefined) {
    const share = layout.runs.length === 1 ? 0 : (2 * request.run) / (layout.runs.length - 1) - 1;
    const middle = share * toe * 0.5;
    return across(middle - 1, middle + 1);
  }
  return across(request.side * (toe - 0.5), request.side * (toe + 1));
}

const DECOYS = new Set<string>(HARMLESS);
const LITTER = new Set<string>(CLUTTER);

const gap = (a0: number, a1: number, b0: number, b1: number) => Math.max(a0 - b1, b0 - a1);

describe("recipes of a thousand seeds", () => {
  let recipes: Recipe[] = [];
  beforeAll(() => {
    recipes = Array.from({ length: SEEDS }, (_, n) => drawRecipe(`recipe-${n}`));
  }, 240_000);

  it("draws joints within the workshop's range, with grooves that the runs can cover", () => {
    for (const { joint } of recipes) {
      expect(joint.thickness).toBeGreaterThanOrEqual(6);
      expect(joint.thickness).toBeLessThanOrEqual(25);
      // opening of a single V: gap + 2 (t - c) tan(angle / 2)
      const opening =
        joint.rootGap + 2 * (joint.thickness - joint.rootFace) * Math.tan((joint.grooveAngle * Math.PI) / 360);
      expect(opening).toBeLessThan(24);
    }
  });

  it("asks for seven things on the cap and five on the root, and one to nine things that tempt to a false call", () => {
    for (const recipe of recipes) {
      for (const face of FACES) {
        const types = recipe.faces[face].requests.map(({ type }) => type);
        const harmless = types.filter((type) => DECOYS.has(type)).length;
        const clutter = types.filter((type) => LITTER.has(type)).length;
        expect(types.length - harmless - clutter).toBe(face === "cap" ? 7 : 5);
        expect(harmless).toBeGreaterThanOrEqual(1);
        expect(harmless).toBeLessThanOrEqual(4);
        expect(clutter).toBeGreaterThanOrEqual(1);
        expect(clutter).toBeLessThanOrEqual(5);
      }
    }
  });

  it("keeps everything 25 mm apart along the weld or 12 mm across, and 12 mm from the ends", () => {
    for (const recipe of recipes) {
      for (const face of FACES) {
        const extents = recipe.faces[face].requests
          .filter(({ type }) => !LITTER.has(type))
          .map((request) => extentOf(recipe, face, request));
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

  it("lets every imperfection that a row plants come up, and no other", () => {
    const seen = new Set<string>();
    for (const recipe of recipes) {
      for (const face of FACES) for (const request of recipe.faces[face].requests) seen.add(`${request.type}`);
    }
    const rows = new Set(FEATURE_ROWS.map(({ type }) => type));
    expect([...rows].filter((type) => !seen.has(type))).toEqual([]);
    expect(IMPERFECTION_TYPES.filter((type) => seen.has(type) && !rows.has(type))).toEqual([]);
    for (const { face, type } of FEATURE_ROWS) expect(typesOn(face), `${face} ${type}`).toContain(type);
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
