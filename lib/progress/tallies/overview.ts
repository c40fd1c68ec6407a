import { z } from "zod";
import { IMPERFECTION_TYPES, type ImperfectionType } from "../../imperfections";
import { MARKED_SECTIONS } from "../../results";
import { gatherBy, sumCounts } from "./counts";
import type { LearnerTally } from "./learner-tally";
import { addMoments, NO_MOMENTS } from "./moments";
import { addSectionCounts, sectionCountsSchema } from "./section-counts";
import { typeTallySchema } from "./type-tally";

const typeCountsSchema = typeTallySchema.pick({
  total: true,
  found: true,
  namedRight: true,
  namedAlike: true,
  calledAs: true,
  size: true,
});
/** Of one type how many there were, were found, what they were named, and how they were measured. */
export type TypeCounts = z.infer<typeof typeCountsSchema>;

/** What a class is looked through by: an extract of a learner's tally, small enough to read for everybody at once. */
export const overviewSchema = z.strictObject({
  sections: z.partialRecord(z.enum(MARKED_SECTIONS), sectionCountsSchema),
  types: z.partialRecord(
    z.enum(IMPERFECTION_TYPES as readonly [ImperfectionType, ...ImperfectionType[]]),
    typeCountsSchema,
  ),
});
export type Overview = z.infer<typeof overviewSchema>;

export const EMPTY_OVERVIEW: Overview = { sections: {}, types: {} };

/** The extract of a tally. */
export const overviewOf = ({ sections, types }: LearnerTally): Overview => ({
  // strict objects take no field beside their own, so that each is put down by name
  sections: mapValues(sections, (tally) => {
    const { pieces, passed, clean, cleanCalled, weldLength, seconds, timed } = tally;
    const { marks, falseCalls, falseCallsOn, clutter, dimensions } = tally;
    const counts = { pieces, passed, clean, cleanCalled, weldLength, seconds, timed, marks, falseCalls };
    return { ...counts, falseCallsOn, clutter, dimensions };
  }),
  types: mapValues(types, ({ total, found, namedRight, namedAlike, calledAs, size }) => {
    return { total, found, namedRight, namedAlike, calledAs, size };
  }),
});

function mapValues<Name extends string, From, To>(
  record: { readonly [name in Name]?: From },
  make: (value: From) => To,
): { [name in Name]?: To } {
  const entries = Object.entries(record) as [Name, From][];
  return Object.fromEntries(entries.map(([name, value]) => [name, make(value)])) as { [name in Name]?: To };
}

/** All together, as of a class. Added up type by type, since a record copied for every learner takes longer than reading it. */
export const sumOverviews = (all: readonly Overview[]): Overview => ({
  sections: gatherBy(
    all.map(({ sections }) => sections),
    (tallies) => tallies.reduce(addSectionCounts),
  ),
  types: gatherBy(
    all.map(({ types }) => types),
    sumTypeCounts,
  ),
});

function sumTypeCounts(all: readonly TypeCounts[]): TypeCounts {
  const sum = (of: (counts: TypeCounts) => number) => all.reduce((total, counts) => total + of(counts), 0);
  return {
    total: sum(({ total }) => total),
    found: sum(({ found }) => found),
    namedRight: sum(({ namedRight }) => namedRight),
    namedAlike: sum(({ namedAlike }) => namedAlike),
    calledAs: sumCounts(all.map(({ calledAs }) => calledAs)),
    size: all.reduce((moments, { size }) => addMoments(moments, size), NO_MOMENTS),
  };
}
