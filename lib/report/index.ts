export {
  type Call,
  callSchema,
  EMPTY_REPORT,
  MAX_CALLS,
  type Measure,
  measureSchema,
  type Report,
  reportSchema,
} from "./report";
