import { JOINT_OF } from "@/lib/results";
import { readTruth } from "@/prisma/stores/specimens";
import type { Caller } from "../caller";
import { factsOf } from "../joint-facts";
import { mayKnowMarks, requireVisiblePiece } from "../permissions";
import { refuse } from "../refusal";

/**
 * What a sheet of a piece without answers says of it: the drawing's facts and nothing else of the truth. For whoever may look
 * at the piece itself; of a sitting once its marks may be known.
 */
export async function readPieceSheet(caller: Caller, id: string) {
  const visible = await requireVisiblePiece(caller, id);
  if (!visible.ok) return visible;
  const { practice } = visible;
  const isOwn = practice.userId === caller.actor?.id;
  // a piece of a sitting stays on the bench: on paper it could be carried away and measured after the clock
  if (isOwn && practice.runId !== null && !(await mayKnowMarks(practice, caller.clock())))
    return refuse("marks-not-released");
  const made = await readTruth(practice.specimenId);
  if (!made) return refuse("specimen-not-made");
  return { ok: true, id, kind: JOINT_OF[practice.section], joint: factsOf(made.truth), state: practice.state } as const;
}
