import { setFlagsFromString } from "node:v8";
import { parentPort } from "node:worker_threads";
import { outlookOf } from "../forecast";
import { foreseePieces } from "../next/foresee-pieces";
import { makeFace } from "./make-face";
import { MAKING_FLAGS } from "./making-flags";
import type { JobAnswer, JobRequest } from "./pool";
import { seedWith } from "./seed-with";

for (const flag of MAKING_FLAGS) setFlagsFromString(flag);

if (!parentPort) throw new Error("the specimen worker runs in a worker thread only");
const port = parentPort;

port.on("message", async ({ job, task }: JobRequest) => {
  const answer = (message: JobAnswer, transfer: ArrayBuffer[] = []) => port.postMessage(message, transfer);
  try {
    if (task.kind === "outlook") return answer({ job, kind: "done", done: outlookOf(task.order) });
    if (task.kind === "candidates") return answer({ job, kind: "done", done: foreseePieces(task.order) });
    if (task.kind === "seed") return answer({ job, kind: "done", done: seedWith(task.order) });
    const made = await makeFace(task.order, (stage) => answer({ job, kind: "stage", stage }));
    const packed = new Uint8Array(made.packed);
    answer({ job, kind: "done", done: { ...made, packed } }, [packed.buffer]);
  } catch (error) {
    answer({ job, kind: "failed", reason: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
