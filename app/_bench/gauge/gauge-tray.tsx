"use client";
import { adjusted, BRIDGE_GAUGE, type BridgePlacement, type BridgeReading, type BridgeRefusal } from "@/lib/gauges";
import type { FaceHeights } from "../viewer/protocol";
import { GaugeElevation } from "./gauge-elevation";

/** Corner of the bench in which the panel lies. */
export type GaugeCorner = `${"top" | "bottom"}-${"left" | "right"}`;

/** Clear of the rule along the lower edge and of the words in the upper corner. */
const CORNERS: Readonly<Record<GaugeCorner, string>> = {
  "top-left": "top-11 left-2",
  "top-right": "top-11 right-2",
  "bottom-left": "bottom-9 left-2",
  "bottom-right": "bottom-9 right-2",
};

export interface GaugeTrayProps {
  readonly placement: BridgePlacement;
  readonly reading: BridgeReading | null;
  readonly heights: FaceHeights | null;
  readonly corner: GaugeCorner;
  readonly onChange: (placement: BridgePlacement) => void;
  readonly onOtherSide: () => void;
  readonly onPutAway: () => void;
}

const REFUSALS: Readonly<Record<BridgeRefusal, string>> = {
  "off-plate": "A foot or the tip hangs over the plate's edge.",
  "too-steep": "It leans too far to be read. Find its feet a better place.",
  "out-of-range": "The pointer is at the end of its scale.",
};

/** The gauge from the side, what it reads, and its adjustments: a low panel that leaves the weld in sight. */
export function GaugeTray({ placement, reading, heights, corner, onChange, onOtherSide, onPutAway }: GaugeTrayProps) {
  const button = "min-h-11 flex-1 rounded border border-bench-line px-2 text-bench-dim hover:bg-bench-line";
  return (
    <section
      aria-label="Bridge gauge"
      data-gauge=""
      className={`${CORNERS[corner]} gauge-panel absolute z-20 flex max-h-[calc(100%-5rem)] w-[min(28rem,calc(100%-1rem))] cursor-default touch-auto flex-wrap gap-x-3 overflow-y-auto rounded-lg border border-bench-line bg-bench-2/97 p-2 text-bench-text text-sm shadow-xl`}
      onPointerDown={(event) => event.stopPropagation()}
    >
      <div className="w-[13rem] grow">
        {heights && reading && <GaugeElevation heights={heights} placement={placement} reading={reading} />}
        <Reading reading={reading} />
      </div>
      <div className="grid w-[13rem] grow grid-cols-[auto_1fr_auto] content-start items-center gap-x-2">
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
      <div className="flex w-full gap-2 pt-1">
        <button type="button" className={button} onClick={onOtherSide}>
          To the {corner.endsWith("left") ? "right" : "left"} side
        </button>
        <button type="button" className={button} onClick={onPutAway}>
          Put the gauge away
        </button>
      </div>
    </section>
  );
}

function Reading({ reading }: { reading: BridgeReading | null }) {
  return (
    <p role="status" className="flex min-h-9 flex-wrap items-center gap-x-2 px-1 pt-1 leading-tight">
      {reading?.ok ? (
        <>
          <span>
            <b className="text-lg tabular-nums" data-reading={reading.reading}>
              {reading.reading > 0 ? "+" : reading.reading < 0 ? "−" : ""}
              {Math.abs(reading.reading).toFixed(1)} mm
            </b>{" "}
            {againstFeet(reading.reading)}
          </span>
          {Math.abs(reading.seat.tilt) >= 1 && (
            <span className="text-lamp">It leans {reading.seat.tilt.toFixed(0)}°</span>
          )}
        </>
      ) : (
        <span className="text-lamp">{reading ? REFUSALS[reading.code] : "The plate is not here yet."}</span>
      )}
    </p>
  );
}

function againstFeet(reading: number): string {
  if (reading === 0) return "level with the feet";
  return reading > 0 ? "over the feet" : "below the feet";
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
      <span className="text-bench-dim text-xs">{label}</span>
      <input
        type="range"
        aria-label={label}
        aria-valuetext={`${value}${unit}`}
        min={min}
        max={max}
        step={step}
        value={value}
        onChange={(event) => onChange(Number(event.target.value))}
        className="h-10 w-full min-w-0 accent-lamp pointer-coarse:h-11"
      />
      <span className="w-14 whitespace-nowrap text-right text-xs tabular-nums">
        {Math.round(value * 10) / 10}
        {unit}
      </span>
    </>
  );
}
