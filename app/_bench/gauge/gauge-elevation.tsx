"use client";
import { useMemo } from "react";
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
}

/** Room beside and over the gauge, mm. */
const ASIDE = 4;
const OVER = 2;
/** Metal below the lowest point that is drawn, mm. */
const BELOW = 4;
/** The work goes on beyond the picture on both sides, whatever its shape, mm. */
const BEYOND_PICTURE = 60;
/** A gauge that finds no rest is held so far over the place, mm. */
const HELD_OVER = 3;
/** The gauge stands to the side of the picture that leaves the other for the view close to. */
const ALIGNED = { left: "xMax", right: "xMin" } as const;
const OFF_MIDDLE = 5;
/** Around the end of the moving part, half the width of what is seen close to, mm. */
const CLOSE = 5;

/** The gauge from the side, standing on the outline of the work; and, in a corner, where its moving part ends, close to. */
export function GaugeElevation({ heights, placement, drawing, largest, pose, label }: GaugeElevationProps) {
  const held = useMemo(
    () => pose ?? { along: 0, height: heights.heightAt(placement.x, placement.y) + HELD_OVER, tilt: 0 },
    [pose, heights, placement],
  );
  const { ground, box } = useMemo(() => {
    const points = cornersOf(largest, "any").map(([u, w]) => toSection(held, u, w));
    const from = Math.min(...points.map(([along]) => along)) - ASIDE;
    const to = Math.max(...points.map(([along]) => along)) + ASIDE;
    const { thickness } = GAUGES[placement.kind];
    const seen = lookAlong(heights, placement, from - BEYOND_PICTURE, to + BEYOND_PICTURE, thickness);
    const lowest = Math.min(...seen.near.map(([, height]) => height), 0) - BELOW;
    const highest = Math.max(...points.map(([, height]) => height)) + OVER;
    return { ground: seen, box: { from, to, lowest, highest } };
  }, [heights, placement, largest, held]);
  const end = endOf(drawing, held);
  // the upper corner on the side where the gauge stands less high
  const corner = (box.from + box.to) / 2 - held.along > OFF_MIDDLE ? "right" : "left";
  const picture = (
    <g transform="scale(1 -1)">
      <path d={groundPath(ground.beyond)} fill="#969c9e" />
      <g
        transform={`translate(${held.along} ${held.height}) rotate(${held.tilt})`}
        opacity={pose ? 1 : 0.45}
        data-tilt={held.tilt.toFixed(1)}
      >
        <DrawnMarks marks={drawing.marks} />
      </g>
      <path
        d={groundPath(ground.near)}
        fill="#555c60"
        stroke="#20241f"
        strokeWidth="1"
        vectorEffect="non-scaling-stroke"
      />
    </g>
  );
  return (
    <div className="relative size-full min-w-0">
      <svg
        viewBox={`${box.from} ${-box.highest} ${box.to - box.from} ${box.highest - box.lowest}`}
        preserveAspectRatio={`${end ? ALIGNED[corner] : "xMid"}YMax meet`}
        className="absolute inset-0 size-full rounded bg-[#e9e5da]"
        role="img"
        aria-label={label}
      >
        {picture}
      </svg>
      {end && (
        <svg
          viewBox={`${end[0] - CLOSE} ${-end[1] - CLOSE} ${2 * CLOSE} ${2 * CLOSE}`}
          style={{ [corner]: "0.25rem" }}
          className="gauge-close-up absolute top-1 rounded-full border-2 border-[#0c0e0f] bg-[#e9e5da]"
          role="img"
          aria-label="The end of its moving part, close to"
        >
          {picture}
        </svg>
      )}
    </div>
  );
}

const cornersOf = ({ marks }: Drawing, role: "any" | "moving") =>
  marks.flatMap((mark) => (mark.kind === "shape" && (role === "any" || mark.role === role) ? mark.outline : []));

/** Where the moving part ends; null where nothing is moved by itself. */
function endOf(drawing: Drawing, pose: Pose): SectionPair | null {
  if (!drawing.lens) return null;
  const lowest = Math.min(...cornersOf(drawing, "moving").map(([, w]) => w));
  return toSection(pose, 0, lowest);
}

/** Outline of the metal, closed far below the picture; only its upper side is known. */
function groundPath(points: readonly SectionPair[]): string {
  if (points.length === 0) return "";
  const line = points.map(([along, height]) => `${along.toFixed(3)} ${height.toFixed(3)}`).join("L");
  return `M${points[0][0].toFixed(3)} -99L${line}L${points[points.length - 1][0].toFixed(3)} -99Z`;
}
