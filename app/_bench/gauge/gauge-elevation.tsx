"use client";
import { useMemo } from "react";
import { cornerUseOf, isInCorner, type TrayPlacement } from "@/lib/bench";
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
/** What is so near to its highest point, mm, tells where it is tallest. */
const TOP = 5;
/** Around the end of the moving part, half the width of what is seen close to, mm. */
const CLOSE = 5;

/** The gauge from the side, standing on the outline of the work; and, in a corner of the picture, where it meets the weld, close to. */
export function GaugeElevation({ heights, placement, drawing, largest, pose, label }: GaugeElevationProps) {
  const held = useMemo(
    () => pose ?? { along: 0, height: heights.heightAt(placement.x, placement.y) + HELD_OVER, tilt: 0 },
    [pose, heights, placement],
  );
  const { ground, box, rolled } = useMemo(() => {
    const angle = rollOf(placement);
    const corners = cornersOf(largest, "any").map(([u, w]) => toSection(held, u, w));
    const points = corners.map((point) => roll(point, angle));
    const from = Math.min(...points.map(([along]) => along)) - ASIDE;
    const to = Math.max(...points.map(([along]) => along)) + ASIDE;
    const { thickness } = GAUGES[placement.kind];
    const reach = corners.map(([along]) => along);
    const [first, last] = [Math.min(...reach) - BEYOND_PICTURE, Math.max(...reach) + BEYOND_PICTURE];
    const looked = lookAlong(heights, placement, first, last, thickness);
    const seen = isInCorner(placement)
      ? { ...looked, near: goingOn(looked.near), beyond: goingOn(looked.beyond) }
      : looked;
    const metal = seen.near.map((point) => roll(point, angle));
    const lowest = Math.min(...[...metal, ...points].map(([, height]) => height), 0) - BELOW;
    const highest = Math.max(...points.map(([, height]) => height)) + OVER;
    const top = points.filter(([, height]) => height > highest - OVER - TOP).map(([along]) => along);
    const tallest = (Math.min(...top) + Math.max(...top)) / 2;
    return { ground: seen, box: { from, to, lowest, highest, tallest }, rolled: angle };
  }, [heights, placement, largest, held]);
  const tip = tipOf(placement, drawing);
  const end = tip && roll(toSection(held, ...tip), rolled);
  // the upper corner on the side where the gauge stands less high
  const corner = (box.from + box.to) / 2 - box.tallest > OFF_MIDDLE ? "right" : "left";
  const picture = (
    <g transform={`scale(1 -1) rotate(${rolled})`}>
      <path d={groundPath(ground.beyond, ground.under)} fill="#969c9e" />
      <g
        transform={`translate(${held.along} ${held.height}) rotate(${held.tilt})`}
        opacity={pose ? 1 : 0.45}
        data-tilt={held.tilt.toFixed(1)}
      >
        <DrawnMarks marks={drawing.marks} />
      </g>
      <path
        d={groundPath(ground.near, ground.under)}
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
          aria-label="Where it meets the weld, close to"
        >
          {picture}
        </svg>
      )}
    </div>
  );
}

const cornersOf = ({ marks }: Drawing, role: "any" | "moving") =>
  marks.flatMap((mark) => (mark.kind === "shape" && (role === "any" || mark.role === role) ? mark.outline : []));

/** What meets the weld, in the gauge's own frame: the end of its moving part, or a blade's nib; null for all others. */
function tipOf(placement: TrayPlacement, drawing: Drawing): SectionPair | null {
  if (placement.kind === "fillet-blades") return placement.use === "leg" ? [placement.size, 0] : [0, placement.size];
  if (!drawing.lens) return null;
  const corners = cornersOf(drawing, "moving");
  if (placement.kind === "fillet-gauge" && placement.use === "leg") return [Math.min(...corners.map(([u]) => u)), 0];
  return [0, Math.min(...corners.map(([, w]) => w))];
}

/** A leg is measured with the base plate level in the picture: degrees by which what is seen along the bisector is rolled. */
function rollOf(placement: TrayPlacement): number {
  const use = cornerUseOf(placement);
  return use === "base-leg" ? -45 : use === "standing-leg" ? 45 : 0;
}

/** Both plates of a corner go on beyond what is known of them: their far ends are of no matter. */
function goingOn(points: readonly SectionPair[]): readonly SectionPair[] {
  if (points.length === 0) return points;
  const [first, last] = [points[0], points[points.length - 1]];
  const on = (from: SectionPair, away: 1 | -1): SectionPair => [from[0] + away * FURTHER, from[1] + FURTHER];
  return [on(first, -1), ...points, on(last, 1)];
}
const FURTHER = 120;

function roll([along, height]: SectionPair, degrees: number): SectionPair {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [along * cos - height * sin, along * sin + height * cos];
}

/** Outline of the metal; where only its upper side is known, closed far below the picture. */
function groundPath(points: readonly SectionPair[], under: readonly SectionPair[] | null): string {
  if (points.length === 0) return "";
  const lineOf = (chain: readonly SectionPair[]) =>
    chain.map(([along, height]) => `${along.toFixed(3)} ${height.toFixed(3)}`).join("L");
  const line = lineOf(points);
  if (under) return `M${line}L${lineOf([...under].reverse())}Z`;
  return `M${points[0][0].toFixed(3)} -99L${line}L${points[points.length - 1][0].toFixed(3)} -99Z`;
}
