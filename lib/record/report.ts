import { z } from "zod";
import { IMPERFECTION_TYPES, type ImperfectionType, imperfection } from "../imperfections";
import { type Report, SENTENCES } from "../report";
import { DIMENSION_FACTS, DIMENSIONS, STATEMENTS, SURFACE_FACES } from "../weld";
import { mm } from "./common";

export const typeSchema = z.enum(IMPERFECTION_TYPES as readonly [ImperfectionType, ...ImperfectionType[]]);

/** A report as the learner wrote it, complete or not. Places are mm from the datum end and mm across from the weld's centre line. */
export const recordedReportSchema = z.strictObject({
  indications: z.array(
    z.strictObject({
      id: z.string(),
      face: z.enum(SURFACE_FACES),
      type: typeSchema.nullable(),
      /** Number of ISO 6520-1. */
      typeNumber: z.string().nullable(),
      startMm: mm.nullable(),
      endMm: mm.nullable(),
      acrossMm: mm.nullable(),
      sizeMm: mm.nullable(),
      sentence: z.enum(SENTENCES).nullable(),
    }),
  ),
  dimensions: z.array(
    z.strictObject({
      dimension: z.enum(DIMENSIONS),
      station: z.int().nullable(),
      value: z.number().nullable(),
      unit: z.enum(["mm", "degrees"]),
      atMm: mm.nullable(),
    }),
  ),
  statements: z.array(z.strictObject({ statement: z.enum(STATEMENTS), answer: z.string().nullable() })),
  pieceSentence: z.enum(SENTENCES).nullable(),
  /** Options are counted from 0. */
  answers: z.array(z.strictObject({ question: z.string(), chosenOption: z.int() })),
});
export type RecordedReport = z.infer<typeof recordedReportSchema>;

export const recordedReport = ({ calls, measures, statements, pieceSentence, answers }: Report): RecordedReport => ({
  indications: calls.map(({ id, face, type, start, end, across, size, sentence }) => ({
    id,
    face,
    type,
    typeNumber: type && imperfection(type).number,
    startMm: start,
    endMm: end,
    acrossMm: across,
    sizeMm: size,
    sentence,
  })),
  dimensions: measures.map(({ dimension, station, value, at }) => ({
    dimension,
    station,
    value,
    unit: DIMENSION_FACTS[dimension].unit,
    atMm: at,
  })),
  statements: statements.map(({ statement, answer }) => ({ statement, answer })),
  pieceSentence,
  answers: Object.entries(answers).map(([question, chosenOption]) => ({ question, chosenOption })),
});
