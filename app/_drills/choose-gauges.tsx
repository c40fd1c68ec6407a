"use client";
import { useId } from "react";
import { Button } from "@/app/_ui/button";
import { DRILL_GAUGES, type Drill, type DrillGauge } from "@/lib/drills";
import { GAUGES } from "@/lib/gauges";
import { lengthWords } from "./drill-words";

export interface ChooseGaugesProps {
  readonly drill: Drill;
  readonly chosen: readonly DrillGauge[];
  readonly onChoose: (gauges: readonly DrillGauge[]) => void;
  readonly onBegin: (gauges: readonly DrillGauge[]) => void;
}

/** Which gauges a round is to be about; all of them, mixed, unless some are taken out. */
export function ChooseGauges({ drill, chosen, onChoose, onBegin }: ChooseGaugesProps) {
  const all: readonly DrillGauge[] = DRILL_GAUGES[drill];
  const note = useId();
  const isNone = chosen.length === 0;
  return (
    <form
      className="mt-6 max-w-2xl rounded-md border border-line bg-sheet p-5"
      onSubmit={(event) => {
        event.preventDefault();
        if (!isNone) onBegin(chosen);
      }}
    >
      <fieldset aria-describedby={note}>
        <legend className="font-semibold">Which gauges?</legend>
        <div className="mt-2 grid gap-x-6 sm:grid-cols-2">
          {all.map((kind) => (
            <label key={kind} className="flex min-h-11 cursor-pointer items-center gap-3">
              <input
                type="checkbox"
                className="size-5 accent-action"
                checked={chosen.includes(kind)}
                onChange={(event) =>
                  onChoose(all.filter((one) => (one === kind ? event.target.checked : chosen.includes(one))))
                }
              />
              {GAUGES[kind].name}
            </label>
          ))}
        </div>
      </fieldset>
      <p id={note} className={`mt-2 text-sm ${isNone ? "font-medium text-missed" : "text-ink-2"}`} role="status">
        {isNone
          ? "Choose at least one gauge to begin."
          : `${lengthWords(drill)}${chosen.length > 1 ? ", the gauges mixed." : "."}`}
      </p>
      <div className="mt-4 flex flex-wrap gap-3">
        {/* with the focus here from the start, Enter begins */}
        <Button type="submit" autoFocus aria-disabled={isNone}>
          Begin a round
        </Button>
        {chosen.length < all.length && (
          <Button look="quiet" onClick={() => onChoose(all)}>
            All of them
          </Button>
        )}
      </div>
    </form>
  );
}
