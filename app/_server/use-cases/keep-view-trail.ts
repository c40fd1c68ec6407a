import { z } from "zod";
import { JOINT_OF } from "@/lib/results";
import { whyShut } from "@/lib/sittings";
import { packedTrailSchema, unpackTrail } from "@/lib/trail";
import { PIECES } from "@/lib/weld";
import { readRunPlace } from "@/prisma/stores/section-runs";
import { readSitting } from "@/prisma/stores/sittings";
import { keepViewTrail as storeTrail } from "@/prisma/stores/view-trails";
import type { Caller } from "../caller";
import { describeProblem } from "../input-problem";
import { requireOwnPractice } from "../permissions";
import { type Refusal, refuse } from "../refusal";
import { byClock } from "../sittings/change-sitting";
import { windowIdSchema } from "./save-report";

const inputSchema = z.strictObject({
  windowId: windowIdSchema,
  number: z.number().int().min(1),
  trail: packedTrailSchema,
});

/**
 * Keeps where the caller has looked on the piece so far, as one window saw it. Each sending has all that was sent before in it,
 * so it may come twice, late or never. Nothing is marked by it. It is taken until the hand-in, after the report is closed as
 * well; in a sitting, until the section is shut.
 */
export async function keepViewTrail(caller: Caller, id: string, input: unknown) {
  const own = await requireOwnPractice(caller, id);
  if (!own.ok) return own;
  const { section, runId, state } = own.practice;
  const parsed = inputSchema.safeParse(input);
  if (!parsed.success) return refuse("invalid-input", { problem: describeProblem(parsed.error) });
  const { windowId, number, trail } = parsed.data;
  const { aspects } = PIECES[JOINT_OF[section]];
  const stray = Object.keys(trail.views).find((aspect) => !aspects.some((one) => one === aspect));
  if (stray !== undefined) {
    const problem = { path: `trail.views.${stray}`, wanted: `nothing but ${aspects.join(", ")}` };
    return refuse("invalid-input", { problem });
  }
  if (state === "handed-in") return refuse("already-handed-in");
  const shut = runId === null ? null : await whyRunIsShut(runId, caller.clock());
  if (shut) return shut;
  switch (await storeTrail(id, { windowId, number, trail: unpackTrail(trail) })) {
    case "kept":
      return { ok: true, number } as const;
    case "handed-in":
      return refuse("already-handed-in");
    case "too-many-windows":
      return refuse("too-many-windows");
  }
}

async function whyRunIsShut(runId: string, now: Date): Promise<Refusal | null> {
  const place = await readRunPlace(runId);
  const stored = place && (await readSitting(place.sittingId));
  const run = stored && byClock(stored, now).runs.find((one) => one.id === runId);
  if (!run) return refuse("no-such-run");
  const shut = whyShut(run);
  return shut === null ? null : refuse(shut);
}
