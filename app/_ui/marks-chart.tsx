import type { Practice, SectionMark } from "@/lib/practice";
import { type MarkedSection, shownMark } from "@/lib/results";
import { SECTION_NAMES } from "./section-names";

const WIDTH = 520;
const HEIGHT = 200;
const LEFT = 34;
const RIGHT = 12;
const TOP = 10;
const BOTTOM = 26;
const MARK_LINES = [0, 25, 50, 75, 100];

interface MarksChartProps {
  readonly section: MarkedSection;
  /** Handed in, the latest first. */
  readonly practices: readonly Pick<Practice, "id" | "marks">[];
}

/** One section over time: marks as a line, and the threshold of each day as a step line. The table says the same in words. */
export function MarksChart({ section, practices }: MarksChartProps) {
  const points = practices.toReversed().flatMap(({ id, marks }) => {
    const mark = marks.find((candidate) => candidate.section === section);
    return mark ? [{ id, mark }] : [];
  });
  const place = (i: number) =>
    points.length === 1
      ? (LEFT + WIDTH - RIGHT) / 2
      : LEFT + 14 + (i * (WIDTH - LEFT - RIGHT - 28)) / (points.length - 1);
  const level = (value: number) => TOP + ((100 - value) * (HEIGHT - TOP - BOTTOM)) / 100;
  const line = points.map(({ mark }, i) => `${place(i)},${level(shownMark(mark.markThousandths))}`).join(" ");
  return (
    <figure className="rounded-md border border-line bg-sheet p-5">
      <figcaption className="font-semibold">{SECTION_NAMES[section]}</figcaption>
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={summarize(section, points)}
        className="mt-2 w-full print:[print-color-adjust:exact]"
      >
        {MARK_LINES.map((value) => (
          <g key={value}>
            <path
              d={`M${LEFT} ${level(value)}H${WIDTH - RIGHT}`}
              className="stroke-paper-2 forced-colors:stroke-[GrayText]"
            />
            <text x={LEFT - 6} y={level(value) + 4} textAnchor="end" fontSize="12" className="fill-ink-2">
              {value}
            </text>
          </g>
        ))}
        <path
          d={thresholdPath(points, level)}
          fill="none"
          strokeDasharray="5 3"
          className="stroke-ink"
          strokeWidth="1.5"
        />
        <polyline points={line} fill="none" className="stroke-action" strokeWidth="2" />
        {points.map(({ id, mark }, i) => (
          <Dot key={id} x={place(i)} y={level(shownMark(mark.markThousandths))} isPassed={mark.isPassed} />
        ))}
        <text x={LEFT} y={HEIGHT - 6} fontSize="12" className="fill-ink-2">
          earliest
        </text>
        <text x={WIDTH - RIGHT} y={HEIGHT - 6} textAnchor="end" fontSize="12" className="fill-ink-2">
          latest
        </text>
      </svg>
      <p className="mt-1 flex flex-wrap gap-x-5 text-sm text-ink-2">
        <span>● passed</span>
        <span>◇ not passed</span>
        <span>- - marks needed</span>
      </p>
    </figure>
  );
}

function Dot({ x, y, isPassed }: { readonly x: number; readonly y: number; readonly isPassed: boolean }) {
  if (isPassed) return <circle cx={x} cy={y} r="5" className="fill-found stroke-sheet" strokeWidth="1.5" />;
  return <path d={`M${x} ${y - 7}l7 7-7 7-7-7Z`} className="fill-sheet stroke-missed" strokeWidth="2" />;
}

type Point = { readonly mark: SectionMark };

function thresholdPath(points: readonly Point[], level: (value: number) => number): string {
  const step = (WIDTH - LEFT - RIGHT) / points.length;
  return points
    .map(({ mark }, i) => `${i === 0 ? "M" : "L"}${LEFT + i * step} ${level(mark.passMark)}H${LEFT + (i + 1) * step}`)
    .join("");
}

function summarize(section: MarkedSection, points: readonly Point[]): string {
  const passed = points.filter(({ mark }) => mark.isPassed).length;
  const latest = points.at(-1)?.mark;
  const end = latest ? ` Latest ${shownMark(latest.markThousandths).toFixed(1)}, needed ${latest.passMark}.` : "";
  return `${SECTION_NAMES[section]}: ${passed} of ${points.length} passed.${end} The table below has every mark.`;
}
