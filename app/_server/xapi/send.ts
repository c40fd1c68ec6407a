import { type Statement, XAPI_VERSION } from "@/lib/xapi";
import {
  listWaiting,
  noteRefused,
  noteSent,
  noteTrouble,
  readDelivery,
  type WaitingStatement,
} from "@/prisma/stores/xapi";
import type { RecordStore } from "./settings";

/** Statements that are sent in one request. */
export const BATCH = 50;
/** A store that answers nothing for so long counts as down, ms. */
const PATIENCE_MS = 30_000;
/** The pause after the first failure; it doubles with each one that follows, ms. */
const FIRST_PAUSE_MS = 5_000;
const LONGEST_PAUSE_MS = 60 * 60_000;

/** What became of a request: taken, also where the store had them already; not wanted as they are; or no way through. */
type Answer =
  | { readonly kind: "taken" }
  | { readonly kind: "unwanted"; readonly reason: string }
  | { readonly kind: "trouble"; readonly reason: string };

/** These say nothing against a statement: the store has to be put right, or is busy. */
const NOT_THE_STATEMENTS = new Set([401, 403, 404, 405, 407, 408, 425, 429]);

export interface Sending {
  readonly store: RecordStore;
  readonly clock: () => Date;
  readonly patienceMs?: number;
}

/**
 * Sends what waits, in its order and in batches, until nothing waits or the store cannot be reached; before the end of a pause
 * nothing at all. A statement that was stored whose answer got lost is sent again, which its id makes harmless. Where a batch is
 * refused its statements go one by one, so that only the one at fault is kept back.
 */
export async function sendWaiting(sending: Sending): Promise<void> {
  const { failures, nextTryAt } = await readDelivery();
  if (nextTryAt && nextTryAt > sending.clock()) return;
  let known = failures;
  for (;;) {
    const waiting = await listWaiting(BATCH);
    if (waiting.length === 0) return;
    const trouble = await sendBatch(waiting, sending);
    if (trouble !== null) {
      const now = sending.clock();
      const pause = Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** known);
      await noteTrouble(trouble, now, known + 1, new Date(now.getTime() + pause));
      return;
    }
    known = 0;
  }
}

/** Sends some statements; answers why it had to stop, or null. */
async function sendBatch(waiting: readonly WaitingStatement[], sending: Sending): Promise<string | null> {
  const answer = await post(
    waiting.map(({ statement }) => statement),
    sending,
  );
  if (answer.kind === "trouble") return answer.reason;
  if (answer.kind === "taken") {
    await noteSent(
      waiting.map(({ number }) => number),
      sending.clock(),
    );
    return null;
  }
  const [only] = waiting;
  if (waiting.length === 1) {
    await noteRefused(only.number, answer.reason, sending.clock());
    return null;
  }
  for (const one of waiting) {
    const trouble = await sendBatch([one], sending);
    if (trouble !== null) return trouble;
  }
  return null;
}

async function post(statements: readonly Statement[], { store, patienceMs = PATIENCE_MS }: Sending): Promise<Answer> {
  try {
    const response = await fetch(store.address, {
      method: "POST",
      headers: {
        "content-type": "application/json",
        "x-experience-api-version": XAPI_VERSION,
        ...(store.authorization && { authorization: store.authorization }),
      },
      body: JSON.stringify(statements),
      redirect: "error",
      signal: AbortSignal.timeout(patienceMs),
    });
    const text = await response.text();
    return answerOf(response.status, text, statements.length);
  } catch (error) {
    return { kind: "trouble", reason: whyUnreached(error) };
  }
}

function answerOf(status: number, text: string, asked: number): Answer {
  if (status === 200 || status === 204) return { kind: "taken" };
  // one of several may differ from what is there, and then none of them was stored
  if (status === 409) return asked === 1 ? { kind: "taken" } : { kind: "unwanted", reason: "409" };
  const said = text.replace(/\s+/g, " ").trim().slice(0, 200);
  const reason = said ? `${status}: ${said}` : `${status}`;
  const isAgainstThem = status >= 400 && status < 500 && !NOT_THE_STATEMENTS.has(status);
  return { kind: isAgainstThem ? "unwanted" : "trouble", reason };
}

function whyUnreached(error: unknown): string {
  if (!(error instanceof Error)) return "the record store could not be reached";
  if (error.name === "TimeoutError") return "the record store did not answer in time";
  const { cause } = error;
  return cause instanceof Error && "code" in cause && cause.code
    ? `the record store could not be reached (${String(cause.code)})`
    : "the record store could not be reached";
}
