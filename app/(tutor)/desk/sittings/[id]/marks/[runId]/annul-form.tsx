"use client";
import { useEffect, useState } from "react";
import { DifferenceTable } from "@/app/_marks/review-summary";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { type Annulment, annulmentSchema, askReview } from "./ask-review";
import { ReasonField } from "./reason-field";
import { reasonIn, useReviewAct } from "./use-review-act";

interface AnnulFormProps {
  readonly runId: string;
  readonly question: string;
  readonly title: string;
  onDone(sentence: string): void;
}

/** Takes a question out for everybody who was asked it, after saying whose marks and verdicts change. */
export function AnnulForm({ runId, question, title, onDone }: AnnulFormProps) {
  const [preview, setPreview] = useState<Annulment | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    let isGone = false;
    void askReview(runId, "preview-annul", { question }, annulmentSchema).then((answer) => {
      if (isGone) return;
      if (answer.ok) setPreview(answer);
      else setProblem(answer.message);
    });
    return () => {
      isGone = true;
    };
  }, [runId, question]);
  const { refused, isSending, onSubmit } = useReviewAct({
    runId,
    act: "annul",
    bodyOf: (form) => ({
      question,
      reason: reasonIn(form),
      seen: { marks: preview?.marks ?? 0, verdicts: preview?.verdicts ?? 0 },
    }),
    onDone: () => onDone(`Annulled: ${title}`),
  });
  return (
    <form onSubmit={onSubmit} noValidate className="mt-2 space-y-3">
      <p className="font-medium">{title}</p>
      <p className="text-ink-2 text-sm">
        It counts as if it had not been asked: its marks are shared out equally among the other questions of each
        learner, or given in full where none is left. Whoever answered it by its key keeps its marks, so nobody loses by
        it.
      </p>
      {problem && <Notice>{problem}</Notice>}
      {!preview && !problem && <p role="status">Working out whose marks change …</p>}
      {preview && (
        <div role="status">
          <p className="font-medium">{effectWords(preview)}</p>
          <DifferenceTable
            heads={["Now", "Then"]}
            rows={preview.rows.map(({ learner, before, after }) => [learner, markWords(before), markWords(after)])}
          />
        </div>
      )}
      {refused && <Notice>{refused.message}</Notice>}
      <ReasonField problem={refused?.fields.reason} />
      <Button type="submit" disabled={isSending || !preview}>
        Annul the question
      </Button>
    </form>
  );
}

const markWords = ({ shown, passed }: Annulment["rows"][number]["before"]): string =>
  `${shown.toFixed(1)} ${passed ? "passed" : "not passed"}`;

const count = (number: number, one: string, more: string): string =>
  `${number === 0 ? "No" : number} ${number === 1 ? one : more}`;

/** How many were asked, and how many marks and verdicts change. */
function effectWords({ asked, marks, verdicts }: Annulment): string {
  const whom =
    asked === 1
      ? "Asked in one section of this sitting only."
      : `Asked in ${asked} sections of this sitting, all of which it is annulled for.`;
  return `${whom} ${count(marks, "mark changes", "marks change")}, ${count(verdicts, "verdict changes", "verdicts change").toLowerCase()}.`;
}
