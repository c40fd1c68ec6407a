export { DEFAULT_TOLERANCES, RULE_VERSION } from "../results";
export { DEFAULT_SETTINGS, markReport, markSection, type ReportSettings, type SectionSettings } from "./mark";
