import { z } from "zod";
import { storedResultSchema } from "../results";
import { lineIdSchema } from "./lines";

/** What an act says. Marks in thousandths; acts are named by their numbers, which are in the order of time. */
export const reviewContentSchema = z.discriminatedUnion("kind", [
  /** Gives a line other marks. It belongs to the marking it was said of: `base` is an act that brought it, null for the first. */
  z.strictObject({
    kind: z.literal("overrule"),
    base: z.int().nullable(),
    line: lineIdSchema,
    marks: z.int().min(0).max(100_000),
  }),
  /** Takes a question out. Those annulled in one go, of several learners, share a `batch`. */
  z.strictObject({ kind: z.literal("annul"), question: z.string().min(1), batch: z.string().min(1) }),
  /** The whole section marked again under a later rule; whether that counts, or the first. */
  z.strictObject({ kind: z.literal("re-mark"), result: storedResultSchema, counts: z.boolean() }),
  z.strictObject({ kind: z.literal("take-back"), of: z.int() }),
]);
export type ReviewContent = z.infer<typeof reviewContentSchema>;
export type ReviewKind = ReviewContent["kind"];

/** Something that a tutor said to a mark, signed and dated. Never changed: it is taken back by another act. */
export interface ReviewAct<What extends ReviewContent = ReviewContent> {
  readonly id: number;
  readonly at: Date;
  /** The name as it was then. */
  readonly by: { readonly id: string; readonly name: string };
  readonly reason: string;
  readonly what: What;
}
export type ActOf<Kind extends ReviewKind> = ReviewAct<Extract<ReviewContent, { readonly kind: Kind }>>;
