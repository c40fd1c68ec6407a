import { SECTIONS, type Section, shownMark } from "../../results";
import { type ChanceToPass, type ClassMarks, chanceToPass, classMarks } from "../marks/chance-to-pass";

/** Who of a class would pass one kind of section. */
export interface SectionReadiness {
  readonly section: Section;
  readonly passMark: number;
  /** What a single learner is judged against. */
  readonly ground: ClassMarks;
  /** Learner by learner, in the order given; null where there is no mark of the section. */
  readonly learners: readonly (ChanceToPass | null)[];
}

/** Marks of one learner by section, thousandths, the newest last. */
export type MarksBySection = { readonly [section in Section]?: readonly number[] };

/** The chance of everybody to pass each section that somebody has marks of. */
export const readinessOf = (
  learners: readonly MarksBySection[],
  passMarks: Readonly<Record<Section, number>>,
): SectionReadiness[] =>
  SECTIONS.flatMap((section) => {
    const marks = learners.map((own) => (own[section] ?? []).map(shownMark));
    if (marks.every((own) => own.length === 0)) return [];
    const [ground, passMark] = [classMarks(marks), passMarks[section]];
    return [
      {
        section,
        passMark,
        ground,
        learners: marks.map((own) => (own.length === 0 ? null : chanceToPass(own, passMark, ground))),
      },
    ];
  });
