import { describe, expect, it } from "vitest";
import { CLUTTER, IMPERFECTION_TYPES } from "@/lib/imperfections";
import { randomStream } from "@/lib/random";
import { buildFeature } from "@/lib/specimen/imperfections";
import { HARMLESS } from "@/lib/specimen/work";

const request = { id: "cap/0", x: 100, length: 20, side: 1, severity: 1 } as const;
/** No feature makes them: they are how the plates stand to each other. */
const MISALIGNED: readonly string[] = ["linear-misalignment", "angular-misalignment"];
const ALL = [...IMPERFECTION_TYPES, ...HARMLESS, ...CLUTTER];

describe("building features", () => {
  it("knows every type of the catalogue, everything harmless and all clutter, and keeps the request's id", () => {
    for (const type of ALL.filter((type) => !MISALIGNED.includes(type)))
      expect(buildFeature({ ...request, type }, randomStream("a")).id, type).toBe("cap/0");
  });

  it("builds no misalignment", () => {
    for (const type of ALL.filter((type) => MISALIGNED.includes(type)))
      expect(() => buildFeature({ ...request, type }, randomStream("a"))).toThrow(type);
  });
});
