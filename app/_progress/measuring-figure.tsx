import type { LearnerProgress } from "@/app/_server/progress/progress-of";
import type { SizeKind } from "@/lib/imperfections";
import { type Agreement, dimensionSizing, placing, type Sizing, sizingByKind, wholeTally } from "@/lib/progress";
import { DIMENSION_FACTS } from "@/lib/weld";
import { AgreementChart } from "./charts/agreement-chart";
import { Figure } from "./figure";
import { directionWords } from "./words";

export const SIZES: Readonly<Record<SizeKind, string>> = {
  depth: "Depths of imperfections",
  height: "Heights of imperfections",
  diameter: "Diameters of pores",
  difference: "Differences in level",
  gap: "Gaps",
};

export interface Measured {
  readonly name: string;
  readonly unit: "mm" | "degrees";
  readonly agreement: Agreement;
}

/** How one learner measures sizes, places and dimensions. */
export const MeasuringFigure = ({ tally }: Pick<LearnerProgress, "tally">) => (
  <AgreementFigure rows={measuredOf(tally)} />
);

/** Bias and limits of agreement of what is measured. */
export function AgreementFigure({ rows }: { readonly rows: readonly Measured[] }) {
  const charted = rows
    .filter(({ unit }) => unit === "mm")
    .map(({ name, agreement: { n, bias, limits, needed } }) => ({ name, n, bias, ...limits, needed }));
  return (
    <Figure
      title="Measuring"
      says={
        rows.length === 0 ? (
          <p>What is written against what is true comes here from three measured values of a kind on.</p>
        ) : (
          <ul className="list-disc pl-5">
            {rows.map(({ name, unit, agreement }) => (
              <li key={name}>
                {name}: {directionWords(agreement, unit)}.
              </li>
            ))}
          </ul>
        )
      }
      fileName="measuring"
      table={{
        headers: [
          "What",
          "Unit",
          "Measured",
          "Mean difference",
          "From",
          "To",
          "95 of 100 from",
          "95 of 100 to",
          "More needed",
        ],
        rows: rows.map(({ name, unit, agreement: { n, bias, biasInterval, limits, needed } }) => [
          name,
          unit,
          n,
          hundredths(bias),
          hundredths(biasInterval.low),
          hundredths(biasInterval.high),
          hundredths(limits.low),
          hundredths(limits.high),
          needed,
        ]),
      }}
    >
      {charted.length > 0 && (
        <AgreementChart
          label="Mean difference of what was measured, and its limits of agreement; the table has the figures"
          rows={charted}
        />
      )}
    </Figure>
  );
}

const hundredths = (value: number): number => Math.round(100 * value) / 100;

function measuredOf(tally: LearnerProgress["tally"]): readonly Measured[] {
  const { start, end, across } = placing(tally.types);
  const places = [
    { name: "Where it starts", agreement: start },
    { name: "Where it ends", agreement: end },
    { name: "Place across", agreement: across },
  ];
  return [
    ...measured(sizingByKind(tally.types), dimensionSizing(wholeTally(tally).pieces)),
    ...places.flatMap(({ name, agreement }) => (agreement ? [{ name, unit: "mm" as const, agreement }] : [])),
  ];
}

/** Sizes of imperfections by kind, then dimensions, with their names. */
export const measured = (
  sizes: readonly Sizing[],
  dimensions: ReturnType<typeof dimensionSizing>,
): readonly Measured[] => [
  ...sizes.map(({ size, agreement }) => ({ name: SIZES[size], unit: "mm" as const, agreement })),
  ...dimensions.map(({ dimension, agreement }) => {
    const { name, unit } = DIMENSION_FACTS[dimension];
    return { name, unit, agreement };
  }),
];
