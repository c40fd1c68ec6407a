import { z } from "zod";
import { refusedSchema } from "./board";

export type Acted =
  | { readonly ok: true; readonly id: string | null }
  | { readonly ok: false; readonly message: string; readonly fields: Readonly<Record<string, string>> };

const doneSchema = z.object({ ok: z.literal(true), id: z.string().optional() });
const answerSchema = z.union([doneSchema, refusedSchema]);

const UNREACHED: Acted = {
  ok: false,
  message:
    "The workshop's server could not be reached, so it is not certain that this was done. Look at the board once it is live again, then try again if need be.",
  fields: {},
};

/** Does something to a sitting or to one section of it, as a tutor; answered with what came of it. */
export async function sendAct(path: string, body?: object): Promise<Acted> {
  try {
    const response = await fetch(path, {
      method: "POST",
      headers: { "content-type": "application/json" },
      ...(body && { body: JSON.stringify(body) }),
    });
    const read = answerSchema.parse(await response.json());
    if (read.ok) return { ok: true, id: read.id ?? null };
    return { ok: false, message: read.message, fields: read.fields };
  } catch {
    return UNREACHED;
  }
}
