import { drillRoundSchema } from "@/lib/drills";
import { createDrillRound } from "@/prisma/stores/drill-rounds";
import type { Caller } from "../caller";
import { describeProblem } from "../input-problem";
import { requireSignedIn } from "../permissions";
import { randomId } from "../random-id";
import { refuse } from "../refusal";

/**
 * Keeps a finished round of the caller's. The browser says how it went, and is believed: a drill is an exercise, nothing
 * is marked by it and nobody else sees it.
 */
export async function keepDrillRound(caller: Caller, input: unknown) {
  const signedIn = requireSignedIn(caller);
  if (!signedIn.ok) return signedIn;
  const parsed = drillRoundSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { problem: describeProblem(parsed.error) });
  const round = { ...parsed.data, id: randomId(), finishedAt: caller.clock() };
  await createDrillRound(signedIn.actor.id, round);
  return { ok: true, round } as const;
}
