import { type ComparedSet, type Comparison, EVIDENCE_NAMES, type Finding } from "@/lib/criteria";
import { shortName, stretchesText } from "./limits-words";
import { OutcomeSign } from "./outcome-sign";

/** The same as the picture in words: a row a set, its limit with the numbers put in, where it is written and how sure it is. */
export function LimitsTable({ comparison }: { readonly comparison: Comparison }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways on a small screen has to be reached by keyboard
    <section className="mt-3 overflow-x-auto print:overflow-visible" aria-label="Table of limits" tabIndex={0}>
      <table className="w-full min-w-[52rem] text-left text-sm print:min-w-0 print:text-xs">
        <caption className="sr-only">What each standard says of it</caption>
        <thead>
          <tr className="border-ink-2 border-b align-bottom">
            {["Standard", "Outcome", "Limit, with the numbers put in", "Clause and edition", "How it was checked"].map(
              (heading) => (
                <th key={heading} scope="col" className="py-2 pr-4 font-semibold">
                  {heading}
                </th>
              ),
            )}
          </tr>
        </thead>
        <tbody>
          {comparison.sets.map((set) => (
            <SetRow key={set.criteria.id} set={set} comparison={comparison} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function SetRow({ set, comparison }: { readonly set: ComparedSet; readonly comparison: Comparison }) {
  const { criteria, sentence, stretches } = set;
  const [deciding, ...others] = sentence.findings;
  return (
    <tr
      className="break-inside-avoid border-line border-b align-top"
      data-set={criteria.id}
      data-outcome={sentence.outcome}
    >
      <th scope="row" className="w-52 print:w-32 py-2.5 pr-4 font-normal">
        <span className="block font-semibold">{shortName(criteria)}</span>
        {criteria.name !== shortName(criteria) && <span className="text-ink-2">{criteria.name}</span>}
      </th>
      <td className="py-2.5 pr-4">
        <OutcomeSign outcome={sentence.outcome} />
      </td>
      <td className="py-2.5 pr-4">
        <span className="block font-medium">{stretchesText(stretches, comparison.axis)}</span>
        <FindingLines finding={deciding} />
        {others.map((finding) => (
          <FindingLines key={`${finding.row}${finding.rule}`} finding={finding} />
        ))}
      </td>
      <td className="py-2.5 pr-4">
        {deciding.clause !== null && <span className="block font-medium">{deciding.clause}</span>}
        {deciding.name !== null && deciding.name.toLowerCase() !== deciding.clause && (
          <span className="block">{deciding.name}</span>
        )}
        <span className="text-ink-2">{criteria.edition}</span>
      </td>
      <td className="py-2.5">
        {deciding.evidence === null ? "nothing to check" : EVIDENCE_NAMES[deciding.evidence]}
        {deciding.notes !== "" && <span className="block text-ink-2">{deciding.notes}</span>}
      </td>
    </tr>
  );
}

/** A rule, what it comes to, what is there, and why it cannot be judged or is not covered. */
function FindingLines({ finding: { rule, worked, foundText, why } }: { readonly finding: Finding }) {
  const reason = why !== null && rule?.includes(why) ? null : why;
  const parts = [worked, foundText, reason].filter((part) => part !== null);
  return (
    <span className="mt-0.5 block text-ink-2">
      {[...(rule === null ? [] : [rule]), ...(parts.length === 0 ? [] : [parts.join("; ")])].join(": ")}
    </span>
  );
}
