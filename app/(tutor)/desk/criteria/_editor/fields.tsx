"use client";

import { useId } from "react";
import { useProblem } from "./problems";

const INPUT =
  "mt-1 w-full min-w-0 rounded border border-ink-2 bg-white px-3 aria-invalid:border-2 aria-invalid:border-missed";

interface TextLineProps {
  /** Names of the field in the schema, as its problems have it. */
  readonly fields: readonly string[];
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly unit?: string;
  readonly hint?: string;
  readonly isNumber?: boolean;
  readonly isLong?: boolean;
}

/** One labelled text or number of the draft, with what is wrong under it. */
export function TextLine({ fields, label, value, onChange, unit, hint, isNumber, isLong }: TextLineProps) {
  const id = useId();
  const { problem, leave } = useProblem(...fields);
  const common = {
    id,
    value,
    onBlur: leave,
    "aria-invalid": problem !== null,
    "aria-describedby": `${id}-note`,
    autoComplete: "off",
  };
  return (
    <div className="min-w-0">
      <label htmlFor={id} className="block font-medium text-sm">
        {label}
        {unit && <span className="font-normal text-ink-2">, {unit}</span>}
      </label>
      {isLong ? (
        <textarea {...common} rows={2} className={`${INPUT} py-2`} onChange={(event) => onChange(event.target.value)} />
      ) : (
        <input
          {...common}
          inputMode={isNumber ? "decimal" : undefined}
          className={`${INPUT} h-11 ${isNumber ? "tabular-nums" : ""}`}
          onChange={(event) => onChange(event.target.value)}
        />
      )}
      <p id={`${id}-note`} className={`mt-1 text-sm ${problem ? "font-medium text-missed" : "text-ink-2"}`}>
        {problem ?? hint}
      </p>
    </div>
  );
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly (readonly [T, string])[];
  readonly onChange: (value: T) => void;
  readonly fields?: readonly string[];
}

/** One of a few. */
export function Choice<T extends string>({ label, value, choices, onChange, fields = [] }: ChoiceProps<T>) {
  const id = useId();
  const { problem, leave } = useProblem(...fields);
  return (
    <div className="min-w-0">
      <label htmlFor={id} className="block font-medium text-sm">
        {label}
      </label>
      <select
        id={id}
        value={value}
        onBlur={leave}
        aria-invalid={problem !== null}
        aria-describedby={problem ? `${id}-note` : undefined}
        className={`${INPUT} h-11 cursor-pointer px-2`}
        onChange={(event) => {
          const chosen = choices.find(([one]) => one === event.target.value);
          if (chosen) onChange(chosen[0]);
        }}
      >
        {choices.map(([one, words]) => (
          <option key={one} value={one}>
            {words}
          </option>
        ))}
      </select>
      {problem && (
        <p id={`${id}-note`} className="mt-1 font-medium text-missed text-sm">
          {problem}
        </p>
      )}
    </div>
  );
}

interface TickProps {
  readonly label: string;
  readonly isOn: boolean;
  readonly onChange: (isOn: boolean) => void;
  readonly note?: string;
  readonly isInvalid?: boolean;
}

export function Tick({ label, isOn, onChange, note, isInvalid }: TickProps) {
  return (
    <label className="flex min-h-11 cursor-pointer items-center gap-3 text-sm">
      <input
        type="checkbox"
        checked={isOn}
        aria-invalid={isInvalid}
        onChange={(event) => onChange(event.target.checked)}
        className="size-5 shrink-0 accent-action"
      />
      <span>
        {label}
        {note && <span className="text-ink-2"> {note}</span>}
      </span>
    </label>
  );
}

/** A small action beside what it is about. */
export function SmallButton({ label, name, onClick }: { label: string; name?: string; onClick: () => void }) {
  return (
    <button
      type="button"
      aria-label={name}
      onClick={onClick}
      className="min-h-11 cursor-pointer rounded px-3 font-medium text-action text-sm underline underline-offset-4 hover:bg-paper-2"
    >
      {label}
    </button>
  );
}
