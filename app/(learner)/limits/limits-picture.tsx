import { useId } from "react";
import { type ComparedSet, type Comparison, OUTCOME_NAMES, type Outcome, QUANTITY_FACTS } from "@/lib/criteria";
import { shortName, sizeText, stretchesText } from "./limits-words";
import { outcomePath } from "./outcome-sign";

const WIDTH = 720;
const SIDE = 16;
const TOP = 34;
const ROW = 44;
const BAR = 18;
const BAR_AT = 20;
/** Steps between the figures of the axis: the first that makes no more than six of them. */
const TICK_STEPS = [0.1, 0.2, 0.25, 0.5, 1, 2, 2.5, 5, 10, 20, 25, 30, 50, 100];
const OUTCOMES_DRAWN: readonly Outcome[] = ["accept", "reject", "cannot-be-judged", "not-covered"];

/** A bar a set: where on the axis it accepts and where not, and the measured size as a line through all of them. */
export function LimitsPicture({ comparison }: { readonly comparison: Comparison }) {
  const { axis, size, end, sets } = comparison;
  const id = useId();
  const bottom = TOP + ROW * sets.length;
  const place = (value: number) => SIDE + (value / end) * (WIDTH - 2 * SIDE);
  const measured = axis !== null && size !== null ? { x: place(size), text: sizeText(size, axis) } : null;
  return (
    <figure className="min-w-0">
      <svg
        viewBox={`0 0 ${WIDTH} ${bottom + (axis === null ? 4 : 44)}`}
        role="img"
        aria-label={summaryOf(comparison)}
        className="w-full print:[print-color-adjust:exact]"
        data-picture
      >
        <Patterns id={id} />
        {sets.map((set, n) => (
          <Bar key={set.criteria.id} set={set} y={TOP + n * ROW + BAR_AT} place={place} id={id} />
        ))}
        {measured && (
          <g data-measured={size}>
            <path d={`M${measured.x} ${TOP - 10}V${bottom}`} className="stroke-ink-2" />
            {sets.map(({ criteria }, n) => (
              <Crossing key={criteria.id} x={measured.x} y={TOP + n * ROW + BAR_AT} />
            ))}
            <path d={`M${measured.x - 6} ${TOP - 12}h12l-6 8Z`} className="fill-ink" />
            <text
              x={Math.min(Math.max(measured.x, SIDE + 70), WIDTH - SIDE - 70)}
              y={TOP - 18}
              textAnchor="middle"
              fontSize="14"
              fontWeight="600"
              className="fill-ink"
            >
              measured {measured.text}
            </text>
          </g>
        )}
        {sets.map((set, n) => (
          <Label key={set.criteria.id} comparison={comparison} set={set} y={TOP + n * ROW + BAR_AT - 6} />
        ))}
        {axis !== null && <Axis comparison={comparison} axis={axis} y={bottom} place={place} />}
      </svg>
      <figcaption className="mt-2 flex flex-wrap gap-x-5 gap-y-1 text-ink-2 text-sm">
        {OUTCOMES_DRAWN.map((outcome) => (
          <span key={outcome} className="inline-flex items-center gap-1.5">
            <svg viewBox="0 0 28 14" className="h-3.5 w-7" aria-hidden="true">
              <rect x="0.75" y="0.75" width="26.5" height="12.5" {...fillOf(outcome, id)} />
            </svg>
            {OUTCOME_NAMES[outcome]}
          </span>
        ))}
        <span className="inline-flex items-center gap-1.5">
          <svg viewBox="0 0 10 14" className="h-3.5 w-2.5" aria-hidden="true">
            <path d="M5 0V14" className="stroke-ink" strokeWidth="2.5" />
          </svg>
          measured
        </span>
      </figcaption>
    </figure>
  );
}

/** Told apart by their pattern, so that they stay so in grey: white, dark stripes, dots, and a broken edge round nothing. */
const fillOf = (outcome: Outcome, id: string) => {
  if (outcome === "accept") return { className: "fill-white stroke-ink", strokeWidth: 1.5 };
  if (outcome === "not-covered")
    return { fill: "none", className: "stroke-ink-2", strokeWidth: 1.5, strokeDasharray: "4 3" };
  return { fill: `url(#${id}-${outcome})`, className: "stroke-ink", strokeWidth: 1.5 };
};

