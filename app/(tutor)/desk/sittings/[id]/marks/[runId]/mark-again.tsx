"use client";
import { useEffect, useState } from "react";
import { marks } from "@/app/_marks/line-words";
import { DifferenceTable } from "@/app/_marks/review-summary";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { type Again, againSchema, askReview } from "./ask-review";
import { ReasonField } from "./reason-field";
import { reasonIn, useReviewAct } from "./use-review-act";

interface MarkAgainProps {
  readonly runId: string;
  onDone(sentence: string): void;
}

/** Shows what the present rule would give, then keeps both marks and asks which counts. */
export function MarkAgain({ runId, onDone }: MarkAgainProps) {
  const [preview, setPreview] = useState<Again | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    let isGone = false;
    void askReview(runId, "preview-mark-again", {}, againSchema).then((answer) => {
      if (isGone) return;
      if (answer.ok) setPreview(answer);
      else setProblem(answer.message);
    });
    return () => {
      isGone = true;
    };
  }, [runId]);
  if (problem) return <Notice>{problem}</Notice>;
  if (!preview) return <p role="status">Marking again …</p>;
  if (preview.lines.length === 0) {
    return (
      <p role="status" className="mt-2">
        Nothing would differ: under rule {preview.after.ruleVersion} every line brings what it brought under rule{" "}
        {preview.before.ruleVersion}, and the mark is {preview.after.shown.toFixed(1)} as before.
      </p>
    );
  }
  return <Choice runId={runId} preview={preview} onDone={onDone} />;
}

function Choice({ runId, preview, onDone }: MarkAgainProps & { readonly preview: Again }) {
  const { before, after, lines, overrulings, mark } = preview;
  const { refused, isSending, onSubmit } = useReviewAct({
    runId,
    act: "mark-again",
    bodyOf: (form) => ({ counts: form.get("counts") === "again", seen: mark, reason: reasonIn(form) }),
    onDone: () => onDone("Both marks are kept, each with its rule."),
  });
  const said = ({ ruleVersion, shown, passed }: Again["before"]) =>
    `rule ${ruleVersion}: ${shown.toFixed(1)}, ${passed ? "passed" : "not passed"}`;
  const earned = (line: Again["lines"][number]["before"]) => (line ? marks(line.earned) : "no such line");
  return (
    <form onSubmit={onSubmit} noValidate className="mt-2 space-y-3">
      <DifferenceTable
        heads={[`Rule ${before.ruleVersion}`, `Rule ${after.ruleVersion}`]}
        rows={lines.map((line) => [line.line, earned(line.before), earned(line.after)])}
      />
      {overrulings > 0 && (
        <p className="text-sm">
          What you overruled was said of the first mark and does not go over to the new one. It counts again whenever
          the first mark counts.
        </p>
      )}
      {refused && <Notice>{refused.message}</Notice>}
      <fieldset>
        <legend className="font-medium text-sm">Which mark counts</legend>
        {[
          ["again", `The new one, ${said(after)}`],
          ["first", `The first one, ${said(before)}`],
        ].map(([value, label]) => (
          <label key={value} className="flex min-h-11 cursor-pointer items-center gap-3">
            <input type="radio" name="counts" value={value} defaultChecked={value === "again"} className="size-5" />
            {label}
          </label>
        ))}
      </fieldset>
      <ReasonField problem={refused?.fields.reason} />
      <Button type="submit" disabled={isSending}>
        Keep both marks
      </Button>
    </form>
  );
}
