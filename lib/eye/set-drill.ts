import { z } from "zod";
import type { ImperfectionType } from "../imperfections";
import { EYE_TYPES } from "./eye-types";
import { EYE_DRILLS } from "./kinds";

/** Most imperfections that a drill can be about: a round has hardly more tasks. */
const MOST_TYPES = 8;

/** What a tutor sets a class: a drill, and which imperfections most of it is to be about. */
export const setDrillSchema = z.strictObject({
  drill: z.enum(EYE_DRILLS, "one of the drills"),
  types: z
    .array(
      z.enum(
        EYE_TYPES as readonly [ImperfectionType, ...ImperfectionType[]],
        "an imperfection that the eye can tell on a plate",
      ),
    )
    .max(MOST_TYPES, `no more than ${MOST_TYPES} imperfections`)
    .refine((types) => new Set(types).size === types.length, "each imperfection once"),
});
export type SetDrill = Readonly<z.infer<typeof setDrillSchema>>;
