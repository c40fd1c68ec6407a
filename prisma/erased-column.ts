import { z } from "zod";
import { SECTIONS } from "@/lib/results";
import { RUN_STATES } from "@/lib/sittings";
import { column } from "./columns";
import type { Prisma } from "./generated/client/client";

const erasedLearnerSchema = z.strictObject({
  sections: z.array(
    z.strictObject({
      section: z.enum(SECTIONS),
      isBorderline: z.boolean(),
      state: z.enum(RUN_STATES),
      isClosed: z.boolean(),
    }),
  ),
});
/** One learner of a sitting who was erased since: which sections there were and how each had ended. */
export type ErasedLearner = z.infer<typeof erasedLearnerSchema>;

export const erasedColumn = column(z.array(erasedLearnerSchema));

/** Those of a sitting; none where nobody was erased. */
export const readErased = (value: Prisma.JsonValue): readonly ErasedLearner[] =>
  value === null ? [] : erasedColumn.read(value);
