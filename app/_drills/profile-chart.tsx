import type { Measured } from "@/lib/drills";
import { spell } from "./read-answer";

export interface ProfileChartProps {
  readonly profile: readonly Measured[];
  readonly truth: Measured;
  readonly found: Measured;
  /** Places at which the gauge was read, mm. */
  readonly read: readonly number[];
}

const WIDTH = 600;
const HEIGHT = 190;
const BOX = { left: 42, right: 16, top: 28, bottom: 34 } as const;

/** What was sought, along the weld; the true largest, what was said to be it, and where the gauge was read. */
export function ProfileChart({ profile, truth, found, read }: ProfileChartProps) {
  const [from, to] = [0, profile[profile.length - 1].at + profile[0].at];
  const most = Math.ceil(Math.max(truth.value, found.value) + 0.2);
  const least = Math.min(0, Math.floor(found.value));
  const left = (at: number) => BOX.left + ((at - from) / (to - from)) * (WIDTH - BOX.left - BOX.right);
  const top = (value: number) =>
    HEIGHT - BOX.bottom - ((value - least) / (most - least)) * (HEIGHT - BOX.top - BOX.bottom);
  const line = profile.map(({ at, value }) => `${left(at).toFixed(1)} ${top(value).toFixed(1)}`).join("L");
  const values = Array.from({ length: most - least + 1 }, (_, n) => least + n);
  const places = Array.from({ length: Math.floor((to - from) / 30) + 1 }, (_, n) => 30 * n);
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      className="w-full"
      role="img"
      aria-label={`Along the weld: the largest ${spell(truth.value)} mm at ${spell(truth.at, 1)} mm, found ${spell(found.value)} mm at ${spell(found.at, 1)} mm`}
    >
      {values.map((value) => (
        <g key={value}>
          <path d={`M${BOX.left} ${top(value)}H${WIDTH - BOX.right}`} className="stroke-line" strokeWidth="1" />
          <text x={BOX.left - 7} y={top(value) + 5} fontSize="14" textAnchor="end" className="fill-ink-2">
            {spell(value)}
          </text>
        </g>
      ))}
      {places.map((at) => (
        <text key={at} x={left(at)} y={HEIGHT - 8} fontSize="14" textAnchor="middle" className="fill-ink-2">
          {at}
        </text>
      ))}
      <text x={BOX.left - 7} y="14" fontSize="14" textAnchor="end" className="fill-ink-2">
        mm
      </text>
      <path d={`M${line}`} fill="none" className="stroke-action" strokeWidth="2.2" />
      {read.map((at) => (
        <path key={at} d={`M${left(at)} ${HEIGHT - BOX.bottom + 2}v9`} className="stroke-ink" strokeWidth="2" />
      ))}
      <g className="stroke-found" fill="none" strokeWidth="2.4">
        <circle cx={left(truth.at)} cy={top(truth.value)} r="6" />
      </g>
      <Word at={left(truth.at)} up={top(truth.value) - 11} text="largest" look="fill-found" />
      <path
        d={`M${left(found.at)} ${top(found.value) - 7}l7 7l-7 7l-7 -7z`}
        fill="none"
        className="stroke-partly"
        strokeWidth="2.4"
      />
      {Math.abs(left(found.at) - left(truth.at)) > 60 && (
        <Word at={left(found.at)} up={top(found.value) - 12} text="yours" look="fill-partly" />
      )}
    </svg>
  );
}

interface WordProps {
  readonly at: number;
  readonly up: number;
  readonly text: string;
  readonly look: string;
}

const Word = ({ at, up, text, look }: WordProps) => (
  <text
    x={Math.min(WIDTH - 30, Math.max(BOX.left + 24, at))}
    y={up}
    fontSize="14"
    fontWeight="600"
    textAnchor="middle"
    className={`${look} stroke-sheet`}
    strokeWidth="4"
    paintOrder="stroke"
  >
    {text}
  </text>
);
