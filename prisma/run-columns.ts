import { z } from "zod";
import { factorSchema } from "@/lib/sittings";
import type { Prisma } from "./generated/client/client";

/** Moments are kept as text with their zone, and are dates in the program. */
const moment = z.codec(z.iso.datetime(), z.date(), {
  decode: (text) => new Date(text),
  encode: (date) => date.toISOString(),
});
const voided = z.strictObject({ at: moment, by: z.string(), reason: z.string() }).nullable();
const pauses = z.array(z.strictObject({ from: moment, to: moment.nullable() }));
const given = { minutes: z.number().min(0), at: moment, by: z.string(), reason: z.string() };

/** What a sitting keeps beside its columns: version 1 is the only one so far. */
const sittingCourse = z.strictObject({
  openedAt: moment.nullable(),
  begunAt: moment.nullable(),
  pauses,
  closedAt: moment.nullable(),
  wasClosed: z.boolean(),
  releasedAt: moment.nullable(),
  voided,
  graceSeconds: z.number().min(0),
});
export type SittingCourse = z.infer<typeof sittingCourse>;

/** What a run keeps beside its columns and its practice: version 1 is the only one so far. */
const runCourse = z.strictObject({
  minutes: z.number().min(0),
  factor: factorSchema,
  factorChanges: z.array(z.strictObject({ factor: factorSchema, at: moment, by: z.string(), reason: z.string() })),
  addedMinutes: z.array(z.strictObject(given)),
  reopenings: z.array(z.strictObject({ ...given, closedAt: moment })),
  pauses,
  startedAt: moment.nullable(),
  closedAt: moment.nullable(),
  closedBy: z.enum(["learner", "clock", "tutor"]).nullable(),
  voided,
  marksSeenAt: moment.nullable(),
});
export type RunCourse = z.infer<typeof runCourse>;

/** As a JSON column; a value that does not fit was written by another program: reading it throws. Fields beside its own are left out. */
const dated = <Schema extends typeof sittingCourse | typeof runCourse>(schema: Schema) => ({
  read: (json: Prisma.JsonValue): z.infer<Schema> => schema.parse(json) as z.infer<Schema>,
  write: (value: z.infer<Schema>): Prisma.InputJsonValue => {
    const own = Object.keys(schema.shape).map((key) => [key, value[key as keyof typeof value]]);
    return z.encode(schema as z.ZodType, Object.fromEntries(own)) as Prisma.InputJsonValue;
  },
});

export const sittingCourseColumn = dated(sittingCourse);
export const runCourseColumn = dated(runCourse);
