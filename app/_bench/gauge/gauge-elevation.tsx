"use client";
import { type ReactNode, useMemo } from "react";
import type { TrayPlacement } from "@/lib/bench";
import { type Drawing, GAUGES, type Heights, lookAlong, type Pose, type SectionPair, toSection } from "@/lib/gauges";
import { DrawnMarks } from "./drawn-marks";

export interface GaugeElevationProps {
  readonly heights: Heights;
  readonly placement: TrayPlacement;
  readonly drawing: Drawing;
  /** What has to be in the picture while the moving part slides: the drawing with it drawn back. */
  readonly largest: Drawing;
  /** How it stands; null where it finds no rest and is held over the place. */
  readonly pose: Pose | null;
  readonly label: string;
  readonly children?: ReactNode;
}

/** Metal that is seen beyond the gauge on both sides, and room over it, mm. */
const ASIDE = 5;
const OVER = 2;
/** Metal below the lowest point that is drawn, mm. */
const BELOW = 4;

/** A gauge that finds no rest is held so far over the place, mm. */
const HELD_OVER = 3;

/** The gauge from the side, standing on the outline of the work. */
export function GaugeElevation({ heights, placement, drawing, largest, pose, label, children }: GaugeElevationProps) {
  const held = useMemo(
    () => pose ?? { along: 0, height: heights.heightAt(placement.x, placement.y) + HELD_OVER, tilt: 0 },
    [pose, heights, placement],
  );
  const { near, beyond, box } = useMemo(() => {
    const corners = largest.marks.flatMap((mark) => (mark.kind === "shape" ? mark.outline : []));
    const points = corners.map(([u, w]) => toSection(held, u, w));
    const from = Math.min(...points.map(([along]) => along)) - ASIDE;
    const to = Math.max(...points.map(([along]) => along)) + ASIDE;
    const seen = lookAlong(heights, placement, from, to, GAUGES[placement.kind].thickness);
    const lowest = Math.min(...seen.near.map(([, height]) => height), 0) - BELOW;
    const highest = Math.max(...points.map(([, height]) => height)) + OVER;
    return { near: seen.near, beyond: seen.beyond, box: { from, to, lowest, highest } };
  }, [heights, placement, largest, held]);
  return (
    <svg
      viewBox={`${box.from} ${-box.highest} ${box.to - box.from} ${box.highest - box.lowest}`}
      preserveAspectRatio="xMidYMax meet"
      className="block size-full rounded bg-[#e9e5da]"
      role="img"
      aria-label={label}
    >
      <g transform="scale(1 -1)">
        <path d={groundPath(beyond, box.lowest)} fill="#8b9194" />
        <g
          transform={`translate(${held.along} ${held.height}) rotate(${held.tilt})`}
          opacity={pose ? 1 : 0.45}
          data-tilt={held.tilt.toFixed(1)}
        >
          <DrawnMarks marks={drawing.marks} />
        </g>
        <path
          d={groundPath(near, box.lowest)}
          fill="#555c60"
          stroke="#20241f"
          strokeWidth="1"
          vectorEffect="non-scaling-stroke"
        />
      </g>
      {children}
    </svg>
  );
}

/** Outline of the metal, closed along the lower edge of the picture; only its upper side is known. */
function groundPath(points: readonly SectionPair[], lowest: number): string {
  if (points.length === 0) return "";
  const line = points.map(([along, height]) => `${along.toFixed(3)} ${height.toFixed(3)}`).join("L");
  return `M${points[0][0].toFixed(3)} ${lowest}L${line}L${points[points.length - 1][0].toFixed(3)} ${lowest}Z`;
}
