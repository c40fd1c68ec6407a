export {
  assembleTruth,
  GENERATOR_VERSION,
  generateFace,
  generateMetFace,
  generateSpecimen,
  type MadeFace,
  type MetFace,
  type Specimen,
} from "./generate";
export {
  BLUEPRINTS,
  type Blueprint,
  blueprintSchema,
  checkBlueprint,
  drawRecipe,
  explainRefusal,
  type FaceRecipe,
  meetsBlueprint,
  type Recipe,
  type Refusal,
  type SectionBlueprint,
  type Slot,
  tryRecipe,
  WITHIN_MARKS,
} from "./recipe";
export { type Example, type Showcase, showcases } from "./showcase";
export type { ClutterItem, Point, Truth, TruthItem } from "./truth";
export { truthItemSchema, truthSchema } from "./truth-schema";
