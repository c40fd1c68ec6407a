"use client";
import { adjusted, BRIDGE_GAUGE, type BridgePlacement, type BridgeReading, type BridgeRefusal } from "@/lib/gauges";
import type { FaceHeights } from "../viewer/protocol";
import { GaugeElevation } from "./gauge-elevation";

export interface GaugeTrayProps {
  readonly placement: BridgePlacement;
  readonly reading: BridgeReading | null;
  readonly heights: FaceHeights | null;
  /** The side of the bench where it hides less of the gauge itself. */
  readonly side: "left" | "right";
  readonly onChange: (placement: BridgePlacement) => void;
  readonly onPutAway: () => void;
}

const REFUSALS: Readonly<Record<BridgeRefusal, string>> = {
  "off-plate": "A foot or the tip hangs over the plate's edge.",
  "too-steep": "It leans too far to be read. Find its feet a better place.",
  "out-of-range": "The pointer is at the end of its scale.",
};

/** The gauge from the side, what it reads, and its adjustments. */
export function GaugeTray({ placement, reading, heights, side, onChange, onPutAway }: GaugeTrayProps) {
  return (
    <section
      aria-label="Bridge gauge"
      data-gauge=""
      className={`${side === "left" ? "left-2" : "right-2"} absolute bottom-9 z-20 max-h-[calc(100%-3rem)] w-[318px] overflow-y-auto cursor-default touch-auto rounded-lg border border-bench-line bg-bench-2/97 p-2 text-bench-text text-sm shadow-xl`}
      onPointerDown={(event) => event.stopPropagation()}
    >
      {heights && reading && <GaugeElevation heights={heights} placement={placement} reading={reading} />}
      <p role="status" className="flex min-h-10 items-center justify-between gap-2 px-1">
        {reading?.ok ? (
          <>
            <span>
              <b className="text-lg tabular-nums" data-reading={reading.reading}>
                {reading.reading > 0 ? "+" : reading.reading < 0 ? "−" : ""}
                {Math.abs(reading.reading).toFixed(1)} mm
              </b>{" "}
              {reading.reading > 0 ? "high" : reading.reading < 0 ? "deep" : ""}
            </span>
            {Math.abs(reading.seat.tilt) >= 1 && (
              <span className="text-lamp">It leans {reading.seat.tilt.toFixed(0)}°</span>
            )}
          </>
        ) : (
          <span className="text-lamp">{reading ? REFUSALS[reading.code] : "The plate is not here yet."}</span>
        )}
      </p>
      <div className="grid grid-cols-[auto_1fr_auto] items-center gap-x-2">
        <Adjustment
          label="Turn"
          unit="°"
          value={placement.turn}
          min={0}
          max={360}
          step={5}
          onChange={(turn) => onChange(adjusted({ ...placement, turn }))}
        />
        <Adjustment
          label="Reach"
          unit=" mm"
          value={placement.offset}
          min={BRIDGE_GAUGE.offset.least}
          max={BRIDGE_GAUGE.offset.most}
          step={0.5}
          onChange={(offset) => onChange(adjusted({ ...placement, offset }))}
        />
        <Adjustment
          label="Feet apart"
          unit=" mm"
          value={placement.spacing}
          min={BRIDGE_GAUGE.spacing.least}
          max={BRIDGE_GAUGE.spacing.most}
          step={1}
          onChange={(spacing) => onChange(adjusted({ ...placement, spacing }))}
        />
      </div>
      <button
        type="button"
        className="mt-1 h-11 w-full rounded border border-bench-line text-bench-dim"
        onClick={onPutAway}
      >
        Put the gauge away
      </button>
    </section>
  );
}

interface AdjustmentProps {
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly onChange: (value: number) => void;
}

function Adjustment({ label, unit, value, min, max, step, onChange }: AdjustmentProps) {
  return (
    <>
      <span className="px-1 text-bench-dim">{label}</span>
      <input
        type="range"
        aria-label={label}
        aria-valuetext={`${value}${unit}`}
        min={min}
        max={max}
        step={step}
        value={value}
        onChange={(event) => onChange(Number(event.target.value))}
        className="h-11 w-full accent-lamp"
      />
      <span className="w-14 text-right tabular-nums">
        {Math.round(value * 10) / 10}
        {unit}
      </span>
    </>
  );
}
