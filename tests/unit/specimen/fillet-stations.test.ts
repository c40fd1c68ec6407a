import { describe, expect, it } from "vitest";
import { FILLET_BLUEPRINTS } from "../../../lib/specimen";
import { drawFilletRecipe } from "../../../lib/specimen/fillet/draw-recipe";

// common practice, no source: a gauge is set where the weld can be felt, beside spatter and arc strikes
describe("stations of a fillet", () => {
  const drawn = Array.from({ length: 150 }, (_, n) =>
    drawFilletRecipe(`stations ${n}`, FILLET_BLUEPRINTS.practice, {}, n % 2),
  );

  it("stand where no spatter and no arc strike is planted", () => {
    const covered = drawn.flatMap(({ seed, stations, requests }) =>
      requests
        .filter(({ type }) => type === "spatter" || type === "stray-arc")
        .flatMap(({ type, x, length }) =>
          stations.filter((at) => at > x - 3 && at < x + length + 3).map((at) => `${seed}: ${type} at ${at}`),
        ),
    );
    expect(covered).toEqual([]);
  });

  it("stand in their order, apart from each other and from the ends", () => {
    for (const { stations, joint } of drawn) {
      expect(stations).toHaveLength(3);
      const from = [0, ...stations];
      expect([...stations, joint.length].every((at, n) => at - from[n] >= 12)).toBe(true);
    }
  });
});
