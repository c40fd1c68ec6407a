export {
  DRILL_GAUGES,
  DRILLS,
  type Drill,
  type DrillAnswer,
  type DrillGauge,
  type DrillRound,
  drillRoundSchema,
  type NewDrillRound,
  ROUND_LENGTH,
  tally,
} from "./drills";
export {
  drawLargestTask,
  judgeLargest,
  type LargestTask,
  type LargestVerdict,
} from "./largest/task";
export { leastFound, type Measured, SEARCHED } from "./largest/truth";
export { judgeReading } from "./reading/judge";
export { slipWords } from "./reading/slips";
export { drawReadingTask, type ReadingTask, type StandingTask } from "./reading/task";
export { beginRound, type Round, takeRound, taskNumber, toKeep } from "./round";
export { judgeSeat, SEAT_FAULT_WORDS, SEAT_TOLERANCE, type SeatFault, type SeatVerdict } from "./seat/judge";
export { drawSeatTask, type SeatTask } from "./seat/task";
export { shadePlan } from "./shade-plan";
export { STEADY } from "./steady";
