import { z } from "zod";

const moment = z.iso.datetime();

/** A section of a sitting as the server tells of it while it is on the bench. */
const liveRunSchema = z.object({
  runId: z.string(),
  sittingId: z.string(),
  state: z.enum(["waiting", "running", "paused", "handed-in", "expired", "void"]),
  /** Why it takes nothing; null while the learner is at it. */
  shut: z.string().nullable(),
  clock: z.object({
    state: z.enum(["not-started", "going", "standing", "stopped"]),
    /** While it goes: when it ends. */
    deadline: moment.nullable(),
    /** While it does not go: what is left, ms. */
    remaining: z.number().nullable(),
  }),
  /** How much the clock gives in all, ms. */
  allowed: z.number().nullable(),
  isSittingPaused: z.boolean(),
  isPaused: z.boolean(),
  liveWindowId: z.string().nullable(),
  savedAt: moment.nullable(),
  closedAt: moment.nullable(),
});
export type LiveRun = z.infer<typeof liveRunSchema>;

const toldSchema = liveRunSchema.extend({ now: moment });
const answeredSchema = z.object({ now: moment, run: liveRunSchema });
const timeSchema = z.object({ now: moment });

/** What the server said of a section, and at what time of its own. */
export interface Told {
  readonly run: LiveRun;
  /** ms. */
  readonly now: number;
}

/** From an event of the live view; null where it is none. */
export function toldByEvent(text: string): Told | null {
  const parsed = toldSchema.safeParse(parsedJson(text));
  if (!parsed.success) return null;
  const { now, ...run } = parsed.data;
  return { run, now: Date.parse(now) };
}

/** From the answer to a request. */
export function toldByAnswer(answer: unknown): Told | null {
  const parsed = answeredSchema.safeParse(answer);
  return parsed.success ? { run: parsed.data.run, now: Date.parse(parsed.data.now) } : null;
}

/** The server's time in an event that carries nothing else, ms. */
export function timeByEvent(text: string): number | null {
  const parsed = timeSchema.safeParse(parsedJson(text));
  return parsed.success ? Date.parse(parsed.data.now) : null;
}

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
