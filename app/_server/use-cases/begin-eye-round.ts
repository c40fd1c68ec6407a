import { type EyeRound, eyeChoiceSchema } from "@/lib/eye";
import { createEyeRound, dropLeftBursts, findRoundToGoOn } from "@/prisma/stores/eye-rounds";
import { listSetDrillsFor } from "@/prisma/stores/set-drills";
import type { Caller } from "../caller";
import { drawTasks } from "../eye/draw-tasks";
import type { SpecimenSource } from "../generation/specimen-source";
import { describeProblem } from "../input-problem";
import { requireOpenBook } from "../permissions";
import { randomId } from "../random-id";
import { refuse } from "../refusal";

/** A burst takes a minute or two: one that was begun so long ago is on nobody's screen. */
const LEFT_AFTER_MS = 86_400_000;

/**
 * Begins a round of a drill for the eye, answered with its id; for a drill that a tutor has set, it is that drill whatever else
 * is chosen, and a round of it that was left goes on. Its tasks are drawn at once, or as soon as there is a piece to cut windows from.
 */
export async function beginEyeRound(caller: Caller, input: unknown, setDrillId: string | null, source: SpecimenSource) {
  const open = await requireOpenBook(caller);
  if (!open.ok) return open;
  const parsed = eyeChoiceSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { problem: describeProblem(parsed.error) });
  const userId = open.actor.id;
  const set = setDrillId === null ? null : (await listSetDrillsFor(userId)).find(({ id }) => id === setDrillId);
  if (set === undefined) return refuse("no-such-set-drill");
  const left = set && (await findRoundToGoOn(userId, set.id));
  if (left) return { ok: true, id: left } as const;
  const round: EyeRound = {
    ...parsed.data,
    ...(set && { drill: set.drill }),
    id: randomId(),
    userId,
    setDrillId,
    begunAt: caller.clock(),
    finishedAt: null,
  };
  await dropLeftBursts(userId, new Date(round.begunAt.getTime() - LEFT_AFTER_MS));
  await createEyeRound(round);
  await drawTasks(round, source);
  return { ok: true, id: round.id } as const;
}
