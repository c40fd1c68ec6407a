export { drawRound, keyOf, NoBareWindow, type RoundOrder } from "./draw-round";
export { canAsk } from "./draw-task";
export { cutOf, type PlacedWindow } from "./frame";
export { askedOf, isAnswerTo, judge, resultOf } from "./judge";
export { isEnough, type MaterialFace, materialOf, type Piece } from "./material";
export { type EyeTask, eyeTaskSchema, type Thing, targetOf } from "./task";
export { type Aims, aimsOf, wantedFor } from "./weigh-types";
