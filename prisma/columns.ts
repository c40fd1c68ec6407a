import { z } from "zod";
import { criteriaSchema, inHouseSchema } from "@/lib/criteria";
import { drillRoundSchema } from "@/lib/drills";
import { eyeAnswerSchema, setDrillSchema } from "@/lib/eye";
import { eyeTaskSchema } from "@/lib/eye-tasks";
import { questionSchema } from "@/lib/questions";
import { reportSchema } from "@/lib/report";
import { SECTIONS, storedResultSchema } from "@/lib/results";
import { reviewContentSchema } from "@/lib/review";
import { paperPieceSchema, storedPaperSchema } from "@/lib/sittings";
import { truthSchema } from "@/lib/specimen";
import { packedTrailSchema } from "@/lib/trail";
import { endViewsSchema } from "@/lib/weld";
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
export function column<Value>(schema: z.ZodType<Value>): Column<Value> {
  return {
    read: (json) => schema.parse(json),
    write: (value) => schema.parse(value) as Prisma.InputJsonValue,
  };
}

export const sentencingCriteriaColumn = column(criteriaSchema);
export const reportColumn = column(reportSchema);
export const questionsColumn = column(z.array(questionSchema));
export const truthColumn = column(truthSchema);
export const endsColumn = column(endViewsSchema);
export const trailColumn = column(packedTrailSchema);
export const resultColumn = column(storedResultSchema);
export const reviewContentColumn = column(reviewContentSchema);
export const drillGaugesColumn = column(drillRoundSchema.shape.gauges);
export const eyeTaskColumn = column(eyeTaskSchema);
export const eyeAnswerColumn = column(eyeAnswerSchema);
export const setTypesColumn = column(setDrillSchema.shape.types);
export const criteriaColumn = column(inHouseSchema);
export const paperColumn = column(storedPaperSchema);
export const paperCriteriaColumn = column(z.partialRecord(z.enum(SECTIONS), criteriaSchema));
export const askedPieceColumn = column(paperPieceSchema);
