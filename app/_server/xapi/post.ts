import { type Statement, XAPI_VERSION } from "@/lib/xapi";
import type { RecordStore } from "./settings";

/** A store that answers nothing for so long counts as down, ms. */
const PATIENCE_MS = 30_000;
/** So much of what a store says is looked at, bytes: a page of an error may be long. */
const MOST_READ = 4096;

/**
 * What became of a request: taken, also where the store had them already; not wanted as they are; no way through; or no way
 * through that one of the statements may be to blame for. A store refuses everything of a request with 403 where one statement
 * in it may not be, such as one that takes another back (xAPI 1.0.3, Data 2.3.2).
 */
export type Answer =
  | { readonly kind: "taken" }
  | {
      readonly kind: "unwanted" | "trouble" | "forbidden" | "failing";
      readonly reason: string;
    };

/** These say nothing against a statement: the store has to be put right, or is busy. */
const NOT_THE_STATEMENTS = new Set([401, 404, 405, 407, 408, 425, 429]);

export interface Sending {
  readonly store: RecordStore;
  readonly clock: () => Date;
  readonly patienceMs?: number;
}

export async function post(
  statements: readonly Statement[],
  { store, patienceMs = PATIENCE_MS }: Sending,
): Promise<Answer> {
  try {
    const response = await fetch(store.address, {
      method: "POST",
      headers: {
        "content-type": "application/json",
        "x-experience-api-version": XAPI_VERSION,
        ...(store.authorization && { authorization: store.authorization }),
      },
      body: JSON.stringify(statements),
      redirect: "manual",
      signal: AbortSignal.timeout(patienceMs),
    });
    const text = await startOf(response);
    const to = response.headers.get("location");
    if (response.status >= 300 && response.status < 400) return { kind: "trouble", reason: redirected(to) };
    return answerOf(response.status, text, statements.length);
  } catch (error) {
    return { kind: "trouble", reason: whyUnreached(error) };
  }
}

/** The first of what was answered; the rest is not fetched. */
async function startOf({ body }: Response): Promise<string> {
  let read = Buffer.alloc(0);
  // leaving the loop gives the stream up
  for await (const part of body ?? []) {
    read = Buffer.concat([read, part]);
    if (read.length >= MOST_READ) break;
  }
  return read.toString("utf8");
}

function answerOf(status: number, text: string, asked: number): Answer {
  if (status === 200 || status === 204) return { kind: "taken" };
  // one of several may differ from what is there, and then none of them was stored
  if (status === 409) return asked === 1 ? { kind: "taken" } : { kind: "unwanted", reason: "409" };
  const said = text.replace(/\s+/g, " ").trim().slice(0, 200);
  const reason = said ? `${status}: ${said}` : `${status}`;
  if (status === 403) return { kind: "forbidden", reason };
  if (status >= 500) return { kind: "failing", reason };
  const isAgainstThem = status >= 400 && !NOT_THE_STATEMENTS.has(status);
  return { kind: isAgainstThem ? "unwanted" : "trouble", reason };
}

const redirected = (to: string | null): string =>
  `the record store wants to be asked elsewhere${to ? ` (${to.slice(0, 200)})` : ""}: XAPI_ENDPOINT has to name that address`;

function whyUnreached(error: unknown): string {
  if (!(error instanceof Error)) return "the record store could not be reached";
  if (error.name === "TimeoutError") return "the record store did not answer in time";
  const { cause } = error;
  return cause instanceof Error && "code" in cause && cause.code
    ? `the record store could not be reached (${String(cause.code)})`
    : "the record store could not be reached";
}
