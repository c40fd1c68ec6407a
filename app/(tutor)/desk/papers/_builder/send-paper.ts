import { z } from "zod";
import { type PaperDraft, type Problems, written } from "./draft";

/** A paper as the server has it: its id, and the time of the save that this page has seen. */
export interface Kept {
  readonly id: string;
  readonly number: number;
  readonly seen: string;
}

export type Sent =
  | { readonly ok: true; readonly kept: Kept }
  | {
      readonly ok: false;
      readonly message: string;
      readonly problems: Problems;
      /** Time of a later save from another window. */
      readonly newer: string | null;
    };

const savedSchema = z.object({ ok: z.literal(true), id: z.string(), number: z.number(), updatedAt: z.string() });
const refusedSchema = z.object({
  ok: z.literal(false),
  message: z.string(),
  fields: z.record(z.string(), z.string()).default({}),
  updatedAt: z.string().optional(),
});
const answerSchema = z.union([savedSchema, refusedSchema]);

const UNREACHED: Sent = {
  ok: false,
  message:
    "The workshop's server could not be reached, so nothing was saved. What you wrote stays on this page; save it again.",
  problems: {},
  newer: null,
};

/** Saves a draft: as a new paper where none is kept, or over the save that was seen. */
export async function sendPaper(draft: PaperDraft, kept: Pick<Kept, "id" | "seen"> | null): Promise<Sent> {
  try {
    const response = await fetch(kept ? `/api/papers/${kept.id}` : "/api/papers", {
      method: kept ? "PUT" : "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify({ paper: written(draft), seen: kept?.seen ?? null }),
    });
    const read = answerSchema.parse(await response.json());
    if (read.ok) return { ok: true, kept: { id: read.id, number: read.number, seen: read.updatedAt } };
    return { ok: false, message: read.message, problems: read.fields, newer: read.updatedAt ?? null };
  } catch {
    return UNREACHED;
  }
}
