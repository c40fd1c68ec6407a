"use client";
import type { Dispatch } from "react";
import type { WritingEvent } from "@/lib/bench";
import type { Measure } from "@/lib/report";
import { ASKED_DIMENSIONS, DIMENSION_FACTS, type Dimension, type JointFacts, PIECES } from "@/lib/weld";
import { NumberField } from "./number-field";
import { StationFields } from "./station-fields";

interface DimensionListProps {
  readonly joint: JointFacts;
  readonly measures: readonly Measure[];
  readonly write: Dispatch<WritingEvent>;
}

/** What is measured on the piece: at each station what is asked for there, then each dimension of the whole weld and where. */
export function DimensionList({ joint, measures, write }: DimensionListProps) {
  const asked = ASKED_DIMENSIONS[joint.kind];
  const measuredCount = measures.filter(({ value }) => value !== null).length;
  return (
    <section aria-labelledby="dimensions" className="border-line border-t" data-dimensions="">
      <h3 id="dimensions" className="px-3 pt-3 font-semibold">
        Dimensions{" "}
        <span className="font-normal text-ink-2 text-sm">
          {measuredCount} of {asked.length} measured
        </span>
      </h3>
      {joint.kind === "fillet" &&
        joint.stations.map((x, n) => <StationFields key={x} station={n + 1} x={x} measures={measures} write={write} />)}
      <ul>
        {asked
          .filter(({ station }) => station === null)
          .map(({ dimension }) => (
            <DimensionRow
              key={dimension}
              dimension={dimension}
              length={PIECES[joint.kind].length}
              measure={measures.find((one) => one.dimension === dimension)}
              write={write}
            />
          ))}
      </ul>
    </section>
  );
}

interface DimensionRowProps {
  readonly dimension: Dimension;
  readonly length: number;
  readonly measure: Measure | undefined;
  readonly write: Dispatch<WritingEvent>;
}

function DimensionRow({ dimension, length, measure, write }: DimensionRowProps) {
  const { name, unit, asks, most, taken } = DIMENSION_FACTS[dimension];
  const which = taken === "anywhere" ? "Measured" : taken === "least" ? "Smallest" : "Largest";
  const onLeave = () => write({ kind: "leave-field" });
  const change = (field: "value" | "at", value: number | null) =>
    write({ kind: "measure", dimension, station: null, field, value });
  return (
    <li className="border-line border-b px-3 py-2 last:border-b-0">
      <fieldset>
        <legend className="font-medium text-sm">{name}</legend>
        <p className="mb-1 text-ink-2 text-xs">{asks}</p>
        <div className="flex items-end gap-2">
          <NumberField
            label={unit === "mm" ? which : `${which} angle`}
            unit={unit === "mm" ? "mm" : "°"}
            value={measure?.value ?? null}
            min={0}
            max={most}
            onChange={(value) => change("value", value)}
            onLeave={onLeave}
          />
          <NumberField
            label="Measured at"
            value={measure?.at ?? null}
            min={0}
            max={length}
            onChange={(value) => change("at", value)}
            onLeave={onLeave}
          />
        </div>
      </fieldset>
    </li>
  );
}
