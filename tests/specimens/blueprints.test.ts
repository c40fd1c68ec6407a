import { describe, expect, it } from "vitest";
import { type ImperfectionType, imperfection } from "@/lib/imperfections";
import { randomStream } from "@/lib/random";
import { BLUEPRINTS, drawRecipe, type Recipe, tryRecipe } from "@/lib/specimen";
import type { SectionBlueprint } from "@/lib/specimen/recipe/blueprint";
import { CHAINS } from "@/lib/specimen/recipe/chains";
import { drawFace } from "@/lib/specimen/recipe/draw-face";
import { FEATURE_ROWS } from "@/lib/specimen/recipe/feature-rows";
import { NO_PLATES } from "@/lib/specimen/recipe/plate-slots";
import { type ButtJoint, FACES, type Face, PROCESSES, type Process } from "@/lib/weld";

/**
 * Upper critical values of the chi-square distribution at the level 0.001 for 1 to 40 degrees of freedom: table 1.3.6.7.4 of
 * the NIST/SEMATECH e-Handbook of Statistical Methods (from memory).
 */
const CRITICAL = [
  10.828, 13.816, 16.266, 18.467, 20.515, 22.458, 24.322, 26.125, 27.877, 29.588, 31.264, 32.91, 34.528, 36.123, 37.697,
  39.252, 40.79, 42.312, 43.82, 45.315, 46.797, 48.268, 49.728, 51.179, 52.62, 54.052, 55.476, 56.892, 58.301, 59.703,
  61.098, 62.487, 63.87, 65.247, 66.619, 67.985, 69.347, 70.703, 72.055, 73.402,
];

/** A joint that favours nothing: gap and root face in the middle of what is usual, flat position, flush plates. */
const neutralJoint = (process: Process): ButtJoint => ({
  kind: "butt",
  process,
  position: "PA",
  length: 300,
  width: 150,
  thickness: 12,
  grooveAngle: 60,
  rootGap: 2.8,
  rootFace: 1.4,
});
const RUNS = {
  cap: [-4, 4].map(() => ({ from: 0, to: 300, stops: [] })),
  root: [{ from: 0, to: 300, stops: [] }],
};
const ONE: SectionBlueprint = {
  slots: [{ count: 1, families: "any", band: "any", place: "any" }],
  extras: 0,
  cleanLength: 0,
  neutral: [0, 0],
  clutter: [0, 0],
  nearLimits: true,
  expectedMark: null,
};

function drawOne(process: Process, face: Face, n: number): string {
  const layout = { direction: 1 as const, overlap: 1.5, runs: RUNS[face] };
  const asked = {
    face,
    joint: neutralJoint(process),
    plates: { stepAtDatum: 0, stepAtFarEnd: 0, distortion: 0.5 },
    layout,
  };
  const drawn = drawFace(asked, ONE, NO_PLATES, randomStream(`one ${process} ${face} ${n}`));
  if (!drawn.ok) throw new Error(`refused: ${drawn.code}`);
  return `${drawn.recipe.requests[0]?.type}`;
}

describe("how often each imperfection comes with a process", () => {
  const DRAWS = 1500;
  // common practice, no source: likelihoods high, medium, low weigh 3, 2, 1
  const WEIGHTS = { high: 3, medium: 2, low: 1, never: 0 };

  for (const process of PROCESSES) {
    for (const face of FACES) {
      it(`follows the table with process ${process} on the ${face} face (chi-square, level 0.001)`, () => {
        const weights = new Map<string, number>();
        for (const row of FEATURE_ROWS.filter((one) => one.face === face)) {
          const weight = row.share * WEIGHTS[row.likelihood[process]] * (row.positions?.PA ?? 1);
          if (weight > 0) weights.set(row.type, (weights.get(row.type) ?? 0) + weight);
        }
        const total = [...weights.values()].reduce((sum, weight) => sum + weight, 0);
        const counts = new Map<string, number>();
        for (let n = 0; n < DRAWS; n++) {
          const type = drawOne(process, face, n);
          counts.set(type, (counts.get(type) ?? 0) + 1);
        }
        expect([...counts.keys()].filter((type) => !weights.has(type))).toEqual([]);
        let chiSquare = 0;
        for (const [type, weight] of weights) {
          const expected = (DRAWS * weight) / total;
          expect(expected, type).toBeGreaterThan(5);
          chiSquare += ((counts.get(type) ?? 0) - expected) ** 2 / expected;
        }
        expect(chiSquare).toBeLessThan(CRITICAL[weights.size - 2]);
      }, 120_000);
    }
  }
});

