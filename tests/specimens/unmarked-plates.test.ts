import { describe, expect, it } from "vitest";
import { leaveBlemishes } from "@/lib/specimen/blemishes";
import { createWork } from "@/lib/specimen/create-work";
import { measuredColour } from "@/lib/specimen/imperfections/measured-colour";
import { measuredDepression } from "@/lib/specimen/imperfections/measured-mark";
import { measuredScale } from "@/lib/specimen/imperfections/scaled-surface";
import {
  cleanJoint,
  finishPlate,
  finishWeldEnds,
  layParentPlate,
  leaveWorkshopMarks,
  paintHeat,
  scatterSpatter,
} from "@/lib/specimen/plate";
import { drawRecipe } from "@/lib/specimen/recipe";
import { layWeld, paintWeld } from "@/lib/specimen/runs";
import { toeAt } from "@/lib/specimen/runs/edit";
import type { FaceWork, Look } from "@/lib/specimen/work";
import { FACES, type Face } from "@/lib/weld";

/** A finished face on which nothing was planted, on plates that look as said. */
function unmarked(seed: string, face: Face, look: Partial<Look>): FaceWork {
  const drawn = drawRecipe(seed);
  const work = createWork({ ...drawn, look: { ...drawn.look, ...look } }, face);
  layParentPlate(work);
  cleanJoint(work);
  layWeld(work);
  paintHeat(work);
  paintWeld(work);
  leaveBlemishes(work);
  scatterSpatter(work);
  leaveWorkshopMarks(work);
  finishWeldEnds(work);
  finishPlate(work, "T100");
  return work;
}

/** Plates that come nearest to what is measured as colour, scale or a hollow. */
const LOOKS: readonly Partial<Look>[] = [
  { plate: "mill-scale", cleaning: "brushed", rust: 0.8, heatTint: 1 },
  { plate: "pickled", cleaning: "ground", bandWidth: 8, rust: 0.8, heatTint: 1 },
];

describe.each(FACES)("the %s face of plates with nothing planted", (face) => {
  it("measures no temper colour, no scale that would be recorded, no hollow", () => {
    LOOKS.forEach((look, n) => {
      const work = unmarked(`unmarked ${n}`, face, look);
      for (const side of [-1, 1] as const) {
        expect(measuredColour(work, "colour", side, { from: 10, to: 290 }), `${n} colour ${side}`).toBeNull();
        for (let x = 20; x < 240; x += 50) {
          const toe = toeAt(work, side, x + 20, 20);
          const ends = [toe + side * 2, side * 22].sort((a, b) => a - b);
          const box = { x0: x, x1: x + 40, y0: ends[0], y1: ends[1] };
          expect(measuredDepression(work, "hollow", "underflushing", box), `${n} hollow ${x} ${side}`).toBeNull();
        }
      }
      const scale = measuredScale(work, "scale", { from: 10, to: 290 });
      expect(scale === null || scale.neutral, `${n} scale`).toBe(true);
    });
  }, 120_000);

  it("measures no temper colour beside a TIG weld, whose heat is seen most", () => {
    const seeds = Array.from({ length: 40 }, (_, n) => `colour ${n}`).filter(
      (seed) => drawRecipe(seed).joint.process === "141",
    );
    expect(seeds.length).toBeGreaterThan(3);
    for (const seed of seeds.slice(0, 4)) {
      const work = unmarked(seed, face, { heatTint: 1 });
      for (const side of [-1, 1] as const)
        expect(measuredColour(work, "colour", side, { from: 10, to: 290 }), `${seed} ${side}`).toBeNull();
    }
  }, 120_000);
});
