import { SECTION_NAMES } from "@/app/_ui/section-names";
import { Sheet } from "@/app/_ui/sheet";
import type { Section } from "@/lib/results";
import type { Paper, PaperSection } from "@/lib/sittings";
import { PaperCautions } from "./paper-cautions";
import { aidWords, minutesWords, pieceWords, rulesOf, tasksOf } from "./paper-words";

interface PaperFrontProps {
  readonly paper: Paper;
  /** What the criteria of each section are called, with their edition. */
  readonly criteria: Readonly<Partial<Record<Section, string>>>;
  /** What its reader's minutes are multiplied by. */
  readonly factor?: number;
}

/** The front page of a paper as its learner reads it before a section starts. */
export function PaperFront({ paper, criteria, factor = 1 }: PaperFrontProps) {
  return (
    <div className="grid max-w-4xl gap-4">
      <Sheet title="What you sit">
        <table className="mt-2 w-full max-w-xl text-left">
          <thead className="text-ink-2 text-sm">
            <tr>
              <th scope="col" className="py-2 pr-4 font-medium">
                Section
              </th>
              <th scope="col" className="py-2 pr-4 text-right font-medium">
                Time
              </th>
              <th scope="col" className="py-2 text-right font-medium">
                To pass
              </th>
            </tr>
          </thead>
          <tbody>
            {paper.sections.map(({ section, minutes, passMark }) => (
              <tr key={section} className="border-line border-t">
                <th scope="row" className="py-2 pr-4 font-medium">
                  {SECTION_NAMES[section]}
                </th>
                <td className="py-2 pr-4 text-right whitespace-nowrap">{minutesWords(Math.round(minutes * factor))}</td>
                <td className="py-2 text-right whitespace-nowrap">{passMark} of 100 marks</td>
              </tr>
            ))}
          </tbody>
        </table>
        {factor !== 1 && (
          <p className="mt-2 max-w-3xl text-ink-2">
            These times are yours: your minutes are those of the paper times {factor}.
          </p>
        )}
      </Sheet>
      {paper.sections.map((section) => (
        <SectionFront key={section.section} section={section} criteria={criteria[section.section] ?? ""} />
      ))}
      <Sheet title="Rules">
        <ul className="mt-2 grid max-w-3xl list-disc gap-1.5 pl-5">
          {rulesOf(paper).map((rule) => (
            <li key={rule}>{rule}</li>
          ))}
        </ul>
      </Sheet>
      <PaperCautions />
    </div>
  );
}

function SectionFront({ section, criteria }: { readonly section: PaperSection; readonly criteria: string }) {
  const { questionCount } = section;
  const words = pieceWords(section);
  return (
    <Sheet title={SECTION_NAMES[section.section]}>
      <p className="mt-2 max-w-3xl">
        On the bench lies {words}. You judge by {criteria}.
      </p>
      <h3 className="mt-4 font-medium text-sm">What is asked for</h3>
      <ol className="mt-1 grid max-w-3xl list-decimal gap-1.5 pl-5">
        {tasksOf(section).map((task) => (
          <li key={task}>{task}</li>
        ))}
      </ol>
      {questionCount > 0 && (
        <p className="mt-1.5 max-w-3xl">
          After the report there {questionCount === 1 ? "is 1 question" : `are ${questionCount} questions`} on the
          piece, its criteria, its drawing and the trade. Once they are open, the report is closed.
        </p>
      )}
      <h3 className="mt-4 font-medium text-sm">What you may use</h3>
      <ul className="mt-1 grid max-w-3xl list-disc gap-1.5 pl-5">
        {aidWords(section.aids).map((aid) => (
          <li key={aid}>{aid}</li>
        ))}
      </ul>
    </Sheet>
  );
}