describe("fault chains", () => {
  it("name only imperfections that are planted on their face", () => {
    for (const chain of CHAINS) {
      for (const type of [chain.first, ...chain.followers.map((follower) => follower.type)]) {
        expect(imperfection(type).faces, `${chain.name}: ${type}`).toContain(chain.face);
        expect(
          FEATURE_ROWS.some((row) => row.type === type && row.face === chain.face),
          `${chain.name}: ${type}`,
        ).toBe(true);
      }
    }
  });

  /** How often the second lies after the first, within a distance along the weld, of specimens that hold the first. */
  function together(recipes: readonly Recipe[], face: Face, first: ImperfectionType, second: ImperfectionType): number {
    let holding = 0;
    let both = 0;
    for (const { faces } of recipes) {
      const { requests, layout } = faces[face];
      const cause = requests.find(({ type }) => type === first);
      if (!cause) continue;
      holding++;
      const isNear = requests.some(
        ({ type, x, length }) =>
          type === second &&
          (layout.direction > 0 ? x - cause.x - cause.length : cause.x - x - length) > 24 &&
          (layout.direction > 0 ? x - cause.x - cause.length : cause.x - x - length) < 52,
      );
      if (isNear) both++;
    }
    return both / Math.max(1, holding);
  }

  it("bring gas after a cold restart far oftener than before it", () => {
    const recipes = Array.from({ length: 300 }, (_, n) => drawRecipe(`chain-${n}`));
    const mirrored = recipes.map((recipe) => ({
      ...recipe,
      faces: {
        ...recipe.faces,
        cap: {
          ...recipe.faces.cap,
          layout: { ...recipe.faces.cap.layout, direction: (recipe.faces.cap.layout.direction > 0 ? -1 : 1) as 1 | -1 },
        },
      },
    }));
    const after = together(recipes, "cap", "poor-restart", "surface-pore");
    const before = together(mirrored, "cap", "poor-restart", "surface-pore");
    expect(after).toBeGreaterThan(2 * before);
  }, 120_000);
});

describe("positions", () => {
  it("favour the lower toe for what runs down in the horizontal position, and the upper one for what is left without metal", () => {
    const joint = { ...BLUEPRINTS.practice.joint, positions: ["PC" as const] };
    const sides = new Map<string, number[]>();
    for (let n = 0; n < 200; n++) {
      const { faces } = drawRecipe(`horizontal-${n}`, { ...BLUEPRINTS.practice, joint });
      for (const { type, side } of faces.cap.requests) sides.set(type, [...(sides.get(type) ?? []), side]);
    }
    // plate B, at y < 0, is the lower one in PC
    const overlaps = sides.get("overlap") ?? [];
    expect(overlaps.length).toBeGreaterThan(15);
    expect(overlaps.filter((side) => side < 0).length).toBeGreaterThan(0.65 * overlaps.length);
    for (const row of FEATURE_ROWS.filter(({ face, sideIn }) => face === "cap" && sideIn?.PC)) {
      const drawn = sides.get(row.type) ?? [];
      const favoured = drawn.filter((side) => side === row.sideIn?.PC).length;
      expect(favoured, row.type).toBeGreaterThan(0.5 * drawn.length - 2);
    }
  }, 120_000);
});

describe("blueprints that come with the tool", () => {
  const planted = (recipe: Recipe) =>
    FACES.flatMap((face) => recipe.faces[face].requests).filter(({ type }) =>
      FEATURE_ROWS.some((row) => row.type === type),
    ).length;

  it("give at least twelve indications a plate for practice and for a paper, and none on a clean plate", () => {
    for (let n = 0; n < 40; n++) {
      expect(planted(drawRecipe(`named-${n}`))).toBe(12);
      expect(planted(drawRecipe(`named-${n}`, BLUEPRINTS.clean))).toBe(0);
    }
    // of a paper, one of the twelve may be how the plates stand
    for (let n = 0; n < 10; n++) {
      const count = planted(drawRecipe(`named-${n}`, BLUEPRINTS.assessment));
      expect([11, 12]).toContain(count);
    }
  }, 120_000);

  it("give twenty-two on the plate of a last rehearsal, which nearly always have room at once", () => {
    const mock = BLUEPRINTS["final-mock"];
    const draws = Array.from({ length: 20 }, (_, n) => tryRecipe(`rehearsal-${n}`, mock));
    const drawn = draws.flatMap((draw) => (draw.ok ? [draw.recipe] : []));
    expect(drawn.length).toBeGreaterThanOrEqual(19);
    // how the plates stand may be reported as one of them
    for (const recipe of drawn) expect([21, 22]).toContain(planted(recipe));
  }, 180_000);
});
