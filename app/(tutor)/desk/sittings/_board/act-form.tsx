"use client";

import { type ReactNode, useState } from "react";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
import { type Acted, sendAct } from "./send-act";

interface ActFormProps {
  /** Where it is sent. */
  readonly path: string;
  /** What the button says. */
  readonly label: string;
  readonly look?: "main" | "quiet";
  readonly asks?: { readonly minutes?: number; readonly factor?: number; readonly reason?: boolean };
  /** What it is for and what comes of it. */
  readonly children?: ReactNode;
  /** Called with what was given once it is done. */
  readonly onDone: (given: Readonly<Record<string, string | number>>) => void;
}

/** Something a tutor does, with what it asks for; a refusal is said right here. */
export function ActForm({ path, label, look = "quiet", asks = {}, children, onDone }: ActFormProps) {
  const [refused, setRefused] = useState<Extract<Acted, { ok: false }> | null>(null);
  const [isSending, setIsSending] = useState(false);
  const problem = (field: string) => wrong(refused?.fields[field]);
  const send = async (form: FormData) => {
    const number = (name: string) => Number(String(form.get(name) ?? "").replace(",", "."));
    const given = {
      ...(asks.minutes !== undefined && { minutes: number("minutes") }),
      ...(asks.factor !== undefined && { factor: number("factor") }),
      ...(asks.reason && { reason: String(form.get("reason") ?? "") }),
    };
    setIsSending(true);
    const acted = await sendAct(path, given);
    setIsSending(false);
    setRefused(acted.ok ? null : acted);
    if (acted.ok) onDone(given);
  };
  return (
    <form
      // not as an action: what was typed stays after a refusal
      onSubmit={(event) => {
        event.preventDefault();
        void send(new FormData(event.currentTarget));
      }}
      className="mt-2 space-y-3"
      noValidate
    >
      {children && <p className="text-ink-2 text-sm">{children}</p>}
      {refused && <Notice>{refused.message}</Notice>}
      {(asks.minutes !== undefined || asks.factor !== undefined || asks.reason) && (
        <div className="flex flex-wrap items-start gap-3">
          {asks.minutes !== undefined && (
            <div className="w-24">
              <Field
                name="minutes"
                label="Minutes"
                inputMode="numeric"
                autoComplete="off"
                defaultValue={asks.minutes}
                problem={problem("minutes")}
              />
            </div>
          )}
          {asks.factor !== undefined && (
            <div className="w-36">
              <Field
                name="factor"
                label="Times the usual"
                inputMode="decimal"
                autoComplete="off"
                defaultValue={asks.factor}
                problem={problem("factor")}
              />
            </div>
          )}
          {asks.reason && (
            <div className="min-w-52 flex-1">
              <Field name="reason" label="Reason" autoComplete="off" maxLength={200} problem={problem("reason")} />
            </div>
          )}
        </div>
      )}
      <Button type="submit" look={look} disabled={isSending}>
        {label}
      </Button>
    </form>
  );
}

/** What would be right, as a sentence: the field's name stands over it already. */
function wrong(message: string | undefined): string | undefined {
  if (message === undefined) return undefined;
  const text = message.replace(/^\w+: /, "");
  return `Needed: ${text}.`;
}
