export { grindBand } from "./ground-band";
export { layParentPlate } from "./parent-plate";
