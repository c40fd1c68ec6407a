"use client";

import { AxisBottom, AxisLeft } from "@visx/axis";
import { scaleLinear, scaleLog } from "@visx/scale";
import { Line, LinePath } from "@visx/shape";
import { AXIS, WIDTH } from "./look";

const HEIGHT = 270;
const PLOT = { left: 58, right: WIDTH - 16, top: 12, bottom: HEIGHT - 48 };
const SAMPLES = 60;
const TICKS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200];

/** A size with its interval, mm; high is null where it is out of sight. */
export interface ChartedSize {
  readonly size: number;
  readonly low: number;
  readonly high: number | null;
}

interface SizeCurveProps {
  readonly label: string;
  /** What is measured, in mm. */
  readonly axis: string;
  /** Sizes that there were, smallest first. */
  readonly finds: readonly { readonly size: number; readonly total: number; readonly found: number }[];
  /** logit p = intercept + slope ln(size). */
  readonly intercept: number;
  readonly slope: number;
  readonly a50: ChartedSize;
  readonly a90: ChartedSize;
}

/** The chance to find against size: fitted curve, its band from 50 to 90 %, and what was found at each size. */
export function SizeCurve({ label, axis, finds, intercept, slope, a50, a90 }: SizeCurveProps) {
  const [least, most] = [finds[0].size / 1.15, finds[finds.length - 1].size * 1.15];
  const x = scaleLog({ domain: [least, most], range: [PLOT.left, PLOT.right], clamp: true });
  const y = scaleLinear({ domain: [0, 1], range: [PLOT.bottom, PLOT.top] });
  const curve = Array.from({ length: SAMPLES + 1 }, (_, n) => {
    const size = least * (most / least) ** (n / SAMPLES);
    return { size, chance: 1 / (1 + Math.exp(-intercept - slope * Math.log(size))) };
  });
  const right = (high: number | null) => x(high ?? most);
  const left = (low: number) => x(Math.max(low, least));
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={label} className="w-full">
      <path
        d={`M${left(a50.low)} ${y(0.5)}L${left(a90.low)} ${y(0.9)}H${right(a90.high)}L${right(a50.high)} ${y(0.5)}Z`}
        className="fill-action"
        fillOpacity={0.16}
      />
      <AxisLeft
        scale={y}
        left={PLOT.left}
        tickValues={[0, 0.25, 0.5, 0.75, 0.9, 1]}
        tickFormat={(share) => `${Math.round(100 * Number(share))} %`}
        {...AXIS}
      />
      <AxisBottom
        scale={x}
        top={PLOT.bottom}
        tickValues={TICKS.filter((size) => size > least && size < most)}
        tickFormat={(size) => String(size)}
        label={axis}
        labelOffset={14}
        {...AXIS}
      />
      <LinePath
        data={curve}
        x={({ size }) => x(size)}
        y={({ chance }) => y(chance)}
        className="stroke-action"
        strokeWidth={2.5}
      />
      {finds.map(({ size, total, found }) => (
        <circle
          key={size}
          cx={x(size)}
          cy={y(found / total)}
          r={2 + 1.6 * Math.sqrt(total)}
          fillOpacity={0.55}
          strokeWidth="1.5"
          className="fill-sheet stroke-ink"
        />
      ))}
      {[
        { at: a50, level: 0.5 },
        { at: a90, level: 0.9 },
      ].map(({ at, level }) =>
        at.size < least || at.size > most ? null : (
          <Line
            key={level}
            from={{ x: x(at.size), y: y(level) }}
            to={{ x: x(at.size), y: PLOT.bottom }}
            strokeDasharray={level === 0.5 ? "2 4" : "7 4"}
            strokeWidth={1.5}
            className="stroke-ink"
          />
        ),
      )}
    </svg>
  );
}
