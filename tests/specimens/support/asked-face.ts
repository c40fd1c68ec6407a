import type { TruthItem } from "@/lib/specimen";
import { generateFace } from "@/lib/specimen/generate";
import { drawRecipe, type Recipe } from "@/lib/specimen/recipe";
import type { FeatureRequest } from "@/lib/specimen/work";
import type { Surface } from "@/lib/surface";
import type { Face } from "@/lib/weld";

/** A feature to be asked of a face; plate A's side unless said otherwise. */
export type Asked = Omit<FeatureRequest, "id" | "side"> & { readonly side?: 1 | -1 };

export interface AskedFace {
  readonly surface: Surface;
  /** What came out of each request, in their order; undefined where nothing was found. */
  readonly found: readonly (TruthItem | undefined)[];
}

/** Under which type the truth lists a decoy. */
const LISTED_AS: Readonly<Record<string, string>> = {
  "sound-stop": "poor-restart",
  "dressed-stop": "grinding-mark",
  "light-grinding": "grinding-mark",
  "shallow-undercut": "continuous-undercut",
  "fine-pore": "surface-pore",
};

/** The joint, plates and layout of a recipe, but on one face only what is asked, and no stops of its own. */
export function recipeWith(recipe: Recipe, face: Face, requests: readonly FeatureRequest[]): Recipe {
  const { layout } = recipe.faces[face];
  const runs = layout.runs.map((run) => ({ ...run, stops: [] }));
  return { ...recipe, faces: { ...recipe.faces, [face]: { layout: { ...layout, runs }, requests } } };
}

/** Makes a face with the features asked and finds each one's truth: the item of its type nearest to its place. */
export function askedFace(seed: string, face: Face, asked: readonly Asked[]): AskedFace {
  const requests = asked.map((request, n): FeatureRequest => ({ side: 1, ...request, id: `${face}/${n}` }));
  const { surface, items } = generateFace(recipeWith(drawRecipe(seed), face, requests), face);
  const found = asked.map(({ type, x, length }) => {
    const away = (item: TruthItem) => Math.abs((item.start + item.end) / 2 - x - length / 2);
    return items
      .filter((item) => item.type === (LISTED_AS[type] ?? type) && away(item) < 15)
      .sort((a, b) => away(a) - away(b))[0];
  });
  return { surface, found };
}
