"use client";

import { AxisBottom } from "@visx/axis";
import { Group } from "@visx/group";
import { scaleBand, scaleLinear } from "@visx/scale";
import { Line } from "@visx/shape";
import { AXIS, WIDTH } from "./look";

const ROW = 30;
const PLOT = { left: 292, right: WIDTH - 128 };

export interface ChartedAgreement {
  readonly name: string;
  readonly n: number;
  /** All in mm, written less true. */
  readonly bias: number;
  readonly low: number;
  readonly high: number;
  readonly needed: number;
}

interface AgreementChartProps {
  readonly label: string;
  /** At least one. */
  readonly rows: readonly ChartedAgreement[];
}

/** What was written against what is true: the mean difference, and between which limits 95 of 100 lie. */
export function AgreementChart({ label, rows }: AgreementChartProps) {
  const bottom = rows.length * ROW + 6;
  const reach = 1.1 * Math.max(0.1, ...rows.flatMap(({ low, high }) => [Math.abs(low), Math.abs(high)]));
  const x = scaleLinear({ domain: [-reach, reach], range: [PLOT.left, PLOT.right] });
  const y = scaleBand({ domain: rows.map(({ name }) => name), range: [0, bottom - 6] });
  return (
    <svg viewBox={`0 0 ${WIDTH} ${bottom + 44}`} role="img" aria-label={label} className="w-full">
      <Line from={{ x: x(0), y: 0 }} to={{ x: x(0), y: bottom }} className="stroke-ink" strokeWidth={1.5} />
      {rows.map(({ name, n, bias, low, high, needed }) => (
        <Group key={name} top={(y(name) ?? 0) + ROW / 2}>
          <text x={PLOT.left - 12} y="4" textAnchor="end" fontSize="12.5" className="fill-ink">
            {name}
          </text>
          <Line
            from={{ x: x(low), y: 0 }}
            to={{ x: x(high), y: 0 }}
            strokeWidth={2}
            strokeDasharray={needed === 0 ? undefined : "3 3"}
            className="stroke-action"
          />
          {[low, high].map((end) => (
            <Line
              key={end}
              from={{ x: x(end), y: -6 }}
              to={{ x: x(end), y: 6 }}
              strokeWidth={2}
              className="stroke-action"
            />
          ))}
          <path
            d={`M${x(bias)}-6l6 6-6 6-6-6Z`}
            strokeWidth="2"
            className={needed === 0 ? "fill-action stroke-sheet" : "fill-sheet stroke-action"}
          />
          <text x={PLOT.right + 12} y="4" fontSize="12.5" className="fill-ink-2">
            {n}
            {needed > 0 ? `, ${needed} more` : " measured"}
          </text>
        </Group>
      ))}
      <AxisBottom
        scale={x}
        top={bottom}
        numTicks={5}
        label="written less true, mm: too small to the left, too large to the right"
        {...AXIS}
      />
    </svg>
  );
}
