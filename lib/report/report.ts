import { z } from "zod";
import { IMPERFECTION_TYPES, type ImperfectionType } from "../imperfections";
import {
  ASKED_DIMENSIONS,
  DIMENSION_FACTS,
  DIMENSIONS,
  type Dimension,
  FILLET_STATIONS,
  type JointKind,
  PIECES,
  STATEMENTS,
  type Stated,
  type SurfaceFace,
  statedSchema,
} from "../weld";
import { SENTENCES, type WrittenSentence } from "./sentence";

export const MAX_CALLS = 200;

/** One indication as the learner wrote it. Empty fields are null; for a point, `end` is null or equal to `start`. */
export interface Call {
  readonly id: string;
  readonly face: SurfaceFace;
  readonly type: ImperfectionType | null;
  /** mm from the datum, 0 to the length of the piece. */
  readonly start: number | null;
  readonly end: number | null;
  /** mm from the weld's centre line, positive towards plate A, or towards a fillet's base plate. */
  readonly across: number | null;
  /** Depth, height or diameter in mm. */
  readonly size: number | null;
  /** What the learner decided on it. */
  readonly sentence: WrittenSentence | null;
}

/** One dimension as the learner measured it; null where nothing is written yet. */
export interface Measure {
  readonly dimension: Dimension;
  /** 1 at the datum end; null where the whole weld is meant. */
  readonly station: number | null;
  /** mm or degrees, as the dimension says. */
  readonly value: number | null;
  /** Where along the weld it was measured, mm from the datum. */
  readonly at: number | null;
}

/** Chosen options by the id of the question, 0 for the first one; what is not answered is not there. */
export type ChosenOptions = Readonly<Record<string, number>>;

/** The report on one piece, complete or not. */
export interface Report {
  readonly version: 1;
  readonly calls: readonly Call[];
  readonly measures: readonly Measure[];
  readonly statements: readonly Stated[];
  /** What the learner decided on the piece as a whole. */
  readonly pieceSentence: WrittenSentence | null;
  /** To the questions that follow once everything else is closed; empty until then. */
  readonly answers: ChosenOptions;
}

// reports written before anything was sentenced have none
const sentence = z.enum(SENTENCES).nullable().default(null);

function callSchemaOf<K extends JointKind>(kind: K) {
  const { faces, length, halfWidth } = PIECES[kind];
  const along = z.number().min(0).max(length);
  return z.strictObject({
    id: z.string().regex(/^[a-z0-9-]{1,40}$/),
    face: z.enum(faces),
    type: z.enum(IMPERFECTION_TYPES as readonly [ImperfectionType, ...ImperfectionType[]]).nullable(),
    start: along.nullable(),
    end: along.nullable(),
    across: z.number().min(-halfWidth).max(halfWidth).nullable(),
    size: z.number().min(0).max(50).nullable(),
    sentence,
  });
}

function measureSchemaOf(kind: JointKind) {
  const dimensions = DIMENSIONS.filter((dimension) => DIMENSION_FACTS[dimension].joint === kind);
  return z
    .strictObject({
      dimension: z.enum(dimensions),
      // measures written before fillets were measured name no station
      station: z.int().min(1).max(FILLET_STATIONS).nullable().default(null),
      value: z.number().min(0).nullable(),
      at: z.number().min(0).max(PIECES[kind].length).nullable(),
    })
    .superRefine(({ dimension, station, value }, context) => {
      const { most, unit, taken } = DIMENSION_FACTS[dimension];
      if (value !== null && value > most) {
        context.addIssue({ code: "custom", path: ["value"], message: `at most ${most} ${unit}` });
      }
      if ((taken === "at-station") !== (station !== null)) {
        const message = taken === "at-station" ? `the station, 1 to ${FILLET_STATIONS}` : "no station: null";
        context.addIssue({ code: "custom", path: ["station"], message });
      }
    });
}

const isUnique = (keys: readonly string[]): boolean => new Set(keys).size === keys.length;

const answersSchema = z.record(
  z.string().regex(/^q[1-9][0-9]?$/, { error: "the id of a question, q1 to q99" }),
  z.int().min(0).max(3),
);

function schemaOf(calls: z.ZodType<Call>, measures: z.ZodType<Measure>, mostMeasures: number, mostStatements: number) {
  return z
    .strictObject({
      version: z.literal(1),
      calls: z.array(calls).max(MAX_CALLS),
      // reports written before dimensions were asked for have none, and no statements either
      measures: z.array(measures).max(mostMeasures).default([]),
      statements: z.array(statedSchema).max(mostStatements).default([]),
      pieceSentence: sentence,
      // reports written before questions were asked answer none
      answers: answersSchema.default({}),
    })
    .refine((report) => isUnique(report.calls.map((call) => call.id)), {
      error: "calls: every id must be different",
      path: ["calls"],
    })
    .refine((report) => isUnique(report.measures.map(({ dimension, station }) => `${dimension} ${station}`)), {
      error: "measures: every dimension stands there once at most, at each station where it has any",
      path: ["measures"],
    })
    .refine((report) => isUnique(report.statements.map(({ statement }) => statement)), {
      error: "statements: every statement stands there once at most",
      path: ["statements"],
    });
}

const callSchemas = { butt: callSchemaOf("butt"), fillet: callSchemaOf("fillet") };
const measureSchemas = { butt: measureSchemaOf("butt"), fillet: measureSchemaOf("fillet") };

/** A report on a piece of that kind: nothing outside its faces, its length and what is asked for on it. */
export const REPORT_SCHEMAS: Readonly<Record<JointKind, z.ZodType<Report>>> = {
  butt: schemaOf(callSchemas.butt, measureSchemas.butt, ASKED_DIMENSIONS.butt.length, 0),
  fillet: schemaOf(callSchemas.fillet, measureSchemas.fillet, ASKED_DIMENSIONS.fillet.length, STATEMENTS.length),
};

/** A report on whichever piece. */
export const reportSchema: z.ZodType<Report> = schemaOf(
  z.discriminatedUnion("face", [callSchemas.butt, callSchemas.fillet], {
    error: `one of ${[...PIECES.butt.faces, ...PIECES.fillet.faces].join(", ")}`,
  }),
  z.discriminatedUnion("dimension", [measureSchemas.butt, measureSchemas.fillet], {
    error: `one of ${DIMENSIONS.join(", ")}`,
  }),
  ASKED_DIMENSIONS.fillet.length,
  STATEMENTS.length,
);

export const EMPTY_REPORT: Report = {
  version: 1,
  calls: [],
  measures: [],
  statements: [],
  pieceSentence: null,
  answers: {},
};
