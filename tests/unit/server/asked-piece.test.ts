import { describe, expect, test } from "vitest";
import { filletAsked, plateAsked } from "@/app/_server/generation/asked-piece";
import { BLUEPRINTS, drawCleanFillet, FILLET_BLUEPRINTS, predictPlate } from "@/lib/specimen";
import { FILLET_POSITIONS, FILLET_PROCESSES } from "@/lib/weld";

const DRAWN = { blueprint: "clean", process: "drawn", position: "drawn", thickness: "drawn" } as const;
const seeds = Array.from({ length: 60 }, (_, n) => `choice ${n}`);

describe("what a paper fixes of a fillet", () => {
  test("is so on every seed, and the weld still fits its plates", () => {
    for (const process of FILLET_PROCESSES) {
      for (const position of FILLET_POSITIONS) {
        for (const thickness of [6, 15]) {
          const { choice } = filletAsked({ ...DRAWN, process, position, thickness });
          for (const seed of seeds.slice(0, 10)) {
            const { joint } = drawCleanFillet(seed, choice);
            expect(joint).toMatchObject({ process, position, baseThickness: thickness });
            expect(joint.standingThickness).toBeGreaterThanOrEqual(6);
            expect(joint.size.value).toBeGreaterThan(0);
          }
        }
      }
    }
  });

  test("moves nothing else: the same size, plates and stations where only the process is fixed", () => {
    for (const seed of seeds) {
      const free = drawCleanFillet(seed);
      const fixed = drawCleanFillet(seed, { process: free.joint.process });
      expect(fixed).toEqual(free);
      const other = drawCleanFillet(seed, { process: "136" });
      expect({ ...other.joint, process: free.joint.process }).toEqual(free.joint);
    }
  });

  test("is nothing where a paper asks for nothing", () => {
    expect(filletAsked(null)).toEqual({ blueprint: FILLET_BLUEPRINTS.practice, choice: {} });
    expect(filletAsked(DRAWN).blueprint).toBe(FILLET_BLUEPRINTS.clean);
  });
});

describe("the types that a paper asks for", () => {
  const piece = { blueprint: "practice", process: "drawn", position: "drawn", thickness: "drawn" } as const;
  const types = { includes: ["overlap", "surface-pore"], among: "any" } as const;

  test("are on the plate, and nothing is asked where they are left out", () => {
    const drawn = predictPlate("asked", plateAsked({ ...piece, types }));
    if (!drawn.ok) throw new Error(drawn.code);
    const found = drawn.faces.flatMap(({ items }) => items.map(({ type }) => type));
    expect(found).toEqual(expect.arrayContaining([...types.includes]));
    expect(plateAsked(piece)).toEqual(BLUEPRINTS.practice);
  });

  test("are on the fillet, with the joint that is fixed", () => {
    const { blueprint, choice } = filletAsked({ ...piece, process: "135", types });
    expect(blueprint.includes).toEqual(types.includes);
    expect(choice.process).toBe("135");
  });

  test("come as far as they can be had: a piece is made in any case", () => {
    const manual = {
      ...piece,
      process: "111",
      types: { includes: ["tungsten-spatter", "overlap"], among: "any" },
    } as const;
    const asked = plateAsked(manual).sections;
    const named = Object.values(asked).flatMap(({ slots }) => slots.flatMap((slot) => slot.types ?? []));
    expect(named).toEqual(["overlap"]);
  });
});

describe("what a paper fixes of a plate", () => {
  test("is so on every seed", () => {
    const blueprint = plateAsked({ blueprint: "assessment", process: "141", position: "PF", thickness: 12 });
    for (const seed of seeds.slice(0, 8)) {
      const drawn = predictPlate(seed, blueprint);
      if (!drawn.ok) continue;
      for (const { joint } of drawn.faces)
        expect(joint).toMatchObject({ process: "141", position: "PF", thickness: 12 });
    }
    expect(plateAsked(null)).toBe(BLUEPRINTS.practice);
  });
});
