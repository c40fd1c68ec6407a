import { z } from "zod";
import { CLUTTER, IMPERFECTION_TYPES, type ImperfectionType, imperfection } from "../imperfections";
import { BUTT_PLATE_LENGTH, BUTT_PLATE_WIDTH, DIMENSIONS, FACES, POSITIONS, PROCESSES } from "../weld";
import type { ClutterItem, DimensionTruth, Truth, TruthItem } from "./truth";

const along = z.number().min(0).max(BUTT_PLATE_LENGTH);
const across = z
  .number()
  .min(-BUTT_PLATE_WIDTH / 2)
  .max(BUTT_PLATE_WIDTH / 2);
const point = z.tuple([along, across]).readonly();
const length = z.number().positive();

const jointSchema = z.strictObject({
  kind: z.literal("butt"),
  process: z.enum(PROCESSES),
  // truths written before positions were told apart were all flat
  position: z.enum(POSITIONS).default("PA"),
  length,
  width: length,
  thickness: length,
  grooveAngle: z.number().min(0).max(180),
  rootGap: z.number().min(0),
  rootFace: z.number().min(0),
});

/** One imperfection of a truth file: the shape, the order of its ends, and that its type can occur on its face. */
export const truthItemSchema = z
  .strictObject({
    id: z.string().regex(/^[a-z0-9-]{1,40}$/),
    face: z.enum(FACES),
    type: z.enum(IMPERFECTION_TYPES as readonly [ImperfectionType, ...ImperfectionType[]]),
    start: along,
    end: along,
    across,
    size: z.number().min(0).max(50).nullable(),
    width: z.number().min(0).nullable(),
    worst: point,
    outline: z.array(point).min(3).readonly(),
    neutral: z.boolean(),
  })
  .refine((item) => item.start <= item.end, { error: "must not lie before start", path: ["end"] })
  .refine((item) => imperfection(item.type).faces.includes(item.face), {
    error: "this type does not occur on this face",
    path: ["type"],
  }) satisfies z.ZodType<TruthItem>;

const clutterItemSchema = z
  .strictObject({
    id: z.string().regex(/^[a-z0-9-]{1,40}$/),
    face: z.enum(FACES),
    kind: z.enum(CLUTTER),
    start: along,
    end: along,
    across,
    outline: z.array(point).min(3).readonly(),
  })
  .refine((item) => item.start <= item.end, {
    error: "must not lie before start",
    path: ["end"],
  }) satisfies z.ZodType<ClutterItem>;

const dimensionSchema = z.strictObject({
  dimension: z.enum(DIMENSIONS),
  value: z.number().min(0),
  at: along.nullable(),
  along: z
    .strictObject({
      from: along,
      step: length,
      values: z.array(z.number().nullable()).readonly(),
    })
    .nullable(),
}) satisfies z.ZodType<DimensionTruth>;

/** A truth as stored or written to a file. Refuses two items of one id. */
export const truthSchema = z.strictObject({
  version: z.literal(1),
  generator: z.string().min(1),
  joint: jointSchema,
  items: z
    .array(truthItemSchema)
    .refine((items) => new Set(items.map((item) => item.id)).size === items.length, {
      error: "every id must be different",
    })
    .readonly(),
  // truths written before clutter was listed have none
  clutter: z.array(clutterItemSchema).readonly().default([]),
  // and truths written before dimensions were measured have none of these
  dimensions: z
    .array(dimensionSchema)
    .refine((all) => new Set(all.map(({ dimension }) => dimension)).size === all.length, {
      error: "every dimension stands there once",
    })
    .readonly()
    .default([]),
}) satisfies z.ZodType<Truth>;
