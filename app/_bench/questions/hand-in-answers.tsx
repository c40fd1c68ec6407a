"use client";
import type { ChosenOptions } from "@/lib/report";
import type { AskedQuestion } from "@/lib/results";
import { AskDialog } from "../report/ask-dialog";

interface HandInAnswersProps {
  readonly questions: readonly AskedQuestion[];
  readonly answers: ChosenOptions;
  readonly isSending: boolean;
  readonly problem: string | null;
  readonly onHandIn: () => void;
  readonly onClose: () => void;
  /** Numbered from 1. */
  readonly onGoToQuestion: (number: number) => void;
}

/** Asks once before a closed report and its answers are handed in, and shows what is unanswered. */
export function HandInAnswers(props: HandInAnswersProps) {
  const { questions, answers, isSending, problem, onHandIn, onClose, onGoToQuestion } = props;
  const unanswered = questions.flatMap(({ id }, n) => (answers[id] === undefined ? [n + 1] : []));
  return (
    <AskDialog
      title="Hand in?"
      problem={problem}
      backWords="Back to the questions"
      doWords="Hand in"
      doingWords="Handing in..."
      isSending={isSending}
      onDo={onHandIn}
      onClose={onClose}
    >
      <p>Your report is closed. Once it is handed in the answers cannot be changed either, and you see your marks.</p>
      {unanswered.length > 0 ? (
        <p>
          <b>Not answered:</b> question{" "}
          {unanswered.map((number, n) => (
            <span key={number}>
              {n > 0 && ", "}
              <button
                type="button"
                className="min-h-9 font-semibold text-action underline"
                onClick={() => onGoToQuestion(number)}
              >
                No. {number}
              </button>
            </span>
          ))}
          . A wrong answer costs no more than none.
        </p>
      ) : (
        <p>All {questions.length} questions are answered.</p>
      )}
    </AskDialog>
  );
}
