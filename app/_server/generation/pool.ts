import { Worker } from "node:worker_threads";
import type { Outlook, OutlookOrder } from "../forecast";
import type { CandidateOrder, Foreseen } from "../next/foresee-pieces";
import type { FaceOrder, MadeFace } from "./make-face";
import type { SeedOrder } from "./seed-with";

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

interface Hand {
  readonly worker: Worker;
  busy: Waiting | null;
}

/**
 * A small pool of worker threads that stay warm: the first face in a new thread takes twice as long as the next ones.
 * A learner who waits goes before work done ahead.
 */
export interface Pool {
  make(order: FaceOrder, options: { urgent: boolean; onStage?: (stage: string) => void }): Promise<MadeFace>;
  /** Somebody waits for it as well, and it takes a second or two. */
  foresee(order: OutlookOrder): Promise<Outlook>;
  /** Nobody waits for it. */
  drawAhead(order: CandidateOrder): Promise<Foreseen>;
  seek(order: SeedOrder): Promise<string>;
  close(): Promise<void>;
}

export function openPool(workerFile: string, size: number): Pool {
  const hands: Hand[] = [];
  const urgent: Waiting[] = [];
  const ahead: Waiting[] = [];
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
    while (urgent.length > 0 || ahead.length > 0) {
      const isAheadOnly = urgent.length === 0;
      // Work done ahead uses one thread, so that a learner's own browser on the same machine is not starved.
      if (isAheadOnly && hands.some((hand) => hand.busy)) return;
      const hand = hands.find((candidate) => !candidate.busy) ?? (hands.length < size ? hire() : null);
      if (!hand) return;
      const next = (urgent.shift() ?? ahead.shift()) as Waiting;
      hand.busy = next;
      // an idle thread keeps no process alive, one at work does
      hand.worker.ref();
      const { job, task } = next;
      const request: JobRequest = { job, task };
      hand.worker.postMessage(request);
    }
  }

  /** What a task comes to: a face for a face, an outlook for an outlook, what is foreseen for candidates, a seed for seeds. */
  function run<Done>(task: Task, queue: Waiting[], onStage: (stage: string) => void = () => undefined): Promise<Done> {
    return new Promise<Done>((resolve, reject) => {
      queue.push({ task, job: jobs++, onStage, resolve, reject });
      assign();
    });
  }

  return {
    make: (order, options) => run<MadeFace>({ kind: "face", order }, options.urgent ? urgent : ahead, options.onStage),
    foresee: (order) => run<Outlook>({ kind: "outlook", order }, urgent),
    drawAhead: (order) => run<Foreseen>({ kind: "candidates", order }, ahead),
    seek: (order) => run<string>({ kind: "seed", order }, ahead),
    async close() {
      closed = true;
      await Promise.all(hands.map((hand) => hand.worker.terminate()));
    },
  };
}
