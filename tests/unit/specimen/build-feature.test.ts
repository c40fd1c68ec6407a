import { describe, expect, it } from "vitest";
import { IMPERFECTION_TYPES } from "@/lib/imperfections";
import { randomStream } from "@/lib/random";
import { buildFeature, isBuildable } from "@/lib/specimen/imperfections";
import { HARMLESS } from "@/lib/specimen/work";

const request = { id: "cap/0", x: 100, length: 20, side: 1, severity: 1 } as const;

describe("building features", () => {
  it("knows every type of the catalogue and every decoy, misalignment excepted", () => {
    const unknown = [...IMPERFECTION_TYPES, ...HARMLESS].filter((type) => !isBuildable(type));
    expect(unknown).toEqual(["linear-misalignment"]);
    expect(() => buildFeature({ ...request, type: "linear-misalignment" }, randomStream("a"))).toThrow(
      "linear-misalignment",
    );
  });

  it("keeps the id of the request", () => {
    for (const type of [...IMPERFECTION_TYPES, ...HARMLESS].filter(isBuildable))
      expect(buildFeature({ ...request, type }, randomStream("a")).id, type).toBe("cap/0");
  });
});
