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
        Nothing would differ: under rule {preview.again.ruleVersion} every line brings what it brought under rule{" "}
        {preview.first.ruleVersion}, and the computed mark is {preview.again.computed.toFixed(1)} as before.
      </p>
    );
  }
  return <Choice runId={runId} preview={preview} onDone={onDone} />;
}

function Choice({ runId, preview, onDone }: MarkAgainProps & { readonly preview: Again }) {
  const { first, again, lines } = preview;
  const { refused, isSending, onSubmit } = useReviewAct({
    runId,
    act: "mark-again",
    bodyOf: (form) => ({
      counts: form.get("counts") === "again",
      seen: { first: first.mark, again: again.mark },
      reason: reasonIn(form),
    }),
    onDone: () => onDone("Both marks are kept, each with its rule."),
  });
  const said = ({ ruleVersion, computed, shown, passed }: Again["first"]) => {
    const reviewed = computed === shown ? "" : ` as reviewed, computed ${computed.toFixed(1)}`;
    return `rule ${ruleVersion}: ${shown.toFixed(1)}${reviewed}, ${passed ? "passed" : "not passed"}`;
  };
  const earned = (line: Again["lines"][number]["before"]) => (line ? marks(line.earned) : "no such line");
  return (
    <form onSubmit={onSubmit} noValidate className="mt-2 space-y-3">
      <DifferenceTable
        heads={[`Rule ${first.ruleVersion}, computed`, `Rule ${again.ruleVersion}, computed`]}
        rows={lines.map((line) => [line.line, earned(line.before), earned(line.after)])}
      />
      {refused && <Notice>{refused.message}</Notice>}
      <fieldset>
        <legend className="font-medium text-sm">Which mark counts</legend>
        {[
          ["again", `The new one, ${said(again)}`],
          ["first", `The first one, ${said(first)}`],
        ].map(([value, label]) => (
          <label key={value} className="flex min-h-11 cursor-pointer items-center gap-3">
            <input type="radio" name="counts" value={value} defaultChecked={value === "again"} className="size-5" />
            {label}
          </label>
        ))}
      </fieldset>
      <Waiting choice="new" overrulings={again.waiting} />
      <Waiting choice="first" overrulings={first.waiting} />
      <ReasonField problem={refused?.fields.reason} />
      <Button type="submit" disabled={isSending}>
        Keep both marks
      </Button>
    </form>
  );
}

interface WaitingProps {
  readonly choice: "new" | "first";
  readonly overrulings: Again["first"]["waiting"];
}

/** What was overruled of another mark than the one chosen: it is not lost, and does not count. */
function Waiting({ choice, overrulings }: WaitingProps) {
  if (overrulings.length === 0) return null;
  return (
    <div className="text-sm">
      <p>
        If the {choice} one counts, these lines wait as they were overruled. Each counts again when the mark that it was
        said of counts.
      </p>
      <ul className="list-disc pl-5">
        {overrulings.map(({ act, line, marks: given, ruleVersion }) => (
          <li key={act} className="wrap-anywhere">
            {line}: overruled under rule {ruleVersion}, {marks(given)} marks
          </li>
        ))}
      </ul>
    </div>
  );
}
