"use client";
import type { Dispatch } from "react";
import type { WritingEvent } from "@/lib/bench";
import type { Measure } from "@/lib/report";
import { ASKED_DIMENSIONS, BUTT_PLATE_LENGTH, DIMENSION_FACTS, type Dimension } from "@/lib/weld";
import { NumberField } from "./number-field";

interface DimensionListProps {
  readonly measures: readonly Measure[];
  readonly write: Dispatch<WritingEvent>;
}

/** What is measured on the piece as a whole: each dimension with its largest value and where that is. */
export function DimensionList({ measures, write }: DimensionListProps) {
  const measuredCount = measures.filter(({ value }) => value !== null).length;
  return (
    <section aria-labelledby="dimensions" className="border-line border-t" data-dimensions="">
      <h3 id="dimensions" className="px-3 pt-3 font-semibold">
        Dimensions{" "}
        <span className="font-normal text-ink-2 text-sm">
          {measuredCount} of {ASKED_DIMENSIONS.butt.length} measured
        </span>
      </h3>
      <ul>
        {ASKED_DIMENSIONS.butt.map(({ dimension }) => (
          <DimensionRow
            key={dimension}
            dimension={dimension}
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
  readonly measure: Measure | undefined;
  readonly write: Dispatch<WritingEvent>;
}

function DimensionRow({ dimension, measure, write }: DimensionRowProps) {
  const { name, unit, asks, most } = DIMENSION_FACTS[dimension];
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
            label={unit === "mm" ? "Largest" : "Largest angle"}
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
            max={BUTT_PLATE_LENGTH}
            onChange={(value) => change("at", value)}
            onLeave={onLeave}
          />
        </div>
      </fieldset>
    </li>
  );
}
