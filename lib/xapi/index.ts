export { drillStatement } from "./drill-round";
export { type Endpoint, statementsAt } from "./endpoint";
export { type CountedWork, markedStatement, statementsOf, takenBack } from "./marked-section";
export { learnerAccount, type XapiPlace } from "./place";
export { type Statement, XAPI_VERSION } from "./statement";
