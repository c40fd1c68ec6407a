"use client";

import { AxisLeft } from "@visx/axis";
import { Group } from "@visx/group";
import { scaleLinear, scalePoint } from "@visx/scale";
import { Line, LinePath } from "@visx/shape";
import { AXIS, WIDTH } from "./look";

const HEIGHT = 230;
const PLOT = { left: 44, right: WIDTH - 12, top: 14, bottom: HEIGHT - 26 };

export interface ChartedMark {
  readonly id: string;
  readonly mark: number;
  readonly passMark: number;
  readonly isPassed: boolean;
  readonly isSat: boolean;
  readonly repeats: string | null;
}

interface HistoryChartProps {
  /** What a screen reader says of it. */
  readonly label: string;
  /** The earliest first; at least one. */
  readonly marks: readonly ChartedMark[];
}

/** Marks of one section in their order, against what each of them needed; a re-sit is joined to what it repeats. */
export function HistoryChart({ label, marks }: HistoryChartProps) {
  const x = scalePoint({ domain: marks.map(({ id }) => id), range: [PLOT.left, PLOT.right], padding: 0.5 });
  const y = scaleLinear({ domain: [0, 100], range: [PLOT.bottom, PLOT.top] });
  const at = (id: string) => x(id) ?? 0;
  const byId = new Map(marks.map((mark) => [mark.id, mark]));
  const half = marks.length > 1 ? x.step() / 2 : 60;
  return (
    <>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={label} className="w-full">
        <AxisLeft scale={y} left={PLOT.left} tickValues={[0, 25, 50, 75, 100]} {...AXIS} />
        {marks.map(({ id, passMark }) => (
          <Line
            key={id}
            from={{ x: at(id) - half, y: y(passMark) }}
            to={{ x: at(id) + half, y: y(passMark) }}
            strokeDasharray="6 4"
            className="stroke-ink"
            strokeWidth={1.5}
          />
        ))}
        <LinePath
          data={[...marks]}
          x={({ id }) => at(id)}
          y={({ mark }) => y(mark)}
          className="stroke-action"
          strokeWidth={2}
        />
        {marks.map(({ id, mark, repeats }) => {
          const before = repeats === null ? undefined : byId.get(repeats);
          if (!before) return null;
          const [from, to] = [at(before.id), at(id)];
          const top = Math.min(y(before.mark), y(mark)) - 34;
          return (
            <path
              key={id}
              d={`M${from} ${y(before.mark) - 8}Q${(from + to) / 2} ${top} ${to} ${y(mark) - 8}`}
              fill="none"
              strokeDasharray="1.5 4"
              strokeLinecap="round"
              strokeWidth={2}
              className="stroke-ink"
            />
          );
        })}
        {marks.map((one) => (
          <Group key={one.id} left={at(one.id)} top={y(one.mark)}>
            {one.isSat && <rect x="-9" y="-9" width="18" height="18" fill="none" className="stroke-ink" />}
            {one.isPassed ? (
              <circle r="5" className="fill-found stroke-sheet" strokeWidth="1.5" />
            ) : (
              <path d="M0-6.5 6.5 0 0 6.5-6.5 0Z" className="fill-sheet stroke-missed" strokeWidth="2" />
            )}
          </Group>
        ))}
        <text x={PLOT.left} y={HEIGHT - 6} fontSize="12" className="fill-ink-2">
          earliest
        </text>
        <text x={PLOT.right} y={HEIGHT - 6} textAnchor="end" fontSize="12" className="fill-ink-2">
          latest
        </text>
      </svg>
      <p className="flex flex-wrap gap-x-5 text-ink-2 text-sm">
        <span>● passed</span>
        <span>◇ not passed</span>
        <span>- - marks needed</span>
        {marks.some(({ isSat }) => isSat) && <span>□ in a sitting</span>}
        {marks.some(({ repeats }) => repeats !== null && byId.has(repeats)) && (
          <span>··· joined to what it repeats</span>
        )}
      </p>
    </>
  );
}
