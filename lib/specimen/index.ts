export {
  assembleTruth,
  GENERATOR_VERSION,
  generateFace,
  generateSpecimen,
  type MadeFace,
  type Specimen,
} from "./generate";
export { drawRecipe, type FaceRecipe, type Recipe } from "./recipe";
export { CLUTTER, type Clutter, type ClutterItem, type Point, type Truth, type TruthItem } from "./truth";
export { truthItemSchema, truthSchema } from "./truth-schema";
