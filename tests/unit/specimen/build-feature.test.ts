import { describe, expect, it } from "vitest";
import { CLUTTER, IMPERFECTION_TYPES, typesOn } from "@/lib/imperfections";
import { randomStream } from "@/lib/random";
import { buildFeature } from "@/lib/specimen/imperfections";
import { HARMLESS } from "@/lib/specimen/work";
import { FACES } from "@/lib/weld";

const request = { id: "cap/0", x: 100, length: 20, side: 1, severity: 1 } as const;
/** No feature makes them: they are how the plates stand to each other. */
const MISALIGNED: readonly string[] = ["linear-misalignment", "angular-misalignment"];
/** Types of a butt plate: what only a fillet can have is built with the fillet. */
const ON_PLATES = IMPERFECTION_TYPES.filter((type) => FACES.some((face) => typesOn(face).includes(type)));
const ALL = [...ON_PLATES, ...HARMLESS, ...CLUTTER];

describe("building features", () => {
  it("knows every type of a butt plate, everything harmless and all clutter, and keeps the request's id", () => {
    for (const type of ALL.filter((type) => !MISALIGNED.includes(type)))
      expect(buildFeature({ ...request, type }, randomStream("a")).id, type).toBe("cap/0");
  });

  it("builds no misalignment", () => {
    for (const type of ALL.filter((type) => MISALIGNED.includes(type)))
      expect(() => buildFeature({ ...request, type }, randomStream("a"))).toThrow(type);
  });
});
