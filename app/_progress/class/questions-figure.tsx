import Link from "next/link";
import { type AnalysedItem, ASKED_FROM, type SectionAnalysis, type Suspicion } from "@/lib/progress";
import { Figure } from "../figure";
import { inPercent } from "../found-figures";
import { percent } from "../words";

const SUSPICIONS: Readonly<Record<Suspicion, string>> = {
  "distractor-beats-key": "the best third prefer a wrong option: look at its key",
  negative: "those who know the rest well do worse on it: look at its words",
};

const twoPlaces = (value: number | null): number | null => (value === null ? null : Math.round(100 * value) / 100);

/** Every question that was asked often enough, with its words: how hard it is, and whether it tells good from weak. */
export function QuestionsFigure({ items, askedSeldom }: Pick<SectionAnalysis, "items" | "askedSeldom">) {
  return (
    <Figure
      title="Questions"
      says={
        <>
          <p>
            {items.length === 0
              ? `Questions that were asked at least ${ASKED_FROM} times come here, with how many answered them right and whether they tell good from weak.`
              : "Suspect ones first, then those that were annulled, then those most often answered wrong. Telling good from weak is the correlation of a right answer with everything else that was answered right: 1 tells best, 0 nothing, below 0 it misleads."}
          </p>
          {askedSeldom > 0 && (
            <p className="mt-1">
              {askedSeldom === 1 ? "One more question was" : `${askedSeldom} more questions were`} asked fewer than{" "}
              {ASKED_FROM} times and {askedSeldom === 1 ? "is" : "are"} left out: pieces of one's own have questions of
              their own.
            </p>
          )}
        </>
      }
      fileName="class-questions"
      isTableDrawn
      table={{
        headers: [
          "Question",
          "Right answer",
          "Asked",
          "Right",
          "Blank",
          "Right, %",
          "From, %",
          "To, %",
          "Tells good from weak",
          "Suspect",
          "Annulled for",
        ],
        rows: items.map((one) => [
          one.item.stem,
          one.item.texts[one.item.key],
          one.asked,
          one.right,
          one.blank,
          inPercent(one.facility),
          inPercent(one.facilityInterval.low),
          inPercent(one.facilityInterval.high),
          twoPlaces(one.discrimination),
          one.suspicions.map((suspicion) => SUSPICIONS[suspicion]).join("; "),
          one.annulled,
        ]),
      }}
    >
      <ol>
        {items.map((one) => (
          <Question key={one.id} analysed={one} />
        ))}
      </ol>
    </Figure>
  );
}

function Question({ analysed }: { readonly analysed: AnalysedItem }) {
  const { item, practiceId, asked, right, blank, facility, facilityInterval, discrimination, needed } = analysed;
  const { annulled } = analysed;
  return (
    <li className="border-line border-t py-3">
      <p className="font-medium wrap-anywhere">{item.stem}</p>
      {annulled > 0 && (
        <p className="mt-1 border-ink-2 border-l-4 bg-paper-2 px-3 py-1">
          <span className="font-semibold">Annulled</span>
          {annulled === asked ? " by a tutor." : ` by a tutor for ${annulled} of the ${asked} who were asked it.`} The
          answers stand here as they were given. Nobody loses marks by it, it is not counted beside other questions, and
          how sure a mark is goes by the marks as they count now.
        </p>
      )}
      {analysed.suspicions.map((suspicion) => (
        <p key={suspicion} className="mt-1 border-missed border-l-4 bg-paper-2 px-3 py-1">
          Suspect: {SUSPICIONS[suspicion]}.
        </p>
      ))}
      <p className="mt-1 text-ink-2">
        {right} of {asked} right, {percent(facility)} ({percent(facilityInterval.low)} to{" "}
        {percent(facilityInterval.high)}){blank > 0 && `, ${blank} left blank`};{" "}
        {discrimination === null
          ? "whether it tells good from weak is not to be said"
          : `tells good from weak: ${discrimination.toFixed(2).replace("-", "−")}`}
        {needed > 0 && `; not enough yet to rely on, ${needed} more`}.
      </p>
      <ul className="mt-1 pl-5">
        {analysed.optionCounts.map(({ option, chosen, chosenByBest }) => (
          <li key={item.texts[option]} className={option === item.key ? "font-medium" : ""}>
            {option === item.key && <span>✓ right: </span>}
            {item.texts[option]}
            <span className="font-normal text-ink-2">
              {" "}
              ({chosen} chose it, {chosenByBest} of the best third)
            </span>
          </li>
        ))}
      </ul>
      <Link
        href={`/practice/${practiceId}/marks`}
        prefetch={false}
        className="inline-flex min-h-11 items-center rounded text-action underline underline-offset-4"
      >
        A mark sheet with this question
      </Link>
    </li>
  );
}
