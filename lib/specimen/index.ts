export {
  drawCleanFillet,
  type EndView,
  FILLET_BLUEPRINTS,
  type FilletBlueprint,
  type FilletDimensions,
  type FilletRecipe,
  type FilletTruth,
  type FilletTruthItem,
  filletBlueprintSchema,
  generateFillet,
  generateFilletSpecimen,
  measureDimensions,
  sizesAt,
} from "./fillet";
export {
  assembleTruth,
  generateFace,
  generateMetFace,
  generateSpecimen,
  type MadeFace,
  type MetFace,
  type Specimen,
} from "./generate";
export { GENERATOR_VERSION } from "./generator-version";
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
export type { ClutterItem, DimensionTruth, Point, Truth, TruthItem } from "./truth";
export { truthItemSchema, truthSchema } from "./truth-schema";
