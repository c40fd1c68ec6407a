export { answersPrint } from "./answers-print";
export type { Block, FactsBlock, Printed, TableBlock } from "./block";
export { type ClassResult, classPrint } from "./class-print";
export { FILE_KINDS, FILE_NAMES, type FileKind, openFile } from "./files";
export { type PieceStrip, piecePages } from "./piece-plan";
export type { PrintedSheet } from "./printed-sheet";
export { marksFacts, reportPrint } from "./report-print";
export { type SittingRow, type SittingToPrint, sittingPrint } from "./sitting-print";
export { ATTEMPT_WORDS, PRACTICE, type Work, workWords } from "./work";
