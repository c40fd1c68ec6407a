"use client";
import { useMemo } from "react";
import { GaugeElevation } from "@/app/_bench/gauge/gauge-elevation";
import { ReadingLens } from "@/app/_bench/gauge/reading-lens";
import { STEADY, type StandingTask } from "@/lib/drills";
import { drawGauge, drawnBack, GAUGES, setDown } from "@/lib/gauges";

/** A gauge that stands and is not to be moved, and its scale through the lens. */
export function StandingView({ task, isTold }: { readonly task: StandingTask; readonly isTold: boolean }) {
  const { placement, heights, position, noise, kind } = task;
  const { drawing, largest, pose } = useMemo(() => {
    const standing = setDown(heights, placement, STEADY);
    return {
      drawing: drawGauge(placement, position, noise),
      largest: drawGauge(placement, drawnBack({ placement }), 0),
      pose: standing.seat?.pose ?? null,
    };
  }, [heights, placement, position, noise]);
  return (
    <div className="drill-picture">
      <GaugeElevation
        heights={heights}
        placement={placement}
        drawing={drawing}
        largest={largest}
        pose={pose}
        label={`The ${GAUGES[kind].name.toLowerCase()} from the side, on the outline of the work`}
      />
      {drawing.lens && <ReadingLens drawing={drawing} lens={drawing.lens} isExplained={isTold} />}
    </div>
  );
}
