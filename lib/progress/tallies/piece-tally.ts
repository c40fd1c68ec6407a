import { z } from "zod";
import { CLUTTER } from "../../imperfections";
import { DIMENSIONS } from "../../weld";
import { isClean, SENTENCE_VERDICTS, type SectionObservations } from "../observations/observation";
import { addCounts, type Counts, countOne, mergeBy } from "./counts";
import { addDifference, addMoments, momentsSchema, NO_MOMENTS } from "./moments";
import { callNameSchema, UNNAMED } from "./type-tally";

const count = z.int().min(0);
const calledAndTotal = z.strictObject({ total: count, called: count });
/** A false call where not even clutter lies. */
export const NOTHING = "nothing";

const clutterNames = z.enum(CLUTTER);
const onNames = z.enum([...CLUTTER, NOTHING]);

const dimensionTallySchema = z.strictObject({ total: count, blank: count, difference: momentsSchema });
const questionTallySchema = z.strictObject({ total: count, answered: count, right: count });

/** What one learner, or a class together, did on whole pieces: everything that does not go by a type of imperfection. */
export const pieceTallySchema = z.strictObject({
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
  falseCallsOn: z.partialRecord(onNames, count),
  falseCallsAs: z.partialRecord(callNameSchema, count),
  clutter: z.partialRecord(clutterNames, calledAndTotal),
  dimensions: z.partialRecord(z.enum(DIMENSIONS), dimensionTallySchema),
  /** By kind of question. */
  questions: z.record(z.string(), questionTallySchema),
  pieceSentences: z.partialRecord(z.enum(SENTENCE_VERDICTS), count),
});
export type PieceTally = z.infer<typeof pieceTallySchema>;

export const EMPTY_PIECE_TALLY: PieceTally = {
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
  falseCallsAs: {},
  clutter: {},
  dimensions: {},
  questions: {},
  pieceSentences: {},
};

/** With one more piece. */
export const addPiece = (tally: PieceTally, observed: SectionObservations): PieceTally =>
  addPieceTallies(tally, pieceTallyOf(observed));

function pieceTallyOf(observed: SectionObservations): PieceTally {
  const clean = isClean(observed);
  const { falseCalls, seconds, pieceSentence } = observed;
  return {
    pieces: 1,
    passed: Number(observed.passed),
    clean: Number(clean),
    cleanCalled: Number(clean && falseCalls.length > 0),
    weldLength: Math.round(1000 * observed.weldLength),
    seconds: seconds ?? 0,
    timed: Number(seconds !== null),
    marks: observed.mark,
    falseCalls: falseCalls.length,
    falseCallsOn: countAll(falseCalls.map(({ on }) => on ?? NOTHING)),
    falseCallsAs: countAll(falseCalls.map(({ namedAs }) => namedAs ?? UNNAMED)),
    clutter: addAll(
      observed.clutter.map(({ kind, called }) => [kind, { total: 1, called: Number(called) }] as const),
      addCalled,
    ),
    dimensions: addAll(
      observed.dimensions.map(({ dimension, written, actual }) => {
        const difference = addDifference(NO_MOMENTS, written === null ? null : written - actual);
        return [dimension, { total: 1, blank: Number(written === null), difference }] as const;
      }),
      addDimensions,
    ),
    questions: addAll(
      observed.questions.map(({ kind, key, written }) => {
        return [kind, { total: 1, answered: Number(written !== null), right: Number(written === key) }] as const;
      }),
      addQuestions,
    ) as PieceTally["questions"],
    pieceSentences: pieceSentence === null ? {} : { [pieceSentence]: 1 },
  };
}

function countAll<Name extends string>(names: readonly Name[]): Counts<Name> {
  return names.reduce<Counts<Name>>((counts, name) => countOne(counts, name), {});
}

function addAll<Name extends string, T>(rows: readonly (readonly [Name, T])[], add: (one: T, other: T) => T) {
  return rows.reduce<{ readonly [name in Name]?: T }>(
    (all, [name, value]) => mergeBy(all, { [name]: value } as { readonly [name in Name]?: T }, add),
    {},
  );
}

type Called = z.infer<typeof calledAndTotal>;
export const addCalled = (a: Called, b: Called): Called => ({ total: a.total + b.total, called: a.called + b.called });

type DimensionTally = z.infer<typeof dimensionTallySchema>;
export const addDimensions = (a: DimensionTally, b: DimensionTally): DimensionTally => ({
  total: a.total + b.total,
  blank: a.blank + b.blank,
  difference: addMoments(a.difference, b.difference),
});

type QuestionTally = z.infer<typeof questionTallySchema>;
const addQuestions = (a: QuestionTally, b: QuestionTally): QuestionTally => ({
  total: a.total + b.total,
  answered: a.answered + b.answered,
  right: a.right + b.right,
});

/** Both tallies together. */
export const addPieceTallies = (a: PieceTally, b: PieceTally): PieceTally => ({
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
  falseCallsAs: addCounts(a.falseCallsAs, b.falseCallsAs),
  clutter: mergeBy(a.clutter, b.clutter, addCalled),
  dimensions: mergeBy(a.dimensions, b.dimensions, addDimensions),
  questions: mergeBy(a.questions, b.questions, addQuestions) as PieceTally["questions"],
  pieceSentences: addCounts(a.pieceSentences, b.pieceSentences),
});
