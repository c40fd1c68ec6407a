"use client";

import { useEffect, useId, useState } from "react";
import { faultOf, readNumber } from "@/app/_bench/report/read-number";
import { FIELD_FACTS, type FieldName, labelOf, unitOf } from "./field-facts";
import { NO_NUMBER } from "./limits-view";

interface ValueFieldProps {
  readonly name: FieldName;
  readonly value: number;
  readonly onChange: (value: number) => void;
}

/**
 * One number, by slider or typed with a point or a comma; the slider goes in steps, any number may be typed. What cannot be
 * taken is said at once, and the value stays as it was.
 */
export function ValueField({ name, value, onChange }: ValueFieldProps) {
  const id = useId();
  const { min, max, step } = FIELD_FACTS[name];
  const unit = unitOf(name);
  const [text, setText] = useState(String(value));
  const [problem, setProblem] = useState<string | null>(null);

  useEffect(() => {
    setText((now) => (readNumber(now) === value ? now : String(value)));
    setProblem(null);
  }, [value]);

  const faultIn = (typed: string): string | null => {
    const read = readNumber(typed);
    return typeof read === "number" ? faultOf(read, min, max, unit) : NO_NUMBER;
  };
  const type = (next: string) => {
    setText(next);
    const fault = faultIn(next);
    setProblem(fault);
    if (fault === null) onChange(readNumber(next) as number);
  };
  const leave = () => {
    const fault = faultIn(text);
    if (fault === null) return;
    setProblem(`“${text.trim()}” was not taken. ${fault} It stays at ${value} ${unit}.`);
    setText(String(value));
  };

  return (
    <div className="min-w-0">
      <label htmlFor={id} className="block font-medium text-sm">
        {labelOf(name)}
      </label>
      <div className="flex items-center gap-3">
        <input
          type="range"
          aria-label={`${labelOf(name)}, slider`}
          aria-valuetext={`${value} ${unit}`}
          min={min}
          max={max}
          step={step}
          value={value}
          onChange={(event) => {
            setText(event.target.value);
            setProblem(null);
            onChange(Number(event.target.value));
          }}
          className="h-11 min-w-0 flex-1 cursor-pointer accent-action print:hidden"
        />
        <input
          id={id}
          inputMode="decimal"
          autoComplete="off"
          value={text}
          aria-invalid={problem !== null}
          aria-describedby={`${id}-note`}
          onChange={(event) => type(event.target.value)}
          onBlur={leave}
          className="h-11 w-20 shrink-0 rounded border border-ink-2 bg-white px-2 text-right tabular-nums aria-invalid:border-2 aria-invalid:border-missed"
        />
        <span className="w-7 shrink-0 whitespace-nowrap text-ink-2 text-sm">{unit}</span>
      </div>
      <p id={`${id}-note`} role="status" className="font-medium text-missed text-sm">
        {problem && `${labelOf(name)}: ${problem.charAt(0).toLowerCase()}${problem.slice(1)}`}
      </p>
    </div>
  );
}
