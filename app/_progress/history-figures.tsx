import type { HistoryMark } from "@/app/_server/progress/history-of";
import { SECTION_NAMES } from "@/app/_ui/section-names";
import { MARKED_SECTIONS } from "@/lib/results";
import { HistoryChart } from "./charts/history-chart";
import { Figure } from "./figure";

const KINDS: Readonly<Record<HistoryMark["kind"], string>> = {
  practice: "practice",
  first: "first time",
  "re-sit": "re-sit",
  borderline: "one more piece like it",
  extra: "sat once more",
};

/** So many marks stay apart on a line; the table has them all. */
const SHOWN = 40;

/** Marks over time, a figure for each section that was marked: sections are never averaged. */
export function HistoryFigures({ history }: { readonly history: readonly HistoryMark[] }) {
  return MARKED_SECTIONS.map((section) => ({ section, marks: history.filter((mark) => mark.section === section) }))
    .filter(({ marks }) => marks.length > 0)
    .map(({ section, marks }) => {
      const passed = marks.filter(({ isPassed }) => isPassed).length;
      return (
        <Figure
          key={section}
          title={SECTION_NAMES[section]}
          says={
            <p>
              {passed} of {marks.length} passed.
              {marks.length > SHOWN && ` The last ${SHOWN} are drawn, the table has them all.`}
            </p>
          }
          fileName={`marks-${section}`}
          table={{
            headers: ["Handed in", "What", "Paper", "Round", "Marks", "Needed", "Passed"],
            rows: marks.map(({ at, kind, paperName, round, mark, passMark, isPassed }) => [
              at,
              KINDS[kind],
              paperName ?? "",
              round,
              mark,
              passMark,
              isPassed ? "yes" : "no",
            ]),
          }}
        >
          <HistoryChart
            label={`${SECTION_NAMES[section]}: ${passed} of ${marks.length} passed; the table has every mark`}
            marks={marks.slice(-SHOWN).map(({ id, mark, passMark, isPassed, kind, repeats }) => ({
              id,
              mark,
              passMark,
              isPassed,
              isSat: kind !== "practice",
              repeats,
            }))}
          />
        </Figure>
      );
    });
}
