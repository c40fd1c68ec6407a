import Link from "next/link";
import { SECTION_NAMES } from "@/app/_ui/section-names";
import type { ChanceToPass, SectionReadiness } from "@/lib/progress";
import { Figure } from "../figure";
import { inPercent } from "../found-figures";
import { chanceWords } from "./chance-words";

interface ReadyFigureProps {
  readonly learners: readonly { readonly id: string; readonly name: string }[];
  /** By learner in the same order. */
  readonly sections: readonly SectionReadiness[];
}

/** Who is ready for a sitting: a chance with its interval, and what it rests on. */
export function ReadyFigure({ learners, sections }: ReadyFigureProps) {
  return (
    <Figure
      title="Ready for a sitting"
      says={
        <p>
          The chance to pass the next piece of a section at the workshop's pass mark, by an estimate and never a
          promise: it rests on each learner's latest marks, at most twelve, of which the newest weigh most, and on how
          the marks of the class scatter. In brackets between what it lies with 95 % confidence.
        </p>
      }
      fileName="class-ready"
      isTableDrawn
      table={{
        headers: [
          "Learner",
          "Section",
          "Pass mark",
          "Marks",
          "To be expected",
          "Chance, %",
          "From, %",
          "To, %",
          "More needed",
        ],
        rows: learners.flatMap(({ name }, n) =>
          sections.map(({ section, passMark, learners: chances }) => rowOf(name, section, passMark, chances[n])),
        ),
      }}
    >
      <div className="relative overflow-x-auto">
        <table className="w-full text-left">
          <thead className="text-ink-2 text-sm">
            <tr>
              <th scope="col" className="py-2 pr-4 font-medium">
                Learner
              </th>
              {sections.map(({ section, passMark }) => (
                <th key={section} scope="col" className="py-2 pr-4 font-medium">
                  {SECTION_NAMES[section]}, {passMark} needed
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {learners.map(({ id, name }, n) => (
              <tr key={id} className="border-line border-t">
                <th scope="row" className="py-2 pr-4 font-medium">
                  <Link href={`/desk/${id}/progress`} className="rounded py-2 text-action underline underline-offset-4">
                    {name}
                  </Link>
                </th>
                {sections.map(({ section, learners: chances }) => (
                  <td key={section} className="py-2 pr-4">
                    {chanceWords(chances[n])}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </Figure>
  );
}

function rowOf(name: string, section: SectionReadiness["section"], passMark: number, chance: ChanceToPass | null) {
  const start = [name, SECTION_NAMES[section], passMark, chance?.marks ?? 0];
  if (chance === null || chance.needed > 0) return [...start, null, null, null, null, chance?.needed ?? null];
  const { expected, interval } = chance;
  return [
    ...start,
    Math.round(10 * expected) / 10,
    inPercent(chance.chance),
    inPercent(interval.low),
    inPercent(interval.high),
    0,
  ];
}
