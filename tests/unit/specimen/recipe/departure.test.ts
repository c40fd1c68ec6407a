import { describe, expect, it } from "vitest";
import { type Departure, explainDeparture } from "@/lib/specimen/recipe/departure";

describe("a departure from a blueprint in words", () => {
  it.each<[Departure, RegExp]>([
    [{ code: "slot-not-filled", slot: 2 }, /^root face, slot 3: .*kind, size and place/],
    [{ code: "too-many", extras: 4, most: 2 }, /^root face: 4 more .* at most 2$/],
    [{ code: "near-limit", type: "continuous-undercut", size: 0.512 }, /continuous undercut of 0\.51 mm .*limit/],
    [{ code: "too-close", types: ["overlap", "surface-pore"] }, /overlap and surface pore .* 25 mm .* 12 mm/],
    [{ code: "clean-length", length: 38.6, least: 40 }, /39 mm .* at least 40 mm$/],
    [{ code: "expected-mark", mark: 61.234, wanted: 65.5 }, /61\.2; .* within 1 of 65\.5$/],
  ])("%j names the face and what is wrong, without code", (departure, words) => {
    const said = explainDeparture(departure, "root");
    expect(said).toMatch(words);
    expect(said).not.toMatch(/[{}"_]|undefined|NaN/);
    expect(said.startsWith("root face")).toBe(true);
  });
});
