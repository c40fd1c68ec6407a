"use client";

import { AxisBottom } from "@visx/axis";
import { Group } from "@visx/group";
import { scaleBand, scaleLinear } from "@visx/scale";
import { Line } from "@visx/shape";
import { AXIS, WIDTH } from "./look";

const ROW = 28;
const PLOT = { left: 292, right: WIDTH - 128 };

export interface ChartedShare {
  readonly name: string;
  readonly count: number;
  readonly of: number;
  /** 0 to 1. */
  readonly share: number;
  readonly low: number;
  readonly high: number;
  /** How many more it takes until it says something. */
  readonly needed: number;
}

interface ShareChartProps {
  readonly label: string;
  readonly axis: string;
  readonly rows: readonly ChartedShare[];
}

/** Shares with their 95 % intervals, a row each; what is not enough yet is hollow, and says how many more it takes. */
export function ShareChart({ label, axis, rows }: ShareChartProps) {
  const bottom = rows.length * ROW + 6;
  const x = scaleLinear({ domain: [0, 1], range: [PLOT.left, PLOT.right] });
  const y = scaleBand({ domain: rows.map(({ name }) => name), range: [0, bottom - 6] });
  return (
    <svg viewBox={`0 0 ${WIDTH} ${bottom + 44}`} role="img" aria-label={label} className="w-full">
      {[0.25, 0.5, 0.75].map((share) => (
        <Line key={share} from={{ x: x(share), y: 0 }} to={{ x: x(share), y: bottom }} className="stroke-paper-2" />
      ))}
      {rows.map(({ name, count, of, share, low, high, needed }) => (
        <Group key={name} top={(y(name) ?? 0) + ROW / 2}>
          <text x={PLOT.left - 12} y="4" textAnchor="end" fontSize="12.5" className="fill-ink">
            {name}
          </text>
          <Line
            from={{ x: x(low), y: 0 }}
            to={{ x: x(high), y: 0 }}
            strokeWidth={needed === 0 ? 4 : 1.5}
            strokeDasharray={needed === 0 ? undefined : "3 3"}
            className="stroke-action"
          />
          <circle
            cx={x(share)}
            r="5"
            strokeWidth="2"
            className={needed === 0 ? "fill-action stroke-sheet" : "fill-sheet stroke-action"}
          />
          <text x={PLOT.right + 12} y="4" fontSize="12.5" className="fill-ink-2">
            {count} of {of}
            {needed > 0 && `, ${needed} more`}
          </text>
        </Group>
      ))}
      <AxisBottom
        scale={x}
        top={bottom}
        tickValues={[0, 0.25, 0.5, 0.75, 1]}
        tickFormat={(share) => `${Math.round(100 * Number(share))} %`}
        label={axis}
        {...AXIS}
      />
    </svg>
  );
}
