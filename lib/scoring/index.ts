export { DEFAULT_TOLERANCES, RULE_VERSION } from "../results";
export { markIndications } from "./indications";
export { DEFAULT_SETTINGS, markSection, type SectionSettings } from "./mark";
export { markQuestions } from "./questions";
export { markSentences } from "./sentences";
