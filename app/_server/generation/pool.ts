import { Worker } from "node:worker_threads";
import type { Outlook, OutlookOrder } from "../forecast";
import type { CandidateOrder, Foreseen } from "../next/foresee-pieces";
import type { FaceOrder, MadeFace } from "./make-face";
import type { SeedOrder } from "./seed-with";
import { openLine, type Urgency } from "./waiting-line";

/** A face to be made, what can be said of pieces that are drawn and not made, what such pieces would have, or a seed whose piece has what is wanted. */
export type Task =
  | { readonly kind: "face"; readonly order: FaceOrder }
  | { readonly kind: "outlook"; readonly order: OutlookOrder }
  | { readonly kind: "candidates"; readonly order: CandidateOrder }
  | { readonly kind: "seed"; readonly order: SeedOrder };

export interface JobRequest {
  readonly job: number;
  readonly task: Task;
}

export type JobAnswer =
  | { readonly job: number; readonly kind: "stage"; readonly stage: string }
  | { readonly job: number; readonly kind: "done"; readonly done: MadeFace | Outlook | Foreseen | string }
  | { readonly job: number; readonly kind: "failed"; readonly reason: string };

interface Waiting extends JobRequest {
  readonly onStage: (stage: string) => void;
  /** With what its task comes to. */
  readonly resolve: (done: never) => void;
  readonly reject: (error: Error) => void;
}

interface Running {
  readonly name?: string;
  readonly onStage?: (stage: string) => void;
  readonly look?: AbortSignal;
}

interface Hand {
  readonly worker: Worker;
  busy: Waiting | null;
}

export interface Making {
  readonly urgent: boolean;
  /** Of the piece, by which its faces are hurried. */
  readonly name?: string;
  readonly onStage?: (stage: string) => void;
}

/**
 * A small pool of worker threads that stay warm: the first face in a new thread takes twice as long as the next ones.
 * A learner who waits goes before work done ahead; what a thread has begun it ends.
 */
export interface Pool {
  make(order: FaceOrder, making: Making): Promise<MadeFace>;
  /** Somebody has come who waits for a piece that is made ahead: what is left of it is as urgent from now on. */
  hurry(name: string): void;
  /**
   * It takes a second or two. Whoever pressed a button waits for it like a learner; whoever only has a look gives a signal, comes
   * behind learners' pieces, and is refused with the signal's reason where it came before the look began.
   */
  foresee(order: OutlookOrder, look?: AbortSignal): Promise<Outlook>;
  /** Nobody waits for it. */
  drawAhead(order: CandidateOrder): Promise<Foreseen>;
  seek(order: SeedOrder): Promise<string>;
  close(): Promise<void>;
}

export function openPool(workerFile: string, size: number): Pool {
  const hands: Hand[] = [];
  const line = openLine<Waiting>();
  let closed = false;
  let jobs = 0;

  function hire(): Hand {
    const worker = new Worker(workerFile, { stderr: false });
    const hand: Hand = { worker, busy: null };
    worker.on("message", (answer: JobAnswer) => {
      const waiting = hand.busy;
      if (!waiting || waiting.job !== answer.job) return;
      if (answer.kind === "stage") return waiting.onStage(answer.stage);
      hand.busy = null;
      hand.worker.unref();
      if (answer.kind === "done") waiting.resolve(answer.done as never);
      else waiting.reject(new Error(answer.reason));
      assign();
    });
    worker.on("error", (error) => lose(hand, error));
    worker.on("exit", (code) => lose(hand, new Error(`specimen worker ended with code ${code}`)));
    worker.unref();
    hands.push(hand);
    return hand;
  }

  function lose(hand: Hand, error: Error): void {
    const at = hands.indexOf(hand);
    if (at < 0) return;
    hands.splice(at, 1);
    hand.busy?.reject(error);
    if (!closed) assign();
  }

  function assign(): void {
    for (;;) {
      const isAnyAtWork = hands.some((hand) => hand.busy);
      const idle = hands.find((hand) => !hand.busy);
      if (!idle && hands.length >= size) return;
      const next = line.next(isAnyAtWork);
      if (!next) return;
      const hand = idle ?? hire();
      hand.busy = next;
      // an idle thread keeps no process alive, one at work does
      hand.worker.ref();
      const { job, task } = next;
      const request: JobRequest = { job, task };
      hand.worker.postMessage(request);
    }
  }

  /** What a task comes to: a face for a face, an outlook for an outlook, what is foreseen for candidates, a seed for seeds. */
  function run<Done>(task: Task, urgency: Urgency, { name, onStage = () => undefined, look }: Running = {}) {
    return new Promise<Done>((resolve, reject) => {
      if (look?.aborted) return reject(look.reason);
      const leave = line.add({ task, job: jobs++, onStage, resolve, reject }, urgency, name);
      // one that is at work goes on to its end: nobody is told
      look?.addEventListener("abort", () => leave() && reject(look.reason), { once: true });
      assign();
    });
  }

  return {
    make: (order, { urgent, ...making }) =>
      run<MadeFace>({ kind: "face", order }, urgent ? "awaited" : "ahead", making),
    hurry(name) {
      line.hurry(name);
      assign();
    },
    foresee: (order, look) => run<Outlook>({ kind: "outlook", order }, look ? "look" : "awaited", { look }),
    drawAhead: (order) => run<Foreseen>({ kind: "candidates", order }, "ahead"),
    seek: (order) => run<string>({ kind: "seed", order }, "ahead"),
    async close() {
      closed = true;
      await Promise.all(hands.map((hand) => hand.worker.terminate()));
    },
  };
}
