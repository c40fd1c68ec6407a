import { MARKED_SECTIONS, type MarkedSection, SECTIONS, shownMark } from "../results";
import type { Block, Printed } from "./block";
import { isVoidWork, type Work, workWords } from "./work";

/** One marked section of somebody in a class, whatever it was handed in for. */
export interface ClassResult {
  readonly learnerId: string;
  readonly section: MarkedSection;
  /** Thousandths of a mark. */
  readonly markThousandths: number;
  readonly passMark: number;
  readonly isPassed: boolean;
  readonly handedInAt: Date;
  readonly work: Work;
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

/**
 * The result list of a class: a row for each learner with what they have of each section, practice and sittings apart, then
 * every piece by itself. What is void stands among the pieces, marked as such, and is not counted.
 */
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
        ["Listed here", "practice, and what was sat in closed sittings of this class"],
      ],
    },
    {
      kind: "table",
      title: "Learner by learner",
      columns: [
        { name: "Learner" },
        { name: "Sign-in name" },
        ...sections.flatMap((section) => KINDS.map((kind) => ({ name: `${NAMES[section]}, ${KIND_NAMES[kind]}` }))),
      ],
      rows: learners.map((learner) => {
        const own = ofLearner(learner.id);
        const cells = sections.flatMap((section) => KINDS.map((kind) => standing(own, section, kind)));
        return [learner.name, learner.signInName, ...cells];
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
          workWords(work),
          shownMark(markThousandths).toFixed(1),
          String(passMark),
          isVoidWork(work) ? "void" : isPassed ? "passed" : "not passed",
        ]),
      ),
      empty: "Nothing has been handed in yet.",
    },
    { kind: "signatures", of: ["Tutor"] },
  ];
}

const KINDS = ["practice", "sitting"] as const satisfies readonly Work["kind"][];
const KIND_NAMES: Readonly<Record<Work["kind"], string>> = { practice: "practice", sitting: "sittings" };

/** How many pieces of a section were passed, of how many, and the last mark. */
function standing(own: readonly ClassResult[], section: MarkedSection, kind: Work["kind"]): string {
  const pieces = own.filter(
    (result) => result.section === section && result.work.kind === kind && !isVoidWork(result.work),
  );
  const last = pieces.at(-1);
  if (!last) return "none";
  const passed = pieces.filter(({ isPassed }) => isPassed).length;
  return `${passed} of ${pieces.length} passed, last\u00a0${shownMark(last.markThousandths).toFixed(1)}`;
}
