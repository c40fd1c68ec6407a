export { DEFAULT_QUESTION_COUNT, drawQuestions } from "./draw-questions";
export type { Material } from "./kind";
export { type AskedQuestion, asked, type Place, type Question, questionSchema, SOURCES, type Source } from "./question";
