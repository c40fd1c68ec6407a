import { z } from "zod";
import type { RunEvent } from "@/lib/sittings";
import { notePresence } from "@/prisma/stores/presences";
import { readSitting } from "@/prisma/stores/sittings";
import type { Caller } from "../caller";
import { describeProblem } from "../input-problem";
import { requireOwnRun } from "../permissions";
import { refuse } from "../refusal";
import { type Change, changeSitting, runStep } from "../sittings/change-sitting";
import { sectionsElsewhere } from "../sittings/closed-book";
import { liveRunOf, pieceOf } from "../sittings/own-view";
import { readTogether } from "../sittings/read-together";
import { windowIdSchema } from "./save-report";

const windowInput = z.strictObject({ windowId: windowIdSchema });

/**
 * Starts the clock of one of the caller's sections, once its piece is made and nothing of another sitting is open, whose book may
 * be closed; the window that asks is the one that writes. Starting again changes nothing.
 */
export async function startSection(caller: Caller, runId: string, input: unknown) {
  return step(caller, runId, "start", input);
}

/** Makes a window the one that writes; every other one is read-only from then on. */
export async function takeOver(caller: Caller, runId: string, input: unknown) {
  return step(caller, runId, "take-over", input);
}

/** How the caller's section stands, and the server's time to go by. */
export async function readClock(caller: Caller, runId: string) {
  const own = await requireOwnRun(caller, runId);
  if (!own.ok) return own;
  const stored = await readSitting(own.sittingId);
  const now = caller.clock();
  const run = stored && liveRunOf(stored, runId, now);
  return run ? ({ ok: true, now, run } as const) : refuse("no-such-run");
}

/** The same for a live view, which asks again and again: as it was a moment ago, with the server's time of then. */
export async function followClock(caller: Caller, runId: string) {
  const own = await requireOwnRun(caller, runId);
  if (!own.ok) return own;
  const { at, stored } = await readTogether(own.sittingId, caller.clock());
  const run = stored && liveRunOf(stored, runId, at);
  return run ? ({ ok: true, now: at, run } as const) : refuse("no-such-run");
}

/** Notes that the window of one of the caller's sections is still there. */
export async function noteStillThere(caller: Caller, runId: string): Promise<void> {
  const own = await requireOwnRun(caller, runId);
  if (own.ok) await notePresence(own.sittingId, own.actor.id, caller.clock());
}

/** Takes a step of a learner's window in a section, answered with how it stands. */
async function step(caller: Caller, runId: string, kind: "start" | "take-over", input: unknown) {
  const own = await requireOwnRun(caller, runId);
  if (!own.ok) return own;
  const parsed = windowInput.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { problem: describeProblem(parsed.error) });
  const event: RunEvent = { kind, ...parsed.data };
  const now = caller.clock();
  const changed = await changeSitting(own.sittingId, now, async (whole, stored): Promise<Change> => {
    const kept = stored.runs.find(({ run }) => run.id === runId);
    const change = runStep(whole, runId, event, now);
    const isStarting = kind === "start" && !change.code && change.next !== whole;
    // the clock does not go before there is something to look at
    if (isStarting && kept && pieceOf(kept) !== "ready") return { next: whole, code: "piece-not-made" };
    if (!isStarting) return change;
    const { isOpen, opens } = await sectionsElsewhere(own.actor.id, own.sittingId, now);
    if (isOpen) return { next: whole, code: "section-elsewhere" };
    return { ...change, concernsOthers: true, opens };
  });
  await notePresence(own.sittingId, own.actor.id, now);
  if (!changed.ok) return changed;
  return readClock({ ...caller, clock: () => now }, runId);
}
