export type { NotChosen } from "./not-chosen";
export {
  BOOKS,
  type Book,
  countingMark,
  type ListedPractice,
  MAX_OPEN_PRACTICES,
  type Practice,
  type PracticeState,
  type ReviewedMark,
  type SectionMark,
} from "./practice";
export { answerSave, isSameButAnswers, type SaveAnswer, type WritingWindow } from "./save";
