import { z } from "zod";
import { DRILLS } from "../drills";
import { EYE_DRILLS, EYE_TASKS, NAMINGS } from "../eye";
import { moment } from "./common";
import { recordedPieceSchema } from "./piece";
import { recordedProgressSchema } from "./progress";
import { recordedSittingSchema } from "./sitting";

/** By what a file says that it is a record; a change that readers have to know of gets another version. */
export const RECORD_FORMAT = "toeline-learner-record";
export const RECORD_VERSION = 1;

/** Everything kept of one learner that whoever makes the record may know. */
export const wholeRecordSchema = z.strictObject({
  format: z.literal(RECORD_FORMAT),
  version: z.literal(RECORD_VERSION),
  madeAt: moment,
  madeFor: z.enum(["learner", "tutor"]),
  workshop: z.strictObject({ name: z.string(), address: z.url() }),
  person: z.strictObject({
    id: z.string(),
    name: z.string(),
    signInName: z.string(),
    role: z.enum(["learner", "tutor"]),
    createdAt: moment,
    /** By which statements of the Experience API name them. */
    xapiAccountName: z.uuid(),
    askedToBeErasedAt: moment.nullable(),
  }),
  /** What is kept and is not in here, in sentences. */
  leftOut: z.array(z.string()),
  classes: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      joinedAt: moment,
      leftAt: moment.nullable(),
      timeFactor: z.number(),
    }),
  ),
  devices: z.array(
    z.strictObject({ signedInSince: moment, browser: z.string(), networkAddress: z.string().nullable() }),
  ),
  sittings: z.array(recordedSittingSchema),
  /** Pieces for practice and of sittings, the earliest start first. */
  pieces: z.array(recordedPieceSchema),
  drillRounds: z.array(
    z.strictObject({
      id: z.string(),
      drill: z.enum(DRILLS),
      gauges: z.array(z.string()),
      asked: z.int(),
      right: z.int(),
      medianErrorMm: z.number().nullable(),
      seconds: z.int(),
      finishedAt: moment,
    }),
  ),
  /** Rounds of drills for the eye that were finished, with what became of each task. */
  eyeRounds: z.array(
    z.strictObject({
      id: z.string(),
      drill: z.enum(EYE_DRILLS),
      naming: z.enum(NAMINGS),
      isTimed: z.boolean(),
      begunAt: moment,
      finishedAt: moment,
      tasks: z.array(
        z.strictObject({
          kind: z.enum(EYE_TASKS),
          /** Imperfection or clutter that it was about. */
          about: z.string().nullable(),
          isRight: z.boolean(),
          errorMm: z.number().nullable(),
        }),
      ),
    }),
  ),
  progress: recordedProgressSchema,
  /** What tutors did that is about them. */
  log: z.array(
    z.strictObject({
      at: moment,
      by: z.string(),
      act: z.string(),
      sitting: z.string().nullable(),
      sectionOfSitting: z.string().nullable(),
      reason: z.string().nullable(),
      details: z.record(z.string(), z.union([z.string(), z.number()])),
    }),
  ),
});
export type WholeRecord = z.infer<typeof wholeRecordSchema>;

/** What of a record is made entry by entry, since each may be large. */
type Listed = "pieces";
type Whole = Exclude<keyof WholeRecord, Listed>;

/** A field of a record with its whole value; or that a list begins, and then each of its entries. */
export type RecordPart =
  | { readonly [Name in Whole]: { readonly field: Name; readonly value: WholeRecord[Name] } }[Whole]
  | { readonly begins: Listed }
  | { readonly list: Listed; readonly value: WholeRecord[Listed][number] };
