export {
  BOOKS,
  type Book,
  type ListedPractice,
  MAX_OPEN_PRACTICES,
  type Practice,
  type PracticeState,
  type SectionMark,
} from "./practice";
export { answerSave, isSameButAnswers, type SaveAnswer, type WritingWindow } from "./save";
