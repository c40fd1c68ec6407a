import { z } from "zod";
import { IMPERFECTION_TYPES, type ImperfectionType } from "@/lib/imperfections";
import { reportSchema } from "@/lib/report";
import { sectionResultSchema } from "@/lib/results";
import type { Truth } from "@/lib/specimen";
import { FACES, PROCESSES } from "@/lib/weld";
import type { Prisma } from "./generated/client/client";

/** What a JSON column may hold. A value that does not fit was written by another program: reading it throws. */
interface Column<Value> {
  read(json: Prisma.JsonValue): Value;
  write(value: Value): Prisma.InputJsonValue;
}

/**
 * Version 1 of every column is the only one so far. A later shape gets a schema of its own here, and `read` upgrades the
 * older ones to it.
 */
function column<Value>(schema: z.ZodType<Value>): Column<Value> {
  return {
    read: (json) => schema.parse(json),
    write: (value) => schema.parse(value) as Prisma.InputJsonValue,
  };
}

const point = z.tuple([z.number(), z.number()]);
const types = IMPERFECTION_TYPES as readonly [ImperfectionType, ...ImperfectionType[]];

const truthItem = z.strictObject({
  id: z.string(),
  face: z.enum(FACES),
  type: z.enum(types),
  start: z.number(),
  end: z.number(),
  across: z.number(),
  size: z.number().nullable(),
  width: z.number().nullable(),
  worst: point,
  outline: z.array(point),
  neutral: z.boolean(),
});

const truth: z.ZodType<Truth> = z.strictObject({
  version: z.literal(1),
  generator: z.string(),
  joint: z.strictObject({
    kind: z.literal("butt"),
    process: z.enum(PROCESSES),
    length: z.number(),
    width: z.number(),
    thickness: z.number(),
    grooveAngle: z.number(),
    rootGap: z.number(),
    rootFace: z.number(),
  }),
  items: z.array(truthItem),
});

export const reportColumn = column(reportSchema);
export const truthColumn = column(truth);
export const resultColumn = column(sectionResultSchema);
