import { z } from "zod";
import type { Problem } from "@/lib/criteria";
import { type Draft, written } from "./draft";

/** A set as the server has it: its id, and the time of the version that this page has seen. */
export interface Kept {
  readonly id: string;
  readonly seen: string;
}

export type Sent =
  | { readonly ok: true; readonly kept: Kept }
  | {
      readonly ok: false;
      readonly message: string;
      readonly problems: readonly Problem[];
      /** Time of a newer version that another window stored. */
      readonly newer: string | null;
    };

const storedSchema = z.object({ ok: z.literal(true), id: z.string().optional(), updatedAt: z.string() });
const refusedSchema = z.object({
  ok: z.literal(false),
  message: z.string(),
  problems: z.array(z.object({ field: z.string(), problem: z.string() })).default([]),
  updatedAt: z.string().optional(),
});
const answerSchema = z.union([storedSchema, refusedSchema]);

const UNREACHED: Sent = {
  ok: false,
  message:
    "The workshop's server could not be reached, so nothing was stored. What you wrote stays here; store it again.",
  problems: [],
  newer: null,
};

/** Stores a draft: as a new set, or over the version that was seen. */
export async function sendCriteria({ basedOn, ...draft }: Draft, kept: Kept | null): Promise<Sent> {
  const own = written({ basedOn, ...draft });
  const body = kept ? { basedOn, own, seen: kept.seen } : { basedOn, own };
  try {
    const response = await fetch(kept ? `/api/criteria/${kept.id}` : "/api/criteria", {
      method: kept ? "PUT" : "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(body),
    });
    const read = answerSchema.parse(await response.json());
    if (!read.ok) return { ok: false, message: read.message, problems: read.problems, newer: read.updatedAt ?? null };
    const id = read.id ?? kept?.id;
    return id === undefined ? UNREACHED : { ok: true, kept: { id, seen: read.updatedAt } };
  } catch {
    return UNREACHED;
  }
}
