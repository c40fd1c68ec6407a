import { MARKED_SECTIONS, type MarkedSection, SECTIONS, shownMark } from "../results";
import type { Block, Printed } from "./block";

/** One marked section of somebody in a class, whatever it was handed in for. */
export interface ClassResult {
  readonly learnerId: string;
  readonly section: MarkedSection;
  /** Thousandths of a mark. */
  readonly markThousandths: number;
  readonly passMark: number;
  readonly isPassed: boolean;
  readonly handedInAt: Date;
  /** What it was handed in for, such as "practice". */
  readonly work: string;
}

export interface ClassToPrint {
  readonly name: string;
  readonly tutors: readonly string[];
  /** Everybody in it, in the order of the list. */
  readonly learners: readonly { readonly id: string; readonly name: string; readonly signInName: string }[];
  readonly results: readonly ClassResult[];
  /** When the list was made. */
  readonly at: Date;
}

const NAMES: Readonly<Record<MarkedSection, string>> = {
  plate: "Butt plate",
  fillet: "Fillet weld",
  cap: "Cap face",
  root: "Root face",
};

/** The result list of the practice of a class: a row for each learner with what they have of each section, then every piece by itself. */
export function classPrint({ name, tutors, learners, results, at }: ClassToPrint): readonly Block[] {
  // faces were sections of their own once: they have columns only where there are such marks
  const sections = MARKED_SECTIONS.filter(
    (section) => SECTIONS.some((one) => one === section) || results.some((result) => result.section === section),
  );
  const ofLearner = (id: string) =>
    results.filter(({ learnerId }) => learnerId === id).sort((a, b) => a.handedInAt.getTime() - b.handedInAt.getTime());
  return [
    {
      kind: "facts",
      facts: [
        ["Class", name],
        [tutors.length === 1 ? "Tutor" : "Tutors", tutors.join(", ")],
        ["Learners", String(learners.length)],
        ["As of", at],
        ["Listed here", "practice; the marks of sittings stand on their boards"],
      ],
    },
    {
      kind: "table",
      title: "Learner by learner",
      columns: [
        { name: "Learner" },
        { name: "Sign-in name" },
        ...sections.flatMap((section) => [
          { name: `${NAMES[section]}: pieces`, isNumber: true as const },
          { name: `${NAMES[section]}: passed`, isNumber: true as const },
          { name: `${NAMES[section]}: last mark`, isNumber: true as const },
        ]),
      ],
      rows: learners.map((learner) => {
        const own = ofLearner(learner.id);
        return [learner.name, learner.signInName, ...sections.flatMap((section) => standing(own, section))];
      }),
      empty: "Nobody is in this class.",
    },
    {
      kind: "table",
      title: "Piece by piece",
      columns: [
        { name: "Learner" },
        { name: "Section" },
        { name: "Handed in" },
        { name: "Work" },
        { name: "Mark", isNumber: true },
        { name: "Needed", isNumber: true },
        { name: "Result" },
      ],
      rows: learners.flatMap((learner) =>
        ofLearner(learner.id).map(({ section, handedInAt, work, markThousandths, passMark, isPassed }): Printed[] => [
          learner.name,
          NAMES[section],
          handedInAt,
          work,
          shownMark(markThousandths).toFixed(1),
          String(passMark),
          isPassed ? "passed" : "not passed",
        ]),
      ),
      empty: "Nothing has been handed in yet.",
    },
    { kind: "signatures", of: ["Tutor"] },
  ];
}

/** How many pieces of a section, how many of them passed, and the last mark. */
function standing(own: readonly ClassResult[], section: MarkedSection): readonly string[] {
  const pieces = own.filter((result) => result.section === section);
  const last = pieces.at(-1);
  const passed = pieces.filter(({ isPassed }) => isPassed).length;
  return [String(pieces.length), String(passed), last ? shownMark(last.markThousandths).toFixed(1) : "none"];
}
