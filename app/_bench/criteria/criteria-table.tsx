import {
  type Criterion,
  describeLimit,
  describeRange,
  describeSectionRule,
  describeSumRule,
  EVIDENCE_NAMES,
  QUANTITY_FACTS,
  type SectionRule,
  SHORT_IMPERFECTION,
  SYMBOL_FACTS,
} from "@/lib/criteria";

interface CriteriaTableProps {
  readonly rows: readonly Criterion[];
  readonly sections: readonly SectionRule[];
}

/** The rows of a set as they are written: clause, name, limit in signs, where it holds, what else is known of it. */
export function CriteriaTable({ rows, sections }: CriteriaTableProps) {
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways on a small screen has to be reached by keyboard */}
      <section className="overflow-x-auto" aria-label="Table of the criteria" tabIndex={0}>
        <table className="w-full min-w-[40rem] border-collapse text-left text-sm">
          <thead className="text-ink-2 text-xs">
            <tr className="border-ink-2 border-b">
              {["Clause", "Imperfection", "Limit", "Holds on"].map((heading) => (
                <th key={heading} scope="col" className="py-1.5 pr-4 font-medium">
                  {heading}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <Row
                key={`${row.id} ${row.faces.join()}`}
                rule={row}
                limits={[
                  describeLimit(row.limit),
                  ...(row.limit.kind === "at-most" && row.limit.shortOnly ? [SHORT] : []),
                  ...row.sums.map(describeSumRule),
                  ...(row.alsoNeeds === undefined ? [] : [`it also takes ${row.alsoNeeds}`]),
                ]}
              />
            ))}
            {sections.map((rule) => (
              <Row key={rule.id} rule={rule} limits={[describeSectionRule(rule)]} />
            ))}
          </tbody>
        </table>
      </section>
      <p className="mt-2 text-ink-2 text-xs">{LEGEND}</p>
    </>
  );
}

const SHORT = `a short imperfection: ${describeSumRule(SHORT_IMPERFECTION)}`;

const LEGEND = [
  ...(["t", "s", "a", "b", "z"] as const).map((symbol) => `${SYMBOL_FACTS[symbol].sign}: ${SYMBOL_FACTS[symbol].name}`),
  "h: depth, height, step or gap",
  `${QUANTITY_FACTS.diameter.sign}: ${QUANTITY_FACTS.diameter.name}`,
  `${QUANTITY_FACTS.length.sign}: ${QUANTITY_FACTS.length.name}`,
].join("; ");

function Row({ rule, limits }: { readonly rule: Criterion | SectionRule; readonly limits: readonly string[] }) {
  return (
    <tr className="border-line border-b align-top">
      <td className="whitespace-nowrap py-1.5 pr-4">{rule.clause}</td>
      <th scope="row" className="py-1.5 pr-4 font-medium">
        {rule.name}
      </th>
      <td className="py-1.5 pr-4">
        {limits.map((limit) => (
          <span key={limit} className="block">
            {limit}
          </span>
        ))}
        <span className="block text-ink-2 text-xs">
          {rule.notes !== "" && `${rule.notes} `}({EVIDENCE_NAMES[rule.evidence]})
        </span>
      </td>
      <td className="py-1.5">
        {rule.faces.join(", ")}
        {rule.ranges.map((range) => (
          <span key={describeRange(range)} className="block whitespace-nowrap text-ink-2">
            {describeRange(range)}
          </span>
        ))}
      </td>
    </tr>
  );
}
