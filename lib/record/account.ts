import { z } from "zod";
import { CLUTTER } from "../imperfections";
import { SENTENCES } from "../report";
import { LINE_KINDS, MARKED_SECTIONS, PARTS, type SectionResult } from "../results";
import { DIMENSION_FACTS, DIMENSIONS, STATEMENTS, SURFACE_FACES } from "../weld";
import { mm, thousandths } from "./common";

const written = z.union([z.number(), z.string()]).nullable();
const earned = { worthThousandths: thousandths, earnedThousandths: thousandths };
const ruled = z.strictObject({ outcome: z.string(), text: z.string() });

const indicationLine = z.strictObject({
  kind: z.enum(LINE_KINDS),
  truthIds: z.array(z.string()),
  indicationIds: z.array(z.string()),
  ...earned,
  costThousandths: thousandths,
  backThousandths: thousandths,
  keptShare: z.number(),
  place: z.strictObject({ stickOutMm: mm, besideMm: mm, gapMm: mm.nullable(), shareThousandths: z.int() }).nullable(),
  parts: z.array(
    z.strictObject({
      part: z.enum(PARTS),
      written,
      actual: written,
      errorMm: mm.nullable(),
      toleranceMm: mm.nullable(),
      earnedThousandths: thousandths,
      fullThousandths: thousandths,
    }),
  ),
  clutter: z.enum(CLUTTER).nullable(),
});

const dimensionLine = z.strictObject({
  dimension: z.enum(DIMENSIONS),
  station: z.int().nullable(),
  unit: z.enum(["mm", "degrees"]),
  written: z.number().nullable(),
  writtenAtMm: mm.nullable(),
  actual: z.number(),
  actualAtMm: mm.nullable(),
  actualThere: z.number().nullable(),
  error: z.number().nullable(),
  tolerance: z.number(),
  ...earned,
});

const statementLine = z.strictObject({
  statement: z.enum(STATEMENTS),
  written: z.string().nullable(),
  right: z.array(z.string()),
  valueMm: mm,
  limitMm: mm,
  ...earned,
});

const sentenceLine = z.strictObject({
  truthId: z.string().nullable(),
  indicationIds: z.array(z.string()),
  written: z.enum(SENTENCES).nullable(),
  right: z.array(z.enum(SENTENCES)),
  decidedBy: z.enum(["written", "truth"]),
  fromWritten: ruled.nullable(),
  fromTruth: ruled,
  ...earned,
});

const questionLine = z.strictObject({
  question: z.string(),
  kind: z.string(),
  stem: z.string(),
  options: z.array(z.string()),
  rightOption: z.int(),
  chosenOption: z.int().nullable(),
  explanation: z.string(),
  place: z.strictObject({ face: z.enum(SURFACE_FACES), startMm: mm, endMm: mm }).nullable(),
  ...earned,
});

/** A marked section line by line. Its lines add up to the mark, in thousandths of a mark. */
export const recordedAccountSchema = z.strictObject({
  section: z.enum(MARKED_SECTIONS),
  ruleVersion: z.string(),
  passMark: z.number(),
  markThousandths: thousandths,
  shownMark: z.number(),
  isPassed: z.boolean(),
  indications: z.array(indicationLine),
  dimensions: z.array(dimensionLine),
  statements: z.array(statementLine),
  /** Null where nothing was to be sentenced. */
  criteria: z.strictObject({ id: z.string(), name: z.string(), edition: z.string() }).nullable(),
  /** One for each imperfection, then one for the piece. */
  sentences: z.array(sentenceLine),
  questions: z.array(questionLine),
});
export type RecordedAccount = z.infer<typeof recordedAccountSchema>;

export function recordedAccount(result: SectionResult): RecordedAccount {
  const { section, ruleVersion, passMark, mark, shown, passed, dimensions, sentences, questions } = result;
  return {
    section,
    ruleVersion,
    passMark,
    markThousandths: mark,
    shownMark: shown,
    isPassed: passed,
    indications: result.indications.lines.map(
      ({ kind, truthIds, callIds, cost, back, kept, place, parts, ...line }) => ({
        kind,
        truthIds,
        indicationIds: callIds,
        ...earnedOf(line),
        costThousandths: cost,
        backThousandths: back,
        keptShare: kept,
        place: place && {
          stickOutMm: place.stickOut,
          besideMm: place.beside,
          gapMm: place.gap,
          shareThousandths: place.share,
        },
        parts: parts.map(({ part, written, actual, error, tolerance, earned, full }) => ({
          part,
          written,
          actual,
          errorMm: error,
          toleranceMm: tolerance,
          earnedThousandths: earned,
          fullThousandths: full,
        })),
        clutter: line.clutter?.kind ?? null,
      }),
    ),
    dimensions: (dimensions?.lines ?? []).map((line) => ({
      dimension: line.dimension,
      station: line.station,
      unit: DIMENSION_FACTS[line.dimension].unit,
      written: line.written,
      writtenAtMm: line.writtenAt,
      actual: line.actual,
      actualAtMm: line.actualAt,
      actualThere: line.actualThere,
      error: line.error,
      tolerance: line.tolerance,
      ...earnedOf(line),
    })),
    statements: (dimensions?.statements ?? []).map(({ statement, written, right, value, limit, ...line }) => {
      return { statement, written, right: [...right], valueMm: value, limitMm: limit, ...earnedOf(line) };
    }),
    criteria: sentences?.criteria ?? null,
    sentences: (sentences ? [...sentences.lines, sentences.piece] : []).map(
      ({ truthId, callIds, written, right, decidedBy, fromWritten, fromTruth, ...line }) => {
        const said = { truthId, indicationIds: callIds, written, right, decidedBy, fromWritten, fromTruth };
        return { ...said, ...earnedOf(line) };
      },
    ),
    questions: (questions?.lines ?? []).map(
      ({ question, kind, stem, options, key, written, explanation, place, ...line }) => ({
        question,
        kind,
        stem,
        options,
        rightOption: key,
        chosenOption: written,
        explanation,
        place: place && { face: place.face, startMm: place.start, endMm: place.end },
        ...earnedOf(line),
      }),
    ),
  };
}

const earnedOf = ({ worth, earned: brought }: { readonly worth: number; readonly earned: number }) => ({
  worthThousandths: worth,
  earnedThousandths: brought,
});
