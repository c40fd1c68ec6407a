"use client";
import { marks } from "@/app/_marks/line-words";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
import type { LineId, LineOfResult } from "@/lib/review";
import { progressWords } from "./overrule-words";
import { ReasonField, wrong } from "./reason-field";
import { reasonIn, useReviewAct } from "./use-review-act";

interface OverruleFormProps {
  readonly runId: string;
  readonly id: LineId;
  readonly title: string;
  readonly line: LineOfResult | undefined;
  onDone(sentence: string): void;
}

/** Gives a line other marks; of a false call only its price can be taken back. */
export function OverruleForm({ runId, id, title, line, onDone }: OverruleFormProps) {
  const most = line?.range?.most ?? 0;
  const isPrice = most === 0;
  const { refused, isSending, onSubmit } = useReviewAct({
    runId,
    act: "overrule",
    bodyOf: (form) => {
      const typed = String(form.get("marks") ?? "")
        .trim()
        .replace(",", ".");
      return { line: id, marks: isPrice ? 0 : typed === "" ? null : Number(typed), reason: reasonIn(form) };
    },
    onDone: () => onDone(`Overruled: ${title}. The computed marks stay beside yours.`),
  });
  return (
    <form onSubmit={onSubmit} noValidate className="mt-2 space-y-3">
      <p className="font-medium">{title}</p>
      <p className="text-ink-2 text-sm">
        {isPrice
          ? `Computed: ${marks(line?.earned ?? 0)}. Nothing is to be earned here; you can take this price back, so that the line counts 0.`
          : `Computed: ${marks(line?.earned ?? 0)} of ${marks(most)}. Give it any number of marks from 0 to ${marks(most)}.`}
      </p>
      {line && <p className="text-ink-2 text-sm">{progressWords(line)}</p>}
      {refused && <Notice>{refused.message}</Notice>}
      {!isPrice && (
        <div className="w-36">
          <Field
            name="marks"
            label="Marks"
            inputMode="decimal"
            autoComplete="off"
            defaultValue={marks(most)}
            problem={wrong(refused?.fields.marks)}
          />
        </div>
      )}
      <ReasonField problem={refused?.fields.reason} />
      <Button type="submit" disabled={isSending}>
        {isPrice ? "Take the price back" : "Overrule this line"}
      </Button>
    </form>
  );
}
