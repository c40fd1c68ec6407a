import { Worker } from "node:worker_threads";
import type { FaceOrder, MadeFace } from "./make-face";

export interface JobRequest extends FaceOrder {
  readonly job: number;
}

export type JobAnswer =
  | { readonly job: number; readonly kind: "stage"; readonly stage: string }
  | { readonly job: number; readonly kind: "made"; readonly made: MadeFace }
  | { readonly job: number; readonly kind: "failed"; readonly reason: string };

interface Waiting extends JobRequest {
  readonly onStage: (stage: string) => void;
  readonly resolve: (made: MadeFace) => void;
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
      if (answer.kind === "made") waiting.resolve(answer.made);
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
      const { job, seed, asked, face } = next;
      const request: JobRequest = { job, seed, asked, face };
      hand.worker.postMessage(request);
    }
  }

  return {
    make(order, options) {
      return new Promise((resolve, reject) => {
        const onStage = options.onStage ?? (() => undefined);
        (options.urgent ? urgent : ahead).push({ ...order, job: jobs++, onStage, resolve, reject });
        assign();
      });
    },
    async close() {
      closed = true;
      await Promise.all(hands.map((hand) => hand.worker.terminate()));
    },
  };
}
