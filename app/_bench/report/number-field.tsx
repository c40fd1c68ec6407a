"use client";
import { type FocusEvent, useEffect, useId, useState } from "react";
import { faultOf, readNumber } from "./read-number";

export interface NumberFieldProps {
  readonly label: string;
  readonly unit?: string;
  readonly value: number | null;
  readonly min: number;
  readonly max: number;
  readonly hint?: string;
  readonly onChange: (value: number | null) => void;
  readonly onLeave: (event: FocusEvent) => void;
  /** Which end of an extent it is, if one. */
  readonly end?: "from" | "to";
}

/**
 * A number in mm, typed with a point or a comma. What cannot be read or is out of range is said at once and not kept;
 * once the field is left it shows the value it has, and below it what was not taken.
 */
export function NumberField(props: NumberFieldProps) {
  const { label, unit = "mm", value, min, max, hint, onChange, onLeave, end } = props;
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
    const fault = faultOf(read, min, max, unit);
    setProblem(fault);
    if (!fault) onChange(read ?? null);
  };
  const leave = (event: FocusEvent) => {
    const fault = faultOf(readNumber(text), min, max, unit);
    if (fault) {
      setProblem(`“${text.trim()}” was not taken: ${fault.charAt(0).toLowerCase()}${fault.slice(1)}`);
      setText(textOf(value));
    }
    onLeave(event);
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
          data-end={end}
          onBlur={leave}
          className="h-11 w-full min-w-0 rounded border border-line bg-sheet px-2 tabular-nums aria-invalid:border-missed"
        />
        <span className="text-ink-2 text-sm">{unit}</span>
      </div>
      <p id={`${id}-note`} className={`mt-2 break-words text-xs ${problem ? "text-missed" : "text-ink-2"}`}>
        {problem ?? hint}
      </p>
    </div>
  );
}

const textOf = (value: number | null) => (value === null ? "" : String(value));
