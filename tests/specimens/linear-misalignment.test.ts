import { describe, expect, it } from "vitest";
import { generateFace, type TruthItem } from "@/lib/specimen";
import { drawRecipe, type Recipe } from "@/lib/specimen/recipe";
import type { FeatureRequest } from "@/lib/specimen/work";

/** The step changes along the joint like a straight line between its two ends: how the plates were set, not how they are measured. */
const cases = [
  { name: "the same step all along", stepAtDatum: 1.3, stepAtFarEnd: 1.3, size: 1.3, start: 0, side: 1 },
  { name: "plate B higher", stepAtDatum: -1.4, stepAtFarEnd: -1.4, size: 1.4, start: 0, side: -1 },
  { name: "a step that grows", stepAtDatum: 0.4, stepAtFarEnd: 1.6, size: 1.6, start: 150, side: 1 },
  { name: "a step that grows", stepAtDatum: 0.4, stepAtFarEnd: 1.6, size: 1.6, start: 150, side: -1 },
] as const;

/** Wide and deep: the largest that are drawn of what is ground or torn out of a plate beside the weld, all on one side. */
function groundAway(side: 1 | -1): FeatureRequest[] {
  const one = (type: FeatureRequest["type"], x: number, length: number, severity: number): FeatureRequest => ({
    type,
    x,
    length,
    severity,
    side,
    id: `cap/${x}`,
  });
  return [one("underflushing", 60, 52, 1), one("torn-surface", 180, 46, 1.7)];
}

function misalignmentOf(recipe: Recipe, requests: readonly FeatureRequest[]): TruthItem | undefined {
  const runs = recipe.faces.cap.layout.runs.map((run) => ({ ...run, stops: [] }));
  const cap = { layout: { ...recipe.faces.cap.layout, runs }, requests };
  const { items } = generateFace({ ...recipe, faces: { ...recipe.faces, cap } }, "cap");
  return items.find(({ type }) => type === "linear-misalignment");
}

describe("linear misalignment beside metal that was ground away", () => {
  it.each(cases)("$name, ground on side $side", ({ stepAtDatum, stepAtFarEnd, size, start, side }) => {
    const recipe = drawRecipe(`stepped ${size}`);
    const plates = { ...recipe.plates, stepAtDatum, stepAtFarEnd };
    const item = misalignmentOf({ ...recipe, plates }, groundAway(side));
    expect(Math.abs((item?.size ?? 0) - size)).toBeLessThan(0.1);
    // an end where the step passes 1 mm at 0.004 mm a mm: a twentieth of a millimetre in the plates is 12 mm along
    const tolerance = stepAtDatum === stepAtFarEnd ? 0.5 : 15;
    expect(Math.abs((item?.start ?? -99) - start)).toBeLessThan(tolerance);
    expect(Math.abs((item?.end ?? -99) - 300)).toBeLessThan(0.5);
  });
});
