"use client";
import type { ActView } from "@/app/_marks/review-view";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { ReasonField } from "./reason-field";
import { reasonIn, useReviewAct } from "./use-review-act";

interface TakeBackFormProps {
  readonly runId: string;
  readonly act: ActView;
  onDone(sentence: string): void;
}

/** Takes a change back; both stay to be read. */
export function TakeBackForm({ runId, act, onDone }: TakeBackFormProps) {
  const { refused, isSending, onSubmit } = useReviewAct({
    runId,
    act: "take-back",
    bodyOf: (form) => ({ act: act.id, reason: reasonIn(form) }),
    onDone: () => onDone(`Taken back: ${act.about}.`),
  });
  return (
    <form onSubmit={onSubmit} noValidate className="mt-2 space-y-3">
      <p className="font-medium">
        {act.about}: {act.what}
      </p>
      <p className="text-ink-2 text-sm">
        What was computed counts again. Both stay on the mark sheet and in the log.
        {act.what === "annulled" && " The question comes back for everybody it was annulled for."}
      </p>
      {refused && <Notice>{refused.message}</Notice>}
      <ReasonField problem={refused?.fields.reason} />
      <Button type="submit" disabled={isSending}>
        Take it back
      </Button>
    </form>
  );
}
