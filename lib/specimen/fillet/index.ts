export { predictFillet } from "./draw-recipe";
export { FILLET_BLUEPRINTS, type FilletBlueprint, filletBlueprintSchema, PRACTICE_FILLETS } from "./fillet-blueprint";
export { drawCleanFillet, type FilletChoice, type FilletRecipe } from "./fillet-recipe";
export type { FilletTruthItem } from "./fillet-truth";
export { foreseeFillet } from "./foresee-fillet";
export { generateFillet } from "./generate-fillet";
export { sizesAt } from "./section";
export { generateFilletSpecimen } from "./specimen";
export { withFilletTypes } from "./with-types";
