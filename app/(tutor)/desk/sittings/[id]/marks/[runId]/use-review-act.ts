import { type FormEvent, useState } from "react";
import { askReview, doneSchema, type Refused } from "./ask-review";

interface Options {
  readonly runId: string;
  readonly act: string;
  /** What is sent, from what was filled in. */
  bodyOf(form: FormData): object;
  onDone(): void;
}

/** A form that does something to a mark; what was typed stays after a refusal. */
export function useReviewAct({ runId, act, bodyOf, onDone }: Options) {
  const [refused, setRefused] = useState<Refused | null>(null);
  const [isSending, setIsSending] = useState(false);
  const onSubmit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    setIsSending(true);
    const answer = await askReview(runId, act, bodyOf(form), doneSchema);
    setIsSending(false);
    setRefused(answer.ok ? null : answer);
    if (answer.ok) onDone();
  };
  return { refused, isSending, onSubmit: (event: FormEvent<HTMLFormElement>) => void onSubmit(event) };
}

export const reasonIn = (form: FormData): string => String(form.get("reason") ?? "");
