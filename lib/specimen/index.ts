export {
  assembleTruth,
  GENERATOR_VERSION,
  generateFace,
  generateSpecimen,
  type MadeFace,
  type Specimen,
} from "./generate";
export { drawRecipe, type FaceRecipe, type Recipe } from "./recipe";
export { type Example, type Showcase, showcases } from "./showcase";
export type { ClutterItem, Point, Truth, TruthItem } from "./truth";
export { truthItemSchema, truthSchema } from "./truth-schema";
