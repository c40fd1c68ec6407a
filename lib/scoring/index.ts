export { DEFAULT_TOLERANCES, RULE_VERSION } from "../results";
export { markIndications } from "./indications";
export { DEFAULT_SETTINGS, markSection, type SectionSettings } from "./mark";
export { type Answers, markQuestions } from "./questions";
export { markSentences } from "./sentences";
