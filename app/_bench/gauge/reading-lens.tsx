import type { Drawing, LensBox } from "@/lib/gauges";
import { DrawnMarks } from "./drawn-marks";

export interface ReadingLensProps {
  readonly drawing: Drawing;
  readonly lens: LensBox;
  /** Whether the line by which it is read is ringed. */
  readonly isExplained: boolean;
}

/** The scale enlarged, as through a reading lens held over it. */
export function ReadingLens({ drawing, lens, isExplained }: ReadingLensProps) {
  const [u0, w0] = lens.from;
  const [u1, w1] = lens.to;
  return (
    <svg
      viewBox={`${u0} ${-w1} ${u1 - u0} ${w1 - w0}`}
      className="block size-full rounded-xl border-[3px] border-[#0c0e0f] bg-[#8d9599] shadow-[0_0_0_2px_#d8d2c2]"
      role="img"
      aria-label="The scale through the lens"
      data-reading-lens=""
    >
      <g transform="scale(1 -1)">
        <DrawnMarks marks={drawing.marks} />
        {isExplained && (
          <circle
            cx={lens.readAt[0]}
            cy={lens.readAt[1]}
            r="0.75"
            fill="none"
            stroke="#a3231f"
            strokeWidth="2"
            vectorEffect="non-scaling-stroke"
          />
        )}
      </g>
    </svg>
  );
}
