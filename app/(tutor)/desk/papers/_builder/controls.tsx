"use client";

import { useField } from "./problems";

/** Plain form controls that take their place in a sentence; a choice is as wide as what is chosen, where the browser can. */
export const CONTROL =
  "h-11 max-w-full rounded border border-ink-2 bg-white px-2 align-middle font-medium aria-invalid:border-2 aria-invalid:border-missed";

interface ControlProps {
  /** Name of the field in the paper, like `sections[0].minutes`. */
  readonly field: string;
  /** What it is called when it is read out by itself; the sentence around it says so to the eye. */
  readonly label: string;
}

interface NumberInProps extends ControlProps {
  readonly value: string;
  readonly onChange: (value: string) => void;
}

/** A number in the middle of a sentence. */
export function NumberIn({ field, label, value, onChange }: NumberInProps) {
  return (
    <input
      {...useField(field)}
      aria-label={label}
      inputMode="decimal"
      autoComplete="off"
      value={value}
      onChange={(event) => onChange(event.target.value)}
      className={`${CONTROL} w-16 text-center tabular-nums`}
    />
  );
}

interface ChoiceInProps<T extends string> extends ControlProps {
  readonly value: T;
  readonly choices: readonly (readonly [T, string])[];
  readonly onChange: (value: T) => void;
}

/** One of a few in the middle of a sentence. */
export function ChoiceIn<T extends string>({ field, label, value, choices, onChange }: ChoiceInProps<T>) {
  return (
    <select
      {...useField(field)}
      aria-label={label}
      value={value}
      onChange={(event) => {
        const chosen = choices.find(([one]) => one === event.target.value);
        if (chosen) onChange(chosen[0]);
      }}
      className={`${CONTROL} field-sizing-content cursor-pointer`}
    >
      {choices.map(([one, words]) => (
        <option key={one} value={one}>
          {words}
        </option>
      ))}
    </select>
  );
}

/** A small action beside what it is about. */
export function SmallButton({ label, name, onClick }: { label: string; name: string; onClick: () => void }) {
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
