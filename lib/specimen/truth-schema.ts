import { z } from "zod";
import { CLUTTER, IMPERFECTION_TYPES, type ImperfectionType, imperfection } from "../imperfections";
import {
  DIMENSIONS,
  FILLET_POSITIONS,
  FILLET_PROCESSES,
  JOINT_KINDS,
  type JointKind,
  PIECES,
  POSITIONS,
  PROCESSES,
  STATEMENT_ANSWERS,
  STATEMENTS,
} from "../weld";
import type { ButtTruth, ClutterItem, DimensionTruth, FilletTruth, StatementTruth, Truth, TruthItem } from "./truth";

const ID = z.string().regex(/^[a-z0-9-]{1,40}$/);
const length = z.number().positive();

function placesOf(kind: JointKind) {
  const { length, halfWidth } = PIECES[kind];
  const along = z.number().min(0).max(length);
  const across = z.number().min(-halfWidth).max(halfWidth);
  const point = z.tuple([along, across]).readonly();
  return { along, across, point, outline: z.array(point).min(3).readonly() };
}

/** One imperfection of a truth file: the shape, the order of its ends, and that its type can occur on its face. */
function itemSchemaOf(kind: JointKind) {
  const { along, across, point, outline } = placesOf(kind);
  return z
    .strictObject({
      id: ID,
      face: z.enum(PIECES[kind].faces),
      type: z.enum(IMPERFECTION_TYPES as readonly [ImperfectionType, ...ImperfectionType[]]),
      start: along,
      end: along,
      across,
      size: z.number().min(0).max(50).nullable(),
      width: z.number().min(0).nullable(),
      worst: point,
      outline,
      neutral: z.boolean(),
    })
    .refine((item) => item.start <= item.end, { error: "must not lie before start", path: ["end"] })
    .refine((item) => imperfection(item.type).faces.includes(item.face), {
      error: "this type does not occur on this face",
      path: ["type"],
    }) satisfies z.ZodType<TruthItem>;
}

function clutterSchemaOf(kind: JointKind) {
  const { along, across, outline } = placesOf(kind);
  return z
    .strictObject({
      id: ID,
      face: z.enum(PIECES[kind].faces),
      kind: z.enum(CLUTTER),
      start: along,
      end: along,
      across,
      outline,
    })
    .refine((item) => item.start <= item.end, {
      error: "must not lie before start",
      path: ["end"],
    }) satisfies z.ZodType<ClutterItem>;
}

function dimensionSchemaOf(kind: JointKind) {
  const { along } = placesOf(kind);
  return z.strictObject({
    dimension: z.enum(DIMENSIONS),
    station: z.int().min(1).nullable().default(null),
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
}

const statementSchema = z.strictObject({
  statement: z.enum(STATEMENTS),
  right: z
    .array(z.enum(Object.values(STATEMENT_ANSWERS).flat()))
    .min(1)
    .readonly(),
  value: z.number(),
  limit: z.number(),
}) satisfies z.ZodType<StatementTruth>;

/** What truths of both kinds have. Refuses two items of one id. */
const commonOf = (kind: JointKind) => ({
  version: z.literal(1),
  generator: z.string().min(1),
  items: z
    .array(itemSchemaOf(kind))
    .refine((items) => new Set(items.map((item) => item.id)).size === items.length, {
      error: "every id must be different",
    })
    .readonly(),
  // truths written before clutter was listed have none
  clutter: z.array(clutterSchemaOf(kind)).readonly().default([]),
  // and truths written before dimensions were measured have none of these
  dimensions: z
    .array(dimensionSchemaOf(kind))
    .refine((all) => new Set(all.map(({ dimension, station }) => `${dimension} ${station}`)).size === all.length, {
      error: "every dimension stands there once, at each station where it has any",
    })
    .readonly()
    .default([]),
  statements: z.array(statementSchema).readonly().default([]),
});

const buttTruthSchema = z.strictObject({
  ...commonOf("butt"),
  joint: z.strictObject({
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
  }),
}) satisfies z.ZodType<ButtTruth>;

const filletTruthSchema = z.strictObject({
  ...commonOf("fillet"),
  joint: z.strictObject({
    kind: z.literal("fillet"),
    process: z.enum(FILLET_PROCESSES),
    position: z.enum(FILLET_POSITIONS),
    length,
    baseThickness: length,
    standingThickness: length,
    size: z.strictObject({ symbol: z.enum(["a", "z"]), value: length }),
    angle: z.number().min(0).max(180),
  }),
  stations: z.array(z.number().min(0).max(PIECES.fillet.length)).readonly(),
  gap: z.strictObject({ datum: z.number().min(0), farEnd: z.number().min(0) }),
}) satisfies z.ZodType<FilletTruth>;

const SCHEMAS: Readonly<Record<JointKind, z.ZodType<Truth>>> = { butt: buttTruthSchema, fillet: filletTruthSchema };

/** A truth as stored or written to a file; what is wrong with it is told by the kind that its joint says. */
export const truthSchema: z.ZodType<Truth> = z
  .looseObject({ joint: z.looseObject({ kind: z.enum(JOINT_KINDS) }) })
  .transform((stored, context) => {
    const parsed = SCHEMAS[stored.joint.kind].safeParse(stored);
    if (parsed.success) return parsed.data;
    for (const issue of parsed.error.issues) context.addIssue({ ...issue });
    return z.NEVER;
  });
