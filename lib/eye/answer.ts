import { z } from "zod";
import { IMPERFECTION_TYPES, type ImperfectionType } from "../imperfections";

const typeSchema = z.enum(IMPERFECTION_TYPES as readonly [ImperfectionType, ...ImperfectionType[]]);
const mm = z.number().min(0).max(300);

/** What a learner answers to a task; mm in the frame of its window, x from its left edge. */
export const eyeAnswerSchema = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("spot"), isThere: z.boolean() }),
  z.strictObject({ kind: z.literal("name"), type: typeSchema }),
  z
    .strictObject({ kind: z.literal("ends"), from: mm, to: mm })
    .refine(({ from, to }) => from < to, { path: ["to"], error: "further along than the start" }),
  z.strictObject({ kind: z.literal("size"), value: mm }),
  z.strictObject({ kind: z.literal("pair"), window: z.union([z.literal(0), z.literal(1)]) }),
]);
export type EyeAnswer = Readonly<z.infer<typeof eyeAnswerSchema>>;
