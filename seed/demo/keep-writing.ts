import type { SpecimenSource } from "@/app/_server/generation/specimen-source";
import { readDemoHistory } from "@/prisma/stores/demo-history";
import { readWorkshop } from "@/prisma/stores/workshops";
import { openPieces, type PieceMaker } from "./pieces";
import { writeHistory } from "./write-history";

const LOOK_EVERY_MS = 1500;
/** Between two entries: an autosave that comes in gets its turn. */
const REST_MS = 15;

const wait = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms).unref());
const report = (what: string, error: unknown) =>
  console.error(`${what}:`, error instanceof Error ? error.message : error);

const shared = globalThis as typeof globalThis & { toelineDemo?: Promise<void> };

/** Once for each process: writes the past of a demo workshop as soon as one is opened, or goes on with it after a start. */
export function keepWritingDemo(maker: PieceMaker, specimens: SpecimenSource): void {
  shared.toelineDemo ??= waitAndWrite(maker, specimens).catch((error) => report("the demo's history stopped", error));
}

async function waitAndWrite(maker: PieceMaker, specimens: SpecimenSource): Promise<void> {
  while (!(await readWorkshop())) await wait(LOOK_EVERY_MS);
  if (!(await readDemoHistory())) return;
  const piece = openPieces(maker, wait);
  await writeHistory({ piece, specimens }, { now: () => new Date(), rest: () => wait(REST_MS), report });
}
