export { type EyeAnswer, eyeAnswerSchema } from "./answer";
export { type AskedTask, type AskedWindow, type ShownThing, type ToldTask, WINDOW_MARGIN } from "./asked";
export { EYE_TYPES } from "./eye-types";
export {
  BURST_SECONDS,
  EYE_DRILLS,
  EYE_ROUNDS,
  EYE_TASKS,
  type EyeChoice,
  type EyeDrill,
  type EyeTaskKind,
  eyeChoiceSchema,
  lengthOf,
  NAMINGS,
  type Naming,
} from "./kinds";
export type { EyeRound, EyeRoundView, FinishedEyeRound, KeptSetDrill } from "./round";
export { type SetDrill, setDrillSchema } from "./set-drill";
export {
  type ErrorSum,
  type EyeResult,
  type KindSum,
  type RightOf,
  rightOf,
  sumsByKind,
  sumsByThing,
} from "./sums";
export {
  type Allowance,
  allowed,
  END_ALLOWANCE,
  ESTIMATE_ALLOWANCES,
  ESTIMATES,
  type Estimate,
} from "./tolerance";
