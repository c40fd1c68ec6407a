/** What a paper is made of; each has its own time and its own pass mark, and they are never averaged. */
export const SECTIONS = ["plate"] as const;
export type Section = (typeof SECTIONS)[number];

/** Sections that marks were given for, some of them when each face of a plate was a section by itself. */
export const MARKED_SECTIONS = [...SECTIONS, "cap", "root"] as const;
export type MarkedSection = (typeof MARKED_SECTIONS)[number];

/** What a section is made of, in the order of the report. */
export const SECTION_PARTS = ["indications", "dimensions"] as const;
export type SectionPart = (typeof SECTION_PARTS)[number];

/** How much each part of a section weighs in it; a part that a specimen has nothing for leaves its weight to the others. */
export type PartWeights = Readonly<Record<SectionPart, number>>;

/** Common practice, no source. */
export const DEFAULT_WEIGHTS: Readonly<Record<Section, PartWeights>> = {
  plate: { indications: 60, dimensions: 10 },
};
