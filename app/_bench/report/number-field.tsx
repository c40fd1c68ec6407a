"use client";
import { useEffect, useId, useState } from "react";

export interface NumberFieldProps {
  readonly label: string;
  readonly unit?: string;
  readonly value: number | null;
  readonly min: number;
  readonly max: number;
  readonly hint?: string;
  readonly onChange: (value: number | null) => void;
  readonly onLeave: () => void;
}

/** A number in mm, typed with a point or a comma; what cannot be read or is out of range is said at once and not kept. */
export function NumberField({ label, unit = "mm", value, min, max, hint, onChange, onLeave }: NumberFieldProps) {
  const id = useId();
  const [text, setText] = useState(textOf(value));
  const [problem, setProblem] = useState<string | null>(null);

  useEffect(() => {
    setText((now) => (readNumber(now) === value ? now : textOf(value)));
    setProblem(null);
  }, [value]);

  const change = (next: string) => {
    setText(next);
    const read = readNumber(next);
    const fault = read === undefined ? "Write a number, for example 12.5." : faultOf(read, min, max);
    setProblem(fault);
    if (!fault) onChange(read ?? null);
  };

  return (
    <div className="min-w-0 flex-1">
      <label htmlFor={id} className="mb-1 block text-ink-2 text-xs">
        {label}
      </label>
      <div className="flex items-center gap-1">
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-invalid={problem !== null}
          aria-describedby={`${id}-note`}
          onChange={(event) => change(event.target.value)}
          onBlur={() => {
            if (problem) setText(textOf(value));
            setProblem(null);
            onLeave();
          }}
          className="h-11 w-full min-w-0 rounded border border-line bg-sheet px-2 tabular-nums aria-invalid:border-missed"
        />
        <span className="text-ink-2 text-sm">{unit}</span>
      </div>
      <p id={`${id}-note`} className={`text-xs ${problem ? "text-missed" : "text-ink-2"}`}>
        {problem ?? hint}
      </p>
    </div>
  );
}

const textOf = (value: number | null) => (value === null ? "" : String(value));

/** The number meant, null for nothing, undefined for what is no number. */
function readNumber(text: string): number | null | undefined {
  const trimmed = text
    .trim()
    .replace(",", ".")
    .replace(/^\u2212/, "-");
  if (trimmed === "") return null;
  return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(trimmed) ? Number(trimmed) : undefined;
}

const faultOf = (value: number | null, min: number, max: number) =>
  value !== null && (value < min || value > max) ? `From ${min} to ${max} mm.` : null;
