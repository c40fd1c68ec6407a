import { z } from "zod";
import { isClean, SENTENCE_VERDICTS, type SectionObservations } from "../observations/observation";
import { addCounts, type Counts, countOne, countsSchema, mergeBy } from "./counts";
import { addDifference, NO_MOMENTS } from "./moments";
import {
  addCalled,
  addDimensions,
  addSectionCounts,
  EMPTY_SECTION_COUNTS,
  NOTHING,
  sectionCountsSchema,
} from "./section-counts";
import { CALL_NAMES, UNNAMED } from "./type-tally";

const count = z.int().min(0);
const questionTallySchema = z.strictObject({ total: count, answered: count, right: count });

/** What one learner, or a class together, did on whole pieces: everything that does not go by a type of imperfection. */
export const pieceTallySchema = sectionCountsSchema.extend({
  falseCallsAs: countsSchema(CALL_NAMES),
  /** By kind of question. */
  questions: z.record(z.string(), questionTallySchema),
  pieceSentences: countsSchema(SENTENCE_VERDICTS),
});
export type PieceTally = z.infer<typeof pieceTallySchema>;

export const EMPTY_PIECE_TALLY: PieceTally = {
  ...EMPTY_SECTION_COUNTS,
  falseCallsAs: {},
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

type QuestionTally = z.infer<typeof questionTallySchema>;
const addQuestions = (a: QuestionTally, b: QuestionTally): QuestionTally => ({
  total: a.total + b.total,
  answered: a.answered + b.answered,
  right: a.right + b.right,
});

/** Both tallies together. */
export const addPieceTallies = (a: PieceTally, b: PieceTally): PieceTally => ({
  ...addSectionCounts(a, b),
  falseCallsAs: addCounts(a.falseCallsAs, b.falseCallsAs),
  questions: mergeBy(a.questions, b.questions, addQuestions) as PieceTally["questions"],
  pieceSentences: addCounts(a.pieceSentences, b.pieceSentences),
});
