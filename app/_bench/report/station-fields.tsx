"use client";
import type { Dispatch } from "react";
import type { WritingEvent } from "@/lib/bench";
import type { Measure } from "@/lib/report";
import { ASKED_DIMENSIONS, DIMENSION_FACTS, type Dimension } from "@/lib/weld";
import { NumberField } from "./number-field";

interface StationFieldsProps {
  readonly station: number;
  /** Where it is scribed, mm from the datum. */
  readonly x: number;
  readonly measures: readonly Measure[];
  readonly write: Dispatch<WritingEvent>;
}

/** Three fields side by side leave no room for the whole names. */
const SHORT_NAMES: Readonly<Partial<Record<Dimension, string>>> = {
  "base-leg": "Base leg",
  "standing-leg": "Standing leg",
  throat: "Throat",
};

/** What is measured at one of the stations scribed on a fillet's base plate. */
export function StationFields({ station, x, measures, write }: StationFieldsProps) {
  const asked = ASKED_DIMENSIONS.fillet.filter((one) => one.station === station);
  return (
    <fieldset className="border-line border-b px-3 py-2" data-station={station}>
      <legend className="sr-only">
        Station {station}, at {Math.round(x)} mm
      </legend>
      <p aria-hidden="true" className="mb-1 font-medium text-sm">
        Station {station} <span className="font-normal text-ink-2">at {Math.round(x)} mm</span>
      </p>
      <div className="flex items-end gap-2">
        {asked.map(({ dimension }) => (
          <NumberField
            key={dimension}
            label={SHORT_NAMES[dimension] ?? DIMENSION_FACTS[dimension].name}
            value={measures.find((one) => one.dimension === dimension && one.station === station)?.value ?? null}
            min={0}
            max={DIMENSION_FACTS[dimension].most}
            onChange={(value) => write({ kind: "measure", dimension, station, field: "value", value })}
            onLeave={() => write({ kind: "leave-field" })}
          />
        ))}
      </div>
    </fieldset>
  );
}
