import type { JointKind } from "../weld";

/** What a paper is made of; each has its own time and its own pass mark, and they are never averaged. */
export const SECTIONS = ["plate", "fillet"] as const;
export type Section = (typeof SECTIONS)[number];

/** Sections that marks were given for, some of them when each face of a plate was a section by itself. */
export const MARKED_SECTIONS = [...SECTIONS, "cap", "root"] as const;
export type MarkedSection = (typeof MARKED_SECTIONS)[number];

/** The joint on the bench in each section. */
export const JOINT_OF: Readonly<Record<Section, JointKind>> = { plate: "butt", fillet: "fillet" };

/** What a section is made of, in the order of the report. */
export const SECTION_PARTS = ["indications", "dimensions", "sentences", "questions"] as const;
export type SectionPart = (typeof SECTION_PARTS)[number];

/** How much each part of a section weighs in it; a part that a specimen has nothing for leaves its weight to the others. */
export type PartWeights = Readonly<Record<SectionPart, number>>;

/** What a paper says of one section. */
export interface SectionOfPaper {
  /** Time at the piece in an examination; practice has no clock. */
  readonly minutes: number;
  /** Marks needed to pass, at most one decimal. */
  readonly passMark: number;
  readonly weights: PartWeights;
  /** How many questions follow the report. */
  readonly questions: number;
}

/**
 * The paper where nobody has written another; common practice, no source. No part passes a section by itself: whoever
 * measures a fillet without looking for anything is short of its pass mark.
 */
export const DEFAULT_PAPER: Readonly<Record<Section, SectionOfPaper>> = {
  plate: {
    minutes: 120,
    passMark: 70,
    weights: { indications: 60, dimensions: 10, sentences: 15, questions: 15 },
    questions: 10,
  },
  fillet: {
    minutes: 30,
    passMark: 70,
    weights: { indications: 20, dimensions: 50, sentences: 10, questions: 20 },
    questions: 5,
  },
};
