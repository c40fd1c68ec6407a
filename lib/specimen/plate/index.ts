export { cleanJoint } from "./clean-joint";
export { tackPlaces } from "./dressing";
export { finishPlate } from "./finish-plate";
export { type Landing, placeGlobule } from "./globule";
export { paintHeat } from "./heat";
export { layParentPlate } from "./parent-plate";
export { scatterSpatter } from "./spatter";
export { leaveWorkshopMarks } from "./workshop-marks";
