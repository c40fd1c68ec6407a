export {
  type Expectation,
  expectPiece,
  eyeMeasureOf,
  PASS_ABILITY,
  type SectionTruth,
  type SeenItem,
  seenItems,
} from "./difficulty";
export {
  drawCleanFillet,
  FILLET_BLUEPRINTS,
  type FilletBlueprint,
  type FilletChoice,
  type FilletRecipe,
  type FilletTruthItem,
  filletBlueprintSchema,
  generateFillet,
  generateFilletSpecimen,
  predictFillet,
  sizesAt,
  withFilletTypes,
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
  explainUnmet,
  type FaceRecipe,
  meetsBlueprint,
  predictPlate,
  type Recipe,
  type Refusal,
  type SectionBlueprint,
  type Slot,
  type TypeWish,
  tryRecipe,
  type Unmet,
  WITHIN_MARKS,
  type Wished,
  withTypes,
} from "./recipe";
export { type Example, type Showcase, showcases } from "./showcase";
export {
  type ButtTruth,
  type ClutterItem,
  type DimensionTruth,
  type FilletTruth,
  isFilletTruth,
  type Point,
  type StatementTruth,
  type Truth,
  type TruthItem,
} from "./truth";
export { truthSchema } from "./truth-schema";