function Patterns({ id }: { readonly id: string }) {
  return (
    <defs>
      <pattern id={`${id}-reject`} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect width="6" height="6" className="fill-[#e3b9b0] forced-colors:fill-[Canvas]" />
        <path d="M0 0V6" className="stroke-missed" strokeWidth="6" />
      </pattern>
      <pattern id={`${id}-cannot-be-judged`} width="7" height="7" patternUnits="userSpaceOnUse">
        <rect width="7" height="7" className="fill-white" />
        <circle cx="3.5" cy="3.5" r="1.5" className="fill-ink-2" />
      </pattern>
    </defs>
  );
}

interface BarProps {
  readonly set: ComparedSet;
  readonly y: number;
  readonly place: (value: number) => number;
  readonly id: string;
}

function Bar({ set: { criteria, stretches }, y, place, id }: BarProps) {
  return (
    <g data-bar={criteria.id}>
      {stretches.map(({ from, to, outcome }) => (
        <rect
          key={from}
          x={place(from)}
          y={y}
          width={place(to) - place(from)}
          height={BAR}
          data-outcome={outcome}
          data-from={from}
          data-to={to}
          {...fillOf(outcome, id)}
        />
      ))}
    </g>
  );
}

/** Where the line of the size crosses a bar: thick, and apart from the stripes. */
function Crossing({ x, y }: { readonly x: number; readonly y: number }) {
  return (
    <>
      <path d={`M${x} ${y}v${BAR}`} className="stroke-sheet" strokeWidth="8" />
      <path d={`M${x} ${y - 3}v${BAR + 6}`} className="stroke-ink" strokeWidth="3.5" />
    </>
  );
}

interface LabelProps {
  readonly comparison: Comparison;
  readonly set: ComparedSet;
  readonly y: number;
}

/** Over its bar: sign, outcome and name on the left, how far it accepts on the right; the line of the size goes behind. */
function Label({ comparison, set: { criteria, sentence, stretches }, y }: LabelProps) {
  const halo = { paintOrder: "stroke", strokeWidth: 5, strokeLinejoin: "round" } as const;
  return (
    <g fontSize="14">
      <g transform={`translate(${SIDE} ${y - 11})`}>
        <path d={outcomePath(sentence.outcome)} fill="none" className="stroke-sheet" strokeWidth="7" />
        <path d={outcomePath(sentence.outcome)} fill="none" className="stroke-ink" strokeWidth="2.2" />
      </g>
      <text x={SIDE + 18} y={y} className="fill-ink stroke-sheet" {...halo}>
        <tspan fontWeight="600">{shortName(criteria)}</tspan>: {OUTCOME_NAMES[sentence.outcome]}
      </text>
      <text x={WIDTH - SIDE} y={y} textAnchor="end" className="fill-ink-2 stroke-sheet" {...halo}>
        {stretchesText(stretches, comparison.axis)}
      </text>
    </g>
  );
}

interface AxisProps {
  readonly comparison: Comparison;
  readonly axis: NonNullable<Comparison["axis"]>;
  readonly y: number;
  readonly place: (value: number) => number;
}

function Axis({ comparison: { end }, axis, y, place }: AxisProps) {
  const { name, sign, unit } = QUANTITY_FACTS[axis];
  const step = TICK_STEPS.find((one) => end / one <= 6) ?? end;
  const values = Array.from({ length: Math.floor(end / step + 1e-9) + 1 }, (_, n) => n * step);
  const title = `${name}${sign === name ? "" : `, ${sign}`}${unit === "mm" ? ", in mm" : ", in degrees"}`;
  return (
    <g fontSize="14" className="fill-ink-2">
      <path d={`M${SIDE} ${y}H${WIDTH - SIDE}`} className="stroke-ink-2" />
      {values.map((value) => (
        <g key={value}>
          <path d={`M${place(value)} ${y}v5`} className="stroke-ink-2" />
          <text x={place(value)} y={y + 20} textAnchor="middle">
            {Number(value.toFixed(3))}
          </text>
        </g>
      ))}
      <text x={WIDTH / 2} y={y + 38} textAnchor="middle">
        {title}
      </text>
    </g>
  );
}

function summaryOf({ axis, size, sets }: Comparison): string {
  const measured = axis !== null && size !== null ? `Measured ${sizeText(size, axis)}. ` : "";
  const bars = sets.map(
    ({ criteria, sentence, stretches }) =>
      `${shortName(criteria)}: ${OUTCOME_NAMES[sentence.outcome]}; ${stretchesText(stretches, axis)}.`,
  );
  return `${measured}${bars.join(" ")} The table below has every limit.`;
}
