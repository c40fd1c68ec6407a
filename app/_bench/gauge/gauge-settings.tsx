"use client";
import type { Dispatch } from "react";
import { type MeasuringEvent, settingsOf, type TrayPlacement } from "@/lib/bench";
import { STANCES, type Stance } from "@/lib/gauges";

const STANCE_WORDS: Readonly<Record<Stance, string>> = { straddling: "Both sides", "one-side": "One side" };

export interface GaugeSettingsProps {
  readonly placement: TrayPlacement;
  readonly send: Dispatch<MeasuringEvent>;
}

/** How the gauge is turned and set: where its feet are. */
export function GaugeSettings({ placement, send }: GaugeSettingsProps) {
  return (
    <fieldset className="gauge-settings min-w-0">
      <legend className="sr-only">How it is set</legend>
      {"stance" in placement && (
        <div role="radiogroup" aria-label="Feet" className="mb-1 flex gap-1">
          {STANCES.map((stance) => (
            <label
              key={stance}
              className="flex h-11 flex-1 cursor-pointer items-center justify-center rounded border border-bench-line text-sm has-checked:border-lamp has-checked:bg-bench-line has-focus-visible:outline-3 has-focus-visible:outline-lamp"
            >
              <input
                type="radio"
                name="gauge-stance"
                checked={placement.stance === stance}
                onChange={() => send({ kind: "stance", stance })}
                className="sr-only"
              />
              {STANCE_WORDS[stance]}
            </label>
          ))}
        </div>
      )}
      <Stepper label="Turned" value={placement.turn} unit="°" step={1} onChange={(to) => send({ kind: "turn", to })} />
      {settingsOf(placement).map(({ setting, label, value, step }) => (
        <Stepper
          key={setting}
          label={label}
          value={value}
          unit=" mm"
          step={step}
          onChange={(to) => send({ kind: "set", setting, to })}
        />
      ))}
    </fieldset>
  );
}

interface StepperProps {
  readonly label: string;
  readonly value: number;
  readonly unit: string;
  readonly step: number;
  readonly onChange: (value: number) => void;
}

function Stepper({ label, value, unit, step, onChange }: StepperProps) {
  const button = "size-11 shrink-0 rounded border border-bench-line text-lg hover:bg-bench-line";
  return (
    <div className="mb-1 flex items-center gap-1">
      <span className="min-w-0 flex-1 text-bench-dim text-xs leading-tight">{label}</span>
      <button type="button" className={button} aria-label={`${label}: less`} onClick={() => onChange(value - step)}>
        −
      </button>
      <output className="w-[4.2rem] whitespace-nowrap text-center text-sm tabular-nums">
        {Math.round(value * 10) / 10}
        {unit}
      </output>
      <button type="button" className={button} aria-label={`${label}: more`} onClick={() => onChange(value + step)}>
        +
      </button>
    </div>
  );
}
