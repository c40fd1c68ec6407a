"use client";
import { type Ref, useId } from "react";

export interface AnswerFieldProps {
  readonly label: string;
  readonly text: string;
  readonly problem: string | null;
  readonly hint?: string;
  readonly isReadOnly: boolean;
  readonly onType: (text: string) => void;
  readonly ref?: Ref<HTMLInputElement>;
}

/** A number in mm that is looked at when it is handed over; what cannot be read is said below it. */
export function AnswerField({ label, text, problem, hint, isReadOnly, onType, ref }: AnswerFieldProps) {
  const id = useId();
  return (
    <div>
      <label htmlFor={id} className="block text-sm font-medium">
        {label}
      </label>
      <div className="mt-1 flex items-center gap-2">
        <input
          ref={ref}
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          readOnly={isReadOnly}
          aria-invalid={problem !== null}
          aria-describedby={`${id}-note`}
          onChange={(event) => onType(event.target.value)}
          className="h-11 w-32 rounded border border-ink-2 bg-white px-3 text-lg tabular-nums read-only:bg-paper-2 aria-invalid:border-2 aria-invalid:border-missed"
        />
        <span className="text-ink-2">mm</span>
      </div>
      <p
        id={`${id}-note`}
        role={problem ? "alert" : undefined}
        className={`mt-1 min-h-5 text-sm ${problem ? "font-medium text-missed" : "text-ink-2"}`}
      >
        {problem ?? hint}
      </p>
    </div>
  );
}
