"use client";
import type { Dispatch } from "react";
import {
  CORNER_USES,
  type CornerUse,
  cornerUseOf,
  type MeasuringEvent,
  settingsOf,
  type TrayPlacement,
} from "@/lib/bench";
import { STANCES, type Stance } from "@/lib/gauges";

const STANCE_WORDS: Readonly<Record<Stance, string>> = { straddling: "Both sides", "one-side": "One side" };

const USE_WORDS: Readonly<Record<CornerUse, string>> = {
  "base-leg": "Base leg",
  "standing-leg": "Stand. leg",
  throat: "Throat",
};

export interface GaugeSettingsProps {
  readonly placement: TrayPlacement;
  readonly send: Dispatch<MeasuringEvent>;
}

/** How the gauge is turned and set: where its feet are. */
export function GaugeSettings({ placement, send }: GaugeSettingsProps) {
  const use = cornerUseOf(placement);
  return (
    <fieldset className="gauge-settings min-w-0">
      <legend className="sr-only">How it is set</legend>
      {"stance" in placement && (
        <Choice
          name="Feet"
          choices={STANCES}
          words={STANCE_WORDS}
          chosen={placement.stance}
          onChoose={(stance) => send({ kind: "stance", stance })}
        />
      )}
      {use && (
        <Choice
          name="It measures"
          choices={CORNER_USES}
          words={USE_WORDS}
          chosen={use}
          onChoose={(chosen) => send({ kind: "use", use: chosen })}
        />
      )}
      <Stepper
        label="Turned"
        value={placement.turn}
        unit="°"
        less={placement.turn - 1}
        more={placement.turn + 1}
        onChange={(to) => send({ kind: "turn", to })}
      />
      {settingsOf(placement).map(({ setting, label, value, less, more }) => (
        <Stepper
          key={setting}
          label={label}
          value={value}
          unit=" mm"
          less={less}
          more={more}
          onChange={(to) => send({ kind: "set", setting, to })}
        />
      ))}
    </fieldset>
  );
}

interface ChoiceProps<C extends string> {
  readonly name: string;
  readonly choices: readonly C[];
  readonly words: Readonly<Record<C, string>>;
  readonly chosen: C;
  readonly onChoose: (choice: C) => void;
}

function Choice<C extends string>({ name, choices, words, chosen, onChoose }: ChoiceProps<C>) {
  return (
    <div role="radiogroup" aria-label={name} className="mb-1 flex gap-1">
      {choices.map((choice) => (
        <label
          key={choice}
          className="relative flex h-11 flex-1 cursor-pointer items-center justify-center rounded border border-bench-line text-center text-sm leading-tight has-checked:border-lamp has-checked:bg-bench-line has-focus-visible:outline-3 has-focus-visible:outline-lamp"
        >
          <input
            type="radio"
            name={`gauge ${name}`}
            checked={chosen === choice}
            onChange={() => onChoose(choice)}
            className="sr-only"
          />
          {words[choice]}
        </label>
      ))}
    </div>
  );
}

interface StepperProps {
  readonly label: string;
  readonly value: number;
  readonly unit: string;
  readonly less: number;
  readonly more: number;
  readonly onChange: (value: number) => void;
}

/** A number with a button to either side of it. */
export function Stepper({ label, value, unit, less, more, onChange }: StepperProps) {
  const button = "size-11 shrink-0 rounded border border-bench-line text-lg hover:bg-bench-line";
  return (
    <div className="mb-1 flex items-center gap-1">
      <span className="min-w-0 flex-1 text-bench-dim text-xs leading-tight">{label}</span>
      <button type="button" className={button} aria-label={`${label}: less`} onClick={() => onChange(less)}>
        −
      </button>
      <output className="w-[4.2rem] whitespace-nowrap text-center text-sm tabular-nums">
        {Math.round(value * 10) / 10}
        {unit}
      </output>
      <button type="button" className={button} aria-label={`${label}: more`} onClick={() => onChange(more)}>
        +
      </button>
    </div>
  );
}
