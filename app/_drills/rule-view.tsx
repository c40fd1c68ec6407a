"use client";
import { useMemo } from "react";
import { DrawnMarks } from "@/app/_bench/gauge/drawn-marks";
import { type Drawing, drawRule } from "@/lib/gauges";

/** Half of what is seen of the rule, and half of what the lens shows, mm. */
const AROUND = 26;
const CLOSE = 7.5;
const CLOSE_ABOVE = 5;
/** As far as the figures reach. */
const CLOSE_BELOW = 13;
/** Of the rule below its graduated edge, of the plate above it, and how far the scribed line reaches, mm. */
const RULE_BELOW = 26;
const PLATE_ABOVE = 16;
const SCRIBED = 11;
const PLATE = "#7f878b";

/** A rule laid along a plate, its nought at the plate's end, and a scribed line on the plate to be read off. */
export function RuleView({ position, isTold }: { readonly position: number; readonly isTold: boolean }) {
  const drawing = useMemo(drawRule, []);
  return (
    <div className="drill-picture">
      <svg
        viewBox={`${position - AROUND} ${-PLATE_ABOVE} ${2 * AROUND} ${PLATE_ABOVE + RULE_BELOW}`}
        className="size-full rounded bg-[#e9e5da]"
        role="img"
        aria-label="The steel rule from above, laid along the plate, and a scribed line on the plate"
      >
        <Laid drawing={drawing} position={position} />
      </svg>
      <svg
        viewBox={`${position - CLOSE} ${-CLOSE_ABOVE} ${2 * CLOSE} ${CLOSE_ABOVE + CLOSE_BELOW}`}
        className="block size-full rounded-xl border-[3px] border-[#0c0e0f] bg-[#8d9599] shadow-[0_0_0_2px_#d8d2c2]"
        role="img"
        aria-label="The scale through the lens"
        data-reading-lens=""
      >
        <Laid drawing={drawing} position={position} />
        {isTold && (
          <circle
            cx={position}
            cy="0"
            r="0.9"
            fill="none"
            stroke="#a3231f"
            strokeWidth="2"
            vectorEffect="non-scaling-stroke"
          />
        )}
      </svg>
    </div>
  );
}

/** The plate from its end on, the rule on it, and the line: thin, dark in a light groove. */
function Laid({ drawing, position }: { readonly drawing: Drawing; readonly position: number }) {
  return (
    <g transform="scale(1 -1)">
      <rect x="0" y="-60" width="420" height="120" fill={PLATE} />
      <g strokeLinecap="butt">
        <path d={`M${position} 0.15V${SCRIBED}`} stroke="#d9dcdd" strokeWidth="0.5" />
        <path d={`M${position} 0.15V${SCRIBED}`} stroke="#14181a" strokeWidth="0.16" />
      </g>
      <DrawnMarks marks={drawing.marks} />
      {/* the plate is seen through the hole it is hung up by */}
      {drawing.marks.map(
        (mark) =>
          mark.kind === "shape" &&
          mark.role === "bore" && (
            <polygon key="bore" points={mark.outline.map((corner) => corner.join(",")).join(" ")} fill={PLATE} />
          ),
      )}
    </g>
  );
}
