"use client";
import { cutSection } from "@/lib/gauges";
import { type SurfaceFace, sideLetter } from "@/lib/weld";
import { type Frame, leftIn, metalPath, topIn } from "../gauge/section-drawing";
import type { FaceHeights } from "../viewer/protocol";
import { withGrids } from "../viewer/with-grids";

/** A measure drawn on the section: between two heights at a place across, mm. */
export interface ProfileMark {
  readonly y: number;
  readonly from: number;
  readonly to: number;
  readonly label: string;
}

export interface ProfilePanelProps {
  readonly face: SurfaceFace;
  /** Heights of that face; null while they are not here yet. */
  readonly surface: FaceHeights | null;
  /** Place of the section along the weld and its ends across, mm. */
  readonly x: number;
  readonly y0: number;
  readonly y1: number;
  readonly marks?: readonly ProfileMark[];
}

const WIDTH = 520;
const LEAST_HEIGHT = 150;
const MARGIN_MM = 1.2;

/** The weld cut across at one place, to one scale both ways, on a grid of whole mm. */
export function ProfilePanel({ face, surface, x, y0, y1, marks = [] }: ProfilePanelProps) {
  if (!surface) return <p className="p-3 text-ink-2 text-sm">The section is drawn as soon as the plate is here.</p>;
  const points = cutSection(withGrids(face, surface), { x, y: 0, turn: 90, from: y0, to: y1 }, 0.0625);
  const heights = [...points.map(({ height }) => height), ...marks.flatMap(({ from, to }) => [from, to]), 0];
  const low = Math.min(...heights) - MARGIN_MM;
  const high = Math.max(...heights) + MARGIN_MM;
  const perMm = WIDTH / (y1 - y0);
  const height = Math.max(LEAST_HEIGHT, (high - low) * perMm);
  const frame: Frame = { width: WIDTH, height, from: y0, perMm, middle: (low + high) / 2 };
  const lowest = frame.middle - height / perMm / 2;
  const highest = frame.middle + height / perMm / 2;
  return (
    <figure>
      <svg
        viewBox={`0 0 ${WIDTH} ${height}`}
        className="block w-full rounded bg-sheet"
        role="img"
        aria-label={`Section at ${x.toFixed(1)} mm. ${marks.map(({ label }) => label).join(", ")}`}
      >
        {wholesBetween(y0, y1).map((y) => (
          <path
            key={`y${y}`}
            d={`M${leftIn(frame, y)} 0V${height}`}
            stroke="#cfc8b8"
            strokeWidth={y % 5 === 0 ? 1.1 : 0.5}
          />
        ))}
        {wholesBetween(lowest, highest).map((z) => (
          <path
            key={`z${z}`}
            d={`M0 ${topIn(frame, z)}H${WIDTH}`}
            stroke="#cfc8b8"
            strokeWidth={z % 5 === 0 ? 1.1 : 0.5}
          />
        ))}
        <path d={metalPath(frame, points)} fill="#8b9092" stroke="#20241f" strokeWidth="1.5" />
        {wholesBetween(y0, y1)
          .filter((y) => y % 5 === 0)
          .map((y) => (
            <text key={y} x={leftIn(frame, y) + 3} y={height - 5} fontSize="11" fill="#20241f">
              {y === 0 ? "0" : `${Math.abs(y)} ${sideLetter(face, y)}`}
            </text>
          ))}
        {marks.map((mark) => (
          <Measure key={`${mark.y} ${mark.label}`} frame={frame} mark={mark} />
        ))}
      </svg>
      <figcaption className="mt-1 text-ink-2 text-xs">
        Section at {x.toFixed(1)} mm from the datum; grid 1 mm, heights and widths to the same scale.
      </figcaption>
    </figure>
  );
}

/** Two levels and an arrow between them, with its value in words. */
function Measure({ frame, mark }: { frame: Frame; mark: ProfileMark }) {
  const left = leftIn(frame, mark.y);
  const from = topIn(frame, mark.from);
  const to = topIn(frame, mark.to);
  const isRightHalf = left > frame.width / 2;
  const textX = left + (isRightHalf ? -10 : 10);
  return (
    <g stroke="#8f2d2a" strokeWidth="1.6" fill="none">
      <path d={`M${left - 26} ${from}H${left + 26}`} strokeDasharray="4 3" />
      <path d={`M${left - 12} ${to}H${left + 12}`} />
      <path d={`M${left} ${from}V${to}`} strokeWidth="2.4" />
      <text
        x={textX}
        y={Math.min(from, to) - 7}
        textAnchor={isRightHalf ? "end" : "start"}
        fontSize="13"
        fontWeight="600"
        fill="#8f2d2a"
        stroke="#fffdf8"
        strokeWidth="3.5"
        paintOrder="stroke"
      >
        {mark.label}
      </text>
    </g>
  );
}

function wholesBetween(from: number, to: number): number[] {
  const first = Math.ceil(from);
  return Array.from({ length: Math.max(0, Math.floor(to) - first + 1) }, (_, n) => first + n);
}
