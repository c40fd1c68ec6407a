export {
  type Call,
  type ChosenOptions,
  EMPTY_REPORT,
  MAX_CALLS,
  type Measure,
  REPORT_SCHEMAS,
  type Report,
  reportSchema,
} from "./report";
export { OFFERED_SENTENCES, SENTENCE_NAMES, SENTENCES, type WrittenSentence, worstSentence } from "./sentence";
