import { finishDemoHistory, holdSitting, noteDemoProgress, readDemoHistory } from "@/prisma/stores/demo-history";
import type { DemoClasses } from "./classes";
import { demoHistory } from "./history";
import type { Writing } from "./writing";

interface WriteOptions {
  /** Fewer people than there usually are. */
  readonly classes?: DemoClasses;
  readonly now: () => Date;
  /** Between two entries, so that whoever works meanwhile is not kept waiting. */
  readonly rest: () => Promise<void>;
  /** Before an entry that failed is tried again. */
  readonly pause: () => Promise<void>;
  readonly report: (what: string, error: unknown) => void;
}

/** So often an entry is tried before it is left out, so that one of them cannot keep the rest back. */
const TRIES = 3;

/**
 * Writes the past of the demo workshop, through the use cases that everybody's work goes through, from where it was left. What was
 * cut short is gone over again; each entry leaves alone what it finds done. Throws where the database does not take how far it is.
 */
export async function writeHistory(
  { piece, specimens }: Pick<Writing, "piece" | "specimens">,
  { now, rest, pause, report, classes }: WriteOptions,
): Promise<void> {
  const kept = await readDemoHistory();
  if (!kept || kept.finishedAt !== null) return;
  const { openedAt } = kept;
  const entries = demoHistory(openedAt, classes);
  for (let n = kept.done; n < entries.length; n++) {
    await noteDemoProgress(n, entries.length);
    for (let tries = 1; tries <= TRIES; tries++) {
      try {
        await entries[n].write({ openedAt, piece, specimens });
        break;
      } catch (error) {
        report(`entry ${n + 1} of the demo's history could not be written`, error);
        // while it is tried again, its sitting stays out of reach of today's clock
        await (tries < TRIES ? pause() : holdSitting(null));
      }
    }
    await rest();
  }
  await noteDemoProgress(entries.length, entries.length);
  await finishDemoHistory(now());
}
