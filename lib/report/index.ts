export { type Call, callSchema, EMPTY_REPORT, MAX_CALLS, type Report, reportSchema } from "./report";
