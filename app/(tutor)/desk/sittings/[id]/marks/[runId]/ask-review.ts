import { z } from "zod";
import { refusedSchema } from "../../../_board/board";

const verdict = z.object({ shown: z.number(), passed: z.boolean() });

/** What annulling a question would do. */
export const annulmentSchema = z.object({
  ok: z.literal(true),
  asked: z.number(),
  marks: z.number(),
  verdicts: z.number(),
  rows: z.array(z.object({ runId: z.string(), learner: z.string(), before: verdict, after: verdict })),
});
export type Annulment = z.infer<typeof annulmentSchema>;

const line = z.object({ earned: z.number(), worth: z.number() }).nullable();
const choice = verdict.extend({
  ruleVersion: z.string(),
  computed: z.number(),
  mark: z.number(),
  waiting: z.array(z.object({ act: z.int(), line: z.string(), marks: z.number(), ruleVersion: z.string() })),
});
/** What marking again would do. */
export const againSchema = z.object({
  ok: z.literal(true),
  first: choice,
  again: choice,
  lines: z.array(z.object({ line: z.string(), before: line, after: line })),
});
export type Again = z.infer<typeof againSchema>;

export const doneSchema = z.object({ ok: z.literal(true) });

export type Refused = {
  readonly ok: false;
  readonly message: string;
  readonly fields: Readonly<Record<string, string>>;
};

const UNREACHED: Refused = {
  ok: false,
  message:
    "The workshop's server could not be reached, so it is not certain that this was done. Reload the page to see how the mark stands, then try again if need be.",
  fields: {},
};

/** Asks something of the mark of a section, as a tutor: a preview, or an act. */
export async function askReview<Answer>(
  runId: string,
  act: string,
  body: object,
  schema: z.ZodType<Answer>,
): Promise<Answer | Refused> {
  try {
    const response = await fetch(`/api/runs/${runId}/review/${act}`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(body),
    });
    return z.union([schema, refusedSchema]).parse(await response.json());
  } catch {
    return UNREACHED;
  }
}
