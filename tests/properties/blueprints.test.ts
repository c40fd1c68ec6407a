import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FAMILIES, IMPERFECTION_TYPES, type ImperfectionType, imperfection } from "@/lib/imperfections";
import { type Blueprint, checkBlueprint, explainRefusal, type Recipe, tryRecipe } from "@/lib/specimen";
import type { SectionBlueprint, Slot } from "@/lib/specimen/recipe/blueprint";
import { FEATURE_ROWS } from "@/lib/specimen/recipe/feature-rows";
import { SITES } from "@/lib/specimen/recipe/rows";
import { FACES, type Face, POSITIONS, PROCESSES } from "@/lib/weld";

const slots: fc.Arbitrary<Slot> = fc.record({
  count: fc.integer({ min: 1, max: 3 }),
  families: fc.oneof(
    fc.constant("any" as const),
    fc.uniqueArray(fc.constantFrom(...FAMILIES), { minLength: 1, maxLength: 4 }),
  ),
  band: fc.constantFrom("any", "any", "small", "medium", "large"),
  place: fc.constantFrom("any", "any", "any", ...SITES),
});

/** The same with types named in some of them, several so that a face has one of them now and then. */
const typedSlots: fc.Arbitrary<Slot> = fc
  .record({
    slot: slots,
    types: fc.uniqueArray(fc.constantFrom(...IMPERFECTION_TYPES), { minLength: 3, maxLength: 12 }),
    isTyped: fc.boolean(),
  })
  .map(({ slot, types, isTyped }) => (isTyped ? { ...slot, families: "any", types } : slot));

const range = (most: number) =>
  fc
    .tuple(fc.integer({ min: 0, max: most }), fc.integer({ min: 0, max: most }))
    .map(([a, b]): [number, number] => [Math.min(a, b), Math.max(a, b)]);

const sections: fc.Arbitrary<SectionBlueprint> = fc.record({
  slots: fc.array(typedSlots, { maxLength: 4 }),
  extras: fc.integer({ min: 0, max: 2 }),
  cleanLength: fc.integer({ min: 0, max: 310 }),
  neutral: range(2),
  clutter: range(2),
  nearLimits: fc.boolean(),
  expectedMark: fc.constant(null),
});

const blueprints: fc.Arbitrary<Blueprint> = fc.record({
  joint: fc.record({
    processes: fc.uniqueArray(fc.constantFrom(...PROCESSES), { minLength: 1 }),
    positions: fc.uniqueArray(fc.constantFrom(...POSITIONS), { minLength: 1 }),
    thickness: fc.tuple(fc.integer({ min: 6, max: 12 }), fc.integer({ min: 12, max: 25 })),
  }),
  sections: fc.record({ cap: sections, root: sections }),
});

/** The imperfections that a recipe plants on a face. */
function plantedOn(recipe: Recipe, face: Face): ImperfectionType[] {
  const types = recipe.faces[face].requests.map(({ type }) => type);
  return types.filter((type) => FEATURE_ROWS.some((row) => row.type === type)) as ImperfectionType[];
}

/** Whether a type could stand in a slot by its family and by where it may lie. */
function couldFill(type: ImperfectionType, face: Face, slot: Slot): boolean {
  const isFamily = slot.families === "any" || slot.families.includes(imperfection(type).family);
  const isType = slot.types?.includes(type) ?? true;
  const isThere = FEATURE_ROWS.some(
    (row) => row.face === face && row.type === type && (slot.place === "any" || row.site === slot.place),
  );
  return isFamily && isType && isThere;
}

/** Plain search: can every unit take a type of its own? */
function canSeat(units: readonly Slot[], types: readonly ImperfectionType[], face: Face): boolean {
  const [unit, ...others] = units;
  if (!unit) return true;
  return types.some(
    (type, n) =>
      couldFill(type, face, unit) &&
      canSeat(
        others,
        types.filter((_, k) => k !== n),
        face,
      ),
  );
}

describe("any blueprint", () => {
  it("is refused with a reason, or the recipe has what its slots ask for, and nothing else", () => {
    const outcomes = { drawn: 0, refused: 0 };
    fc.assert(
      fc.property(blueprints, fc.integer({ min: 0, max: 1e6 }), (blueprint, seed) => {
        const checked = checkBlueprint(blueprint);
        const drawn = checked.ok ? tryRecipe(`any-${seed}`, checked.blueprint) : checked;
        if (!drawn.ok) {
          outcomes.refused++;
          expect(explainRefusal(drawn).length).toBeGreaterThan(20);
          return;
        }
        outcomes.drawn++;
        const { joint, faces } = drawn.recipe;
        expect(blueprint.joint.processes).toContain(joint.process);
        expect(blueprint.joint.positions).toContain(joint.position);
        for (const face of FACES) {
          const section = blueprint.sections[face];
          const units = section.slots.flatMap((slot) => Array.from({ length: slot.count }, () => slot));
          const planted = plantedOn(drawn.recipe, face);
          // how the plates stand may make up for slots that ask for misalignment
          const ofPlates =
            face === "cap"
              ? units.filter(
                  ({ families, types = [] }) =>
                    families.includes("misalignment") ||
                    types.some((type) => imperfection(type).family === "misalignment"),
                ).length
              : 0;
          expect(planted.length).toBeLessThanOrEqual(units.length);
          expect(planted.length).toBeGreaterThanOrEqual(units.length - Math.min(2, ofPlates));
          if (planted.length === units.length) expect(canSeat(units, planted, face)).toBe(true);
          for (const type of planted) {
            const rows = FEATURE_ROWS.filter((row) => row.face === face && row.type === type);
            expect(
              rows.some((row) => row.likelihood[joint.process] !== "never"),
              type,
            ).toBe(true);
            expect(
              rows.some((row) => (row.positions?.[joint.position] ?? 1) > 0),
              type,
            ).toBe(true);
          }
          for (const { x, length } of faces[face].requests) {
            expect(x).toBeGreaterThanOrEqual(12);
            expect(x + length).toBeLessThanOrEqual(joint.length - 12);
          }
        }
      }),
      { numRuns: 250, seed: 20261125 },
    );
    // the check means little unless both happen
    expect(outcomes.drawn).toBeGreaterThan(20);
    expect(outcomes.refused).toBeGreaterThan(20);
  }, 240_000);
});
