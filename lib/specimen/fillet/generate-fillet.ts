import { randomStream } from "../../random";
import { FILLET_STRIP_GRID, type Grid, PLATE_PER_MM, type Surface } from "../../surface";
import { FILLET_HALF_WIDTH } from "../../weld";
import { checkFinite } from "../check-finite";
import { emptyWork, type WorkGrids } from "../create-work";
import { buildFeature } from "../imperfections";
import { cleanJoint, finishPlate, layParentPlate, leaveWorkshopMarks, paintHeat, scatterSpatter } from "../plate";
import { paintWeld } from "../runs";
import type { FaceWork } from "../work";
import type { FilletRecipe } from "./fillet-recipe";
import { foldUp } from "./fold-up";
import { layFillet } from "./lay-fillet";
import { laidOutJoint, planFillet } from "./plan-fillet";
import { markStations } from "./stations";
import { unfoldingOf } from "./unfolding";

/** Laid out flat a joint reaches further than folded: half widths of the strip and of all that is made, mm. */
const STRIP_HALF = 37;
const WHOLE_HALF = 72;
const STRIP: Grid = {
  ...FILLET_STRIP_GRID,
  y0: -STRIP_HALF,
  rows: 2 * STRIP_HALF * FILLET_STRIP_GRID.perMm,
};
const sideGrid = (y0: number): Grid => ({
  columns: (STRIP.columns / STRIP.perMm) * PLATE_PER_MM,
  rows: (WHOLE_HALF - STRIP_HALF) * PLATE_PER_MM,
  perMm: PLATE_PER_MM,
  x0: 0,
  y0,
});
const GRIDS: WorkGrids = { strip: STRIP, sides: [sideGrid(-WHOLE_HALF), sideGrid(STRIP_HALF)] };

function createFilletWork(recipe: FilletRecipe): FaceWork {
  const bothFaces = randomStream(recipe.seed);
  const random = bothFaces.child("fillet");
  const joint = laidOutJoint(recipe, FILLET_HALF_WIDTH);
  return {
    ...emptyWork(GRIDS),
    face: "cap",
    joint,
    plates: { stepAtDatum: 0, stepAtFarEnd: 0, distortion: 0 },
    plan: planFillet(recipe, joint, recipe.look, STRIP, random),
    look: recipe.look,
    random,
    bothFaces,
  };
}

/** Makes the surface of a recipe's fillet. The same recipe gives the same bytes. Throws where a height is not a number. */
export function generateFillet(recipe: FilletRecipe): { surface: Surface } {
  const work = createFilletWork(recipe);
  const random = randomStream(recipe.seed);
  const features = recipe.requests.map((request) => buildFeature(request, random.child(request.id)));
  for (const feature of features) feature.plan?.(work);
  const unfolding = unfoldingOf(work.plan, STRIP.perMm);
  layParentPlate(work);
  cleanJoint(work);
  layFillet(work, unfolding);
  for (const feature of features) feature.cut?.(work);
  paintHeat(work);
  paintWeld(work);
  scatterSpatter(work);
  leaveWorkshopMarks(work);
  finishPlate(work, recipe.number);
  markStations(work, recipe.stations);
  for (const feature of features) feature.paint?.(work);
  checkFinite(work);
  return { surface: foldUp(work, unfolding) };
}
