import type { Refusal } from "../refusal";
import { answerRefusal } from "./answer";

const POLL_MS = 1000;
const HEARTBEAT_MS = 10_000;
/** A browser connects again by itself; by then it is asked anew who it is. */
const LONGEST_MS = 10 * 60_000;
/** How long a browser waits before it connects again. */
const RETRY_MS = 2000;

/** What is read over and over: a value that stays the same until something changes, and the server's time. */
export type Reading = { readonly ok: true; readonly now: Date; readonly value: object } | Refusal;

interface LiveOptions {
  /** Name of the event that carries the value. */
  readonly event: string;
  read(): Promise<Reading>;
  /** Called with every heartbeat. */
  onHeartbeat?(): Promise<void>;
}

/**
 * Server-sent events: the value at once, and again whenever it has changed, each with the server's time as `now`; a "time"
 * event with nothing but the time in between. Reads the database once a second, so that it makes no difference which
 * process changed something. A refusal that comes later ends the stream with a "refused" event.
 */
export async function liveAnswer(request: Request, { event, read, onHeartbeat }: LiveOptions): Promise<Response> {
  const first = await read();
  if (!first.ok) return answerRefusal(first);
  const encoder = new TextEncoder();
  let isOver = false;
  const stream = new ReadableStream<Uint8Array>({
    async start(controller) {
      const began = Date.now();
      const send = (name: string, data: object) =>
        controller.enqueue(encoder.encode(`event: ${name}\ndata: ${JSON.stringify(data)}\n\n`));
      request.signal.addEventListener("abort", () => {
        isOver = true;
      });
      try {
        controller.enqueue(encoder.encode(`retry: ${RETRY_MS}\n\n`));
        let sent = "";
        let heardAt = 0;
        let reading: Reading = first;
        while (!isOver && Date.now() - began < LONGEST_MS) {
          if (!reading.ok) {
            send("refused", { code: reading.code });
            break;
          }
          const text = JSON.stringify(reading.value);
          const isHeartbeat = Date.now() - heardAt >= HEARTBEAT_MS;
          if (text !== sent) send(event, { now: reading.now, ...reading.value });
          else if (isHeartbeat) send("time", { now: reading.now });
          if (isHeartbeat) {
            heardAt = Date.now();
            await onHeartbeat?.();
          }
          sent = text;
          await new Promise((resolve) => setTimeout(resolve, POLL_MS));
          if (!isOver) reading = await read();
        }
      } catch (error) {
        // a browser that went away in the middle of a write is no error
        if (!isOver) console.error("a live view ended:", error instanceof Error ? error.message : error);
      }
      if (!isOver) controller.close();
      isOver = true;
    },
    cancel() {
      isOver = true;
    },
  });
  return new Response(stream, {
    headers: {
      "content-type": "text/event-stream; charset=utf-8",
      "cache-control": "no-store, no-transform",
      // a proxy that collects answers would hold events back
      "x-accel-buffering": "no",
    },
  });
}
