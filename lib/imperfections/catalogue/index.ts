export {
  CATALOGUE,
  IMPERFECTION_TYPES,
  type ImperfectionType,
  imperfection,
  isImperfectionType,
  likeness,
  typesOn,
} from "./catalogue";
export { FAMILIES, type Family, type Imperfection, type SizeKind, type SubRow } from "./imperfection";
