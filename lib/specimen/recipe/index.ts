export { BLUEPRINT, COUNTS, DECOYS } from "./blueprint";
export { drawRecipe, type FaceRecipe, type Recipe } from "./recipe";
export { APART, FROM_ENDS } from "./zones";
