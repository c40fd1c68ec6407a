export { drawQuestions } from "./draw-questions";
export type { Material } from "./kind";
export { sourceOfKind } from "./kinds";
export { asked, type Place, type Question, questionSchema, SOURCES, type Source } from "./question";
