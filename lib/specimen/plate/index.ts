export { layParentPlate } from "./parent-plate";
