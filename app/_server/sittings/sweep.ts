import { listSittingsToSweep } from "@/prisma/stores/sittings";
import type { SpecimenSource } from "../generation/specimen-source";
import { settleSitting } from "./settle";

const EVERY_MS = 1000;

/** Brings every sitting up to the clock once. Any process may, at any time. */
export async function sweepSittings(now: Date, specimens: SpecimenSource): Promise<void> {
  for (const id of await listSittingsToSweep()) {
    try {
      await settleSitting(id, now, specimens);
    } catch (error) {
      report(error);
    }
  }
}

const shared = globalThis as typeof globalThis & { toelineSweep?: Promise<void> };

/** Sweeps now, and from then on every second while the process lives; once for each process. */
export function keepSweeping(clock: () => Date, specimens: SpecimenSource): void {
  shared.toelineSweep ??= sweepAndWait(clock, specimens);
}

async function sweepAndWait(clock: () => Date, specimens: SpecimenSource): Promise<void> {
  for (;;) {
    await sweepSittings(clock(), specimens).catch(report);
    await new Promise((resolve) => setTimeout(resolve, EVERY_MS).unref());
  }
}

function report(error: unknown): void {
  console.error("sittings could not be brought up to the clock:", error instanceof Error ? error.message : error);
}
