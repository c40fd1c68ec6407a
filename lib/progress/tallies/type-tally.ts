import { z } from "zod";
import { IMPERFECTION_TYPES, type ImperfectionType, likeness } from "../../imperfections";
import { SENTENCE_VERDICTS, type TruthObservation } from "../observations/observation";
import { addCounts, countOne, countsSchema, mergeBy } from "./counts";
import { addDifference, addMoments, momentsSchema, NO_MOMENTS } from "./moments";
import { addSizeCounts, countSize, sizeCountsSchema } from "./size-counts";

const count = z.int().min(0);
/** A find without a type was named nothing. */
export const UNNAMED = "unnamed";
/** What a call can be called. */
export const CALL_NAMES = [UNNAMED, ...IMPERFECTION_TYPES] as const;
export type CallName = (typeof CALL_NAMES)[number];

/** What one learner, or all of a class together, made of all imperfections of one type. Neutral features count apart. */
export const typeTallySchema = z.strictObject({
  total: count,
  found: count,
  /** Finds by how they were named: exactly, as something alike (`likeness` of 0.5), as something else, or not at all. */
  namedRight: count,
  namedAlike: count,
  namedWrong: count,
  unnamed: count,
  /** Finds by what they were called, the right name included. */
  calledAs: countsSchema(CALL_NAMES),
  /** Differences, written less true, in thousandths of a millimetre. */
  size: momentsSchema,
  start: momentsSchema,
  end: momentsSchema,
  across: momentsSchema,
  /** How many there were and were found at each size that strikes the eye. */
  bySize: sizeCountsSchema,
  sentences: countsSchema(SENTENCE_VERDICTS),
  neutral: count,
  neutralCalled: count,
});
export type TypeTally = z.infer<typeof typeTallySchema>;

export const EMPTY_TYPE_TALLY: TypeTally = {
  total: 0,
  found: 0,
  namedRight: 0,
  namedAlike: 0,
  namedWrong: 0,
  unnamed: 0,
  calledAs: {},
  size: NO_MOMENTS,
  start: NO_MOMENTS,
  end: NO_MOMENTS,
  across: NO_MOMENTS,
  bySize: {},
  sentences: {},
  neutral: 0,
  neutralCalled: 0,
};

/** With one more imperfection of the type. The order of adding makes no difference. */
export function addTruth(tally: TypeTally, truth: TruthObservation): TypeTally {
  if (truth.neutral) {
    return { ...tally, neutral: tally.neutral + 1, neutralCalled: tally.neutralCalled + Number(truth.found) };
  }
  const { found, namedAs, type, sentence } = truth;
  const like = found && namedAs !== null ? likeness(type, namedAs) : null;
  return {
    ...tally,
    total: tally.total + 1,
    found: tally.found + Number(found),
    namedRight: tally.namedRight + Number(like === 1),
    namedAlike: tally.namedAlike + Number(like === 0.5),
    namedWrong: tally.namedWrong + Number(like === 0),
    unnamed: tally.unnamed + Number(found && namedAs === null),
    calledAs: found ? countOne(tally.calledAs, namedAs ?? UNNAMED) : tally.calledAs,
    size: addDifference(tally.size, truth.sizeError),
    start: addDifference(tally.start, truth.startError),
    end: addDifference(tally.end, truth.endError),
    across: addDifference(tally.across, truth.acrossError),
    bySize: countSize(tally.bySize, truth.eye.value, found),
    sentences: sentence === null ? tally.sentences : countOne(tally.sentences, sentence),
  };
}

/** Both tallies of one type together. */
export const addTypeTallies = (a: TypeTally, b: TypeTally): TypeTally => ({
  total: a.total + b.total,
  found: a.found + b.found,
  namedRight: a.namedRight + b.namedRight,
  namedAlike: a.namedAlike + b.namedAlike,
  namedWrong: a.namedWrong + b.namedWrong,
  unnamed: a.unnamed + b.unnamed,
  calledAs: addCounts(a.calledAs, b.calledAs),
  size: addMoments(a.size, b.size),
  start: addMoments(a.start, b.start),
  end: addMoments(a.end, b.end),
  across: addMoments(a.across, b.across),
  bySize: addSizeCounts(a.bySize, b.bySize),
  sentences: addCounts(a.sentences, b.sentences),
  neutral: a.neutral + b.neutral,
  neutralCalled: a.neutralCalled + b.neutralCalled,
});

/** Tallies of many types, a type that never came left out. */
export type TypeTallies = { readonly [type in ImperfectionType]?: TypeTally };

/** The same with no more of each type than some of its parts. */
export type TypeParts<Part extends keyof TypeTally> = { readonly [type in ImperfectionType]?: Pick<TypeTally, Part> };

export const mergeTypeTallies = (a: TypeTallies, b: TypeTallies): TypeTallies => mergeBy(a, b, addTypeTallies);
