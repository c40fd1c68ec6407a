import { SENTENCE_NAMES, type WrittenSentence } from "@/lib/report";
import { type SentenceLine, SIZE_UNCERTAINTY } from "@/lib/results";
import { mm } from "./line-words";

const orList = (sentences: readonly WrittenSentence[]): string =>
  sentences.map((one) => SENTENCE_NAMES[one].toLowerCase()).join(" or ");

/** What was written and whether it is right, in a few words. */
export function sentenceVerdict({ written, right, earned, worth, callIds }: SentenceLine, isPiece: boolean): string {
  if (!isPiece && callIds.length === 0) return "missed, so there is no sentence";
  if (!written) return `not sentenced: ${orList(right)} would be right`;
  const name = SENTENCE_NAMES[written];
  return earned === worth ? `${name}: right` : `${name}: wrong, ${orList(right)} would be right`;
}

/** Why that is right, in one or two sentences. */
export function sentenceStory(line: SentenceLine, isPiece: boolean): string {
  const { fromWritten, fromTruth, decidedBy, right, callIds } = line;
  const isSame = fromWritten?.outcome === fromTruth.outcome;
  if (isPiece) {
    const own = isSame
      ? ""
      : " Your own report would have come to something else, since it differs from what is there.";
    return right.length > 1
      ? `What is really there decides on the piece. A size lies within ${mm(SIZE_UNCERTAINTY)} of its limit, too near to tell, so ${orList(right)} are right.${own}`
      : `What is really there decides on the piece.${own}`;
  }
  if (callIds.length === 0) return "What was missed cannot be sentenced; its marks are lost.";
  if (decidedBy === "written") {
    return isSame
      ? "What follows from your own report decides, and the truth comes to the same."
      : "What follows from your own report decides. The truth would have come to something else, and that is paid for where you measured or named it.";
  }
  const why = "Something that decides was left blank, so the truth decides.";
  return right.length > 1
    ? `${why} The true size lies within ${mm(SIZE_UNCERTAINTY)} of its limit, too near to tell, so ${orList(right)} are right.`
    : why;
}
