export { drawRecipe, type FaceRecipe, type Recipe } from "./recipe";
