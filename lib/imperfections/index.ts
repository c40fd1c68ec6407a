export {
  CATALOGUE,
  FAMILIES,
  type Family,
  IMPERFECTION_TYPES,
  type Imperfection,
  type ImperfectionType,
  imperfection,
  isImperfectionType,
  likeness,
  type SizeKind,
  type SubRow,
  typesOn,
} from "./catalogue";
export { CLUTTER, CLUTTER_WORDS, type Clutter, type ClutterWords } from "./clutter";
