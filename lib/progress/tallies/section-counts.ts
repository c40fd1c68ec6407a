import { z } from "zod";
import { CLUTTER } from "../../imperfections";
import { DIMENSIONS } from "../../weld";
import { addCounts, countsSchema, mergeBy } from "./counts";
import { addMoments, momentsSchema } from "./moments";

const count = z.int().min(0);
const calledAndTotal = z.strictObject({ total: count, called: count });
/** A false call where not even clutter lies. */
export const NOTHING = "nothing";

const dimensionTallySchema = z.strictObject({ total: count, blank: count, difference: momentsSchema });

/** Counts over whole pieces that a class is looked through by. */
export const sectionCountsSchema = z.strictObject({
  pieces: count,
  passed: count,
  /** Pieces without anything to find, and those of them with a false call. */
  clean: count,
  cleanCalled: count,
  /** Weld looked at, micrometres: a plate has it on both faces. */
  weldLength: count,
  /** Time at the pieces whose time is known, and how many these are. */
  seconds: count,
  timed: count,
  /** Thousandths of a mark. */
  marks: count,
  falseCalls: count,
  falseCallsOn: countsSchema([...CLUTTER, NOTHING]),
  clutter: z.partialRecord(z.enum(CLUTTER), calledAndTotal),
  dimensions: z.partialRecord(z.enum(DIMENSIONS), dimensionTallySchema),
});
export type SectionCounts = z.infer<typeof sectionCountsSchema>;

export const EMPTY_SECTION_COUNTS: SectionCounts = {
  pieces: 0,
  passed: 0,
  clean: 0,
  cleanCalled: 0,
  weldLength: 0,
  seconds: 0,
  timed: 0,
  marks: 0,
  falseCalls: 0,
  falseCallsOn: {},
  clutter: {},
  dimensions: {},
};

type Called = z.infer<typeof calledAndTotal>;
export const addCalled = (a: Called, b: Called): Called => ({ total: a.total + b.total, called: a.called + b.called });

type DimensionTally = z.infer<typeof dimensionTallySchema>;
export const addDimensions = (a: DimensionTally, b: DimensionTally): DimensionTally => ({
  total: a.total + b.total,
  blank: a.blank + b.blank,
  difference: addMoments(a.difference, b.difference),
});

/** Both together; whatever else either has is left out. */
export const addSectionCounts = (a: SectionCounts, b: SectionCounts): SectionCounts => ({
  pieces: a.pieces + b.pieces,
  passed: a.passed + b.passed,
  clean: a.clean + b.clean,
  cleanCalled: a.cleanCalled + b.cleanCalled,
  weldLength: a.weldLength + b.weldLength,
  seconds: a.seconds + b.seconds,
  timed: a.timed + b.timed,
  marks: a.marks + b.marks,
  falseCalls: a.falseCalls + b.falseCalls,
  falseCallsOn: addCounts(a.falseCallsOn, b.falseCallsOn),
  clutter: mergeBy(a.clutter, b.clutter, addCalled),
  dimensions: mergeBy(a.dimensions, b.dimensions, addDimensions),
});
