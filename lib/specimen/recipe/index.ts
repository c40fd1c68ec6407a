export {
  type Blueprint,
  blueprintSchema,
  type SectionBlueprint,
  type Slot,
  WITHIN_MARKS,
} from "./blueprint";
export { BLUEPRINTS, PRACTICE } from "./blueprints";
export { type Checked, checkBlueprint } from "./check-blueprint";
export { explainDeparture } from "./departure";
export { type Meets, meetsBlueprint } from "./meets";
export { PRACTICE_BLUEPRINTS } from "./practice-blueprints";
export {
  type Attempts,
  type DrawnRecipe,
  drawRecipe,
  type FaceRecipe,
  predictPlate,
  type Recipe,
  type RecipeOf,
  tryFaceRecipe,
  tryRecipe,
} from "./recipe";
export { explainRefusal, type Refusal } from "./refusal";
export { explainUnmet, type TypeWish, type Unmet, type Wished } from "./type-wish";
export { withTypes } from "./with-types";
